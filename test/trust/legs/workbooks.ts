import { deflateRawSync, crc32 } from 'node:zlib';
import ExcelJS from 'exceljs';
import { readCsv, readXlsx } from '../../../electron/imports/read-table';
import { HostProblem } from '../../../electron/problem';
import { sequence, spread, type Leg, type Outcome } from '../leg';

interface Part {
  readonly name: string;
  readonly data: Buffer;
  /** The length it claims to unpack to, when that is a lie. */
  readonly claims?: number;
  readonly encrypted?: boolean;
}

/** A zip file of these parts, as PKWARE's APPNOTE 6.3 lays it out. */
export function zipped(parts: readonly Part[]): Buffer {
  const files: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const part of parts) {
    const packed = deflateRawSync(part.data, { level: 9 });
    const name = Buffer.from(part.name);
    const head = Buffer.alloc(26);
    head.writeUInt16LE(20, 0);
    head.writeUInt16LE(part.encrypted === true ? 1 : 0, 2);
    head.writeUInt16LE(8, 4);
    head.writeUInt32LE(crc32(part.data), 10);
    head.writeUInt32LE(packed.length, 14);
    head.writeUInt32LE(part.claims ?? part.data.length, 18);
    head.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from('PK\u0003\u0004'), head, name, packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    directory.push(Buffer.concat([Buffer.from('PK\u0001\u0002'), Buffer.of(20, 0), head, tail, name]));
    files.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(parts.length, 4);
  end.writeUInt16LE(parts.length, 6);
  end.writeUInt32LE(list.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...files, list, Buffer.from('PK\u0005\u0006'), end]);
}

async function sample(): Promise<Buffer> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('Results');
  sheet.addRow(['Sample', 'Space', 'Result', 'Unit']);
  for (let n = 0; n < 40; n++) sheet.addRow([`S-${n}`, `Space ${n % 7}`, n * 1.5, 'mg/kg']);
  sheet.getCell('F1').value = { formula: 'SUM(C2:C41)', result: 1170 };
  return Buffer.from(await workbook.xlsx.writeBuffer());
}

const bytesOf = (buffer: Buffer): ArrayBuffer => {
  const copy = new ArrayBuffer(buffer.length);
  new Uint8Array(copy).set(buffer);
  return copy;
};

async function read(buffer: Buffer): Promise<string> {
  try {
    await readXlsx(bytesOf(buffer));
    return 'read';
  } catch (cause) {
    return cause instanceof HostProblem ? 'refused' : `a raw fault: ${String(cause).slice(0, 120)}`;
  }
}

/** Half of the mutants change bytes of the file, half change the XML of a part or drop one. */
async function mutatedWorkbooks(long: boolean): Promise<Outcome> {
  const count = long ? 10_000 : 400;
  const whole = await sample();
  const parts = await partsOf(whole);
  const random = sequence(5);
  const at = (length: number) => Math.floor(random() * length);
  const tally = { read: 0, refused: 0, wrong: [] as string[] };
  const times: number[] = [];
  for (let n = 0; n < count; n++) {
    const bytes = n % 2 === 0 ? flipped(whole, at) : zipped(changedParts(parts, at));
    const begun = performance.now();
    const outcome = await read(bytes);
    const time = performance.now() - begun;
    times.push(time);
    if (outcome === 'read' || outcome === 'refused') tally[outcome]++;
    else tally.wrong.push(outcome);
    if (time > 1000) tally.wrong.push(`took ${time.toFixed(0)} ms`);
  }
  return {
    ok: tally.wrong.length === 0,
    words: `${count} mutated workbooks: ${tally.read} read, ${tally.refused} refused in words, ${tally.wrong.length} wrong ${tally.wrong.slice(0, 3).join('; ')}; ${spread(times)}`,
  };
}

function flipped(whole: Buffer, at: (length: number) => number): Buffer {
  const bytes = Buffer.from(whole);
  for (let flips = 1 + at(4); flips > 0; flips--) bytes[at(bytes.length)] = at(256);
  return bytes;
}

