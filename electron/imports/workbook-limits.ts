import { fromBuffer, type Entry, type ZipFile } from 'yauzl';
import { HostProblem } from '../problem';

/** What a workbook may hold at most. Real ones of this trade stay far below. */
export const WORKBOOK_LIMITS = {
  /** Bytes of the file as it lies on disk. */
  packed: 20 * 1024 * 1024,
  /** Bytes of one part unpacked, and of all parts together. */
  part: 100 * 1024 * 1024,
  whole: 200 * 1024 * 1024,
  parts: 2000,
  /** How much larger than packed a part of over a megabyte may be. */
  ratio: 200,
} as const;

function refused(message: string): HostProblem {
  return new HostProblem({
    code: 'file/workbook-refused',
    message,
    meaning: 'Nothing was read from it and nothing was changed.',
    remedy: 'Save the table again as a plain workbook (.xlsx) or as CSV, and choose that file.',
  });
}

function opened(bytes: Buffer): Promise<ZipFile> {
  return new Promise((resolve, reject) => {
    fromBuffer(
      bytes,
      { lazyEntries: true, strictFileNames: true, validateEntrySizes: true },
      (cause, zip) => {
        if (cause === null) resolve(zip);
        else reject(refused('The file is not a readable workbook.'));
      },
    );
  });
}

/** What a part says of itself that is refused, before a byte of it is unpacked. */
function saidTooMuch(entry: Entry, total: number): string | undefined {
  const { uncompressedSize: size, compressedSize: packed } = entry;
  if (entry.isEncrypted()) return 'The workbook is encrypted.';
  if (size > WORKBOOK_LIMITS.part || total > WORKBOOK_LIMITS.whole)
    return 'The workbook unpacks to more than 200 MB.';
  if (size > 1024 * 1024 && size > packed * WORKBOOK_LIMITS.ratio)
    return 'A part of the workbook unpacks to more than 200 times its size.';
  return undefined;
}

/** The beginning and the true length of one part, read as it unpacks and stopped at the limit. */
function unpacked(zip: ZipFile, entry: Entry): Promise<{ length: number; hasEntities: boolean }> {
  return new Promise((resolve, reject) => {
    const damaged = () => reject(refused('A part of the workbook is damaged.'));
    zip.openReadStream(entry, (cause, stream) => {
      if (cause !== null) {
        damaged();
        return;
      }
      let length = 0;
      let tail = '';
      let hasEntities = false;
      stream.on('data', (bytes: Buffer) => {
        length += bytes.length;
        const text = tail + bytes.toString('latin1').replaceAll('\u0000', '');
        hasEntities ||= /<!(DOCTYPE|ENTITY)/i.test(text);
        tail = text.slice(-12);
        if (hasEntities || length > WORKBOOK_LIMITS.part) stream.destroy();
      });
      stream.on('close', () => resolve({ length, hasEntities }));
      stream.on('error', damaged);
    });
  });
}

/** Goes through all parts of a workbook, counting what they really unpack to. */
async function measured(zip: ZipFile): Promise<Set<string>> {
  const tooMany = () => refused('The workbook has more than 2,000 parts.');
  // What the file says of itself is asked before a part is unpacked; what it holds is counted all the same.
  if (zip.entryCount > WORKBOOK_LIMITS.parts) throw tooMany();
  const names = new Set<string>();
  let total = 0;
  for await (const entry of zip.eachEntry()) {
    const said = saidTooMuch(entry, total + entry.uncompressedSize);
    if (said !== undefined) throw refused(said);
    if (names.size >= WORKBOOK_LIMITS.parts) throw tooMany();
    names.add(entry.fileName);
    const { length, hasEntities } = await unpacked(zip, entry);
    total += length;
    if (hasEntities) throw refused('A part of the workbook declares a document type, which none needs.');
    if (total > WORKBOOK_LIMITS.whole) throw refused('The workbook unpacks to more than 200 MB.');
  }
  return names;
}

/**
 * Refuses what is not a plain workbook, or would unpack to more than a table needs, before it is read: size, parts,
 * true lengths, encryption, document types (OWASP ASVS 5.0, 1.5.1 and 5.2).
 * @throws HostProblem
 */
export async function checkWorkbook(bytes: Uint8Array): Promise<void> {
  if (bytes.byteLength > WORKBOOK_LIMITS.packed) throw refused('The workbook has more than 20 MB.');
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw refused('The file is not a workbook of the .xlsx kind.');
  const zip = await opened(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  let names: Set<string>;
  try {
    names = await measured(zip);
  } catch (cause) {
    throw cause instanceof HostProblem ? cause : refused('The file is not a readable workbook.');
  }
  if (!names.has('[Content_Types].xml') || !names.has('xl/workbook.xml'))
    throw refused('The file is packed, but it is not a workbook of the .xlsx kind.');
  if (names.has('xl/vbaProject.bin')) throw refused('The workbook holds macros.');
}