function changedParts(parts: readonly Part[], at: (length: number) => number): Part[] {
  const place = at(parts.length);
  if (at(5) === 0) return parts.filter((_, n) => n !== place);
  return parts.map((part, n) => {
    if (n !== place) return part;
    const text = part.data.toString('utf8');
    const cut = at(text.length);
    const ways = [
      text.slice(0, cut),
      text.slice(0, cut) + text.slice(cut + 1 + at(20)),
      text.replaceAll('"', at(2) === 0 ? '' : "'"),
      text.slice(0, cut) + '<x/>' + text.slice(cut),
      text.replace(/\d+/, '1e308'),
      text.replace(/[A-Z]+\d+/, 'XFE9999999'),
    ];
    return { ...part, data: Buffer.from(ways[at(ways.length)] ?? text) };
  });
}

async function partsOf(whole: Buffer): Promise<Part[]> {
  const { fromBuffer } = await import('yauzl');
  return new Promise((resolve, reject) => {
    fromBuffer(whole, { lazyEntries: true }, (cause, zip) => {
      if (cause !== null) {
        reject(cause);
        return;
      }
      const parts: Part[] = [];
      zip.on('entry', (entry: { fileName: string }) => {
        zip.openReadStream(entry as never, (fault, stream) => {
          if (fault !== null) {
            reject(fault);
            return;
          }
          const pieces: Buffer[] = [];
          stream.on('data', (piece: Buffer) => pieces.push(piece));
          stream.on('end', () => {
            parts.push({ name: entry.fileName, data: Buffer.concat(pieces) });
            zip.readEntry();
          });
        });
      });
      zip.on('end', () => resolve(parts));
      zip.readEntry();
    });
  });
}

const MEGABYTE = 1024 * 1024;

async function bombs(): Promise<Outcome> {
  const parts = await partsOf(await sample());
  const withPart = (name: string, data: Buffer, more: Partial<Part> = {}) =>
    zipped([...parts.filter(part => part.name !== name), { name, data, ...more }]);
  const xml = (text: string) => withPart('xl/workbook.xml', Buffer.from(text));
  const zeros = Buffer.alloc(60 * MEGABYTE);
  const made: [string, () => Buffer][] = [
    ['a part of 60 MB of zeros', () => withPart('xl/worksheets/sheet1.xml', zeros)],
    ['a part that claims less', () => withPart('xl/worksheets/sheet1.xml', zeros, { claims: 1000 })],
    [
      'a part that claims 4 GB',
      () => withPart('xl/worksheets/sheet1.xml', Buffer.alloc(10), { claims: 2 ** 32 - 2 }),
    ],
    [
      'three parts of 60 MB',
      () => zipped([...parts, ...[1, 2, 3].map(n => ({ name: `xl/media/${n}.bin`, data: zeros }))]),
    ],
    [
      '2,500 parts',
      () =>
        zipped([
          ...parts,
          ...Array.from({ length: 2500 }, (_, n) => ({ name: `xl/media/${n}`, data: Buffer.alloc(1) })),
        ]),
    ],
    ['an encrypted part', () => withPart('xl/workbook.xml', Buffer.from('<x/>'), { encrypted: true })],
    ['a document type', () => xml('<!DOCTYPE x><workbook/>')],
    ['a document type in lower case', () => xml('<!doctype x><workbook/>')],
    [
      'an outside entity',
      () => xml('<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><workbook>&e;</workbook>'),
    ],
    [
      'entities that multiply',
      () =>
        xml(
          `<!DOCTYPE x [${Array.from({ length: 9 }, (_, n) => `<!ENTITY e${n + 1} "${`&e${n};`.repeat(10)}">`).join('')}]><workbook>&e9;</workbook>`,
        ),
    ],
    ['an entity without a type', () => xml('<?xml version="1.0"?><!ENTITY e "x"><workbook/>')],
    [
      'a document type in UTF-16',
      () => withPart('xl/workbook.xml', Buffer.from('\uFEFF<!DOCTYPE x><workbook/>', 'utf16le')),
    ],
    ['a name that climbs', () => zipped([...parts, { name: '../../etc/passwd', data: Buffer.from('x') }])],
    ['an absolute name', () => zipped([...parts, { name: '/etc/passwd', data: Buffer.from('x') }])],
    ['a name with a backslash', () => zipped([...parts, { name: '..\\..\\x', data: Buffer.from('x') }])],
    ['macros', () => zipped([...parts, { name: 'xl/vbaProject.bin', data: Buffer.from('x') }])],
    ['no content types', () => zipped(parts.filter(part => part.name !== '[Content_Types].xml'))],
    ['no workbook', () => zipped(parts.filter(part => part.name !== 'xl/workbook.xml'))],
    ['a zip of nothing', () => zipped([])],
    ['another kind of zip', () => zipped([{ name: 'word/document.xml', data: Buffer.from('<x/>') }])],
    ['an empty file', () => Buffer.alloc(0)],
    ['one byte', () => Buffer.of(0x50)],
    ['two bytes', () => Buffer.from('PK')],
    ['text', () => Buffer.from('Sample,Result\n1,2')],
    [
      'an old workbook',
      () =>
        Buffer.concat([Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]), Buffer.alloc(4096)]),
    ],
    ['21 MB', () => Buffer.concat([Buffer.from('PK\u0003\u0004'), Buffer.alloc(21 * MEGABYTE)])],
    [
      'a zip cut in half',
      () => {
        const all = zipped(parts);
        return all.subarray(0, all.length / 2);
      },
    ],
    [
      'a zip without its end',
      () => {
        const all = zipped(parts);
        return all.subarray(0, all.length - 22);
      },
    ],
  ];
  const wrong: string[] = [];
  let longest = 0;
  let most = 0;
  for (const [name, make] of made) {
    const bytes = make();
    globalThis.gc?.();
    const before = process.memoryUsage().rss;
    const begun = performance.now();
    const outcome = await read(bytes);
    longest = Math.max(longest, performance.now() - begun);
    most = Math.max(most, process.memoryUsage().rss - before);
    if (outcome !== 'refused') wrong.push(`${name}: ${outcome}`);
  }
  return {
    ok: wrong.length === 0 && longest < 1000 && most < 100 * MEGABYTE,
    words: `${made.length} crafted workbooks refused, the longest in ${longest.toFixed(0)} ms and ${(most / MEGABYTE).toFixed(0)} MB ${wrong.slice(0, 4).join('; ')}`,
  };
}

/** Tables as text: whatever the bytes, rows of text cells come back and nothing is worked out. */
async function mutatedTables(long: boolean): Promise<Outcome> {
  const count = long ? 10_000 : 1000;
  const text = 'Sample;Result;Note\r\nS-1;"=1+1";"a ""b"""\r\nS-2;<5;"line\nline"\r\n';
  const random = sequence(9);
  const wrong: string[] = [];
  for (let n = 0; n < count; n++) {
    const place = Math.floor(random() * text.length);
    const put = ['"', ';', '\r', '\u0000', '=', '\uFEFF', '', ',', '\t'][n % 9] ?? '';
    const rows = readCsv(text.slice(0, place) + put.repeat(1 + (n % 3)) + text.slice(place + (n % 2)));
    if (!rows.every(row => row.every(cell => typeof cell === 'string'))) wrong.push(`at ${place}`);
  }
  await Promise.resolve();
  return { ok: wrong.length === 0, words: `${count} mutated tables read as text, ${wrong.length} wrong` };
}

export const workbookLegs: readonly Leg[] = [
  { name: 'mutated workbooks', run: mutatedWorkbooks },
  { name: 'crafted workbooks', run: bombs },
  { name: 'mutated tables', run: mutatedTables },
];
