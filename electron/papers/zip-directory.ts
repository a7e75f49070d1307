/** Signatures of a zip file. @source APPNOTE.TXT, .ZIP File Format Specification, PKWARE, sections 4.3.12 and 4.3.16. */
const END = 0x06054b50;
const ENTRY = 0x02014b50;
const END_SIZE = 22;
const ENTRY_SIZE = 46;
const LONGEST_COMMENT = 0xffff;

/** What the directory of a zip file says of it. */
export interface ZipDirectory {
  readonly parts: number;
  /** Bytes of all parts when unpacked. */
  readonly unpacked: number;
}

/** Reads the directory at the end of a zip file without unpacking anything; nothing when it has none, or a broken one. */
export function unpackedSize(bytes: Uint8Array): ZipDirectory | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === undefined) return undefined;
  const parts = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  let unpacked = 0;
  for (let part = 0; part < parts; part++) {
    if (at + ENTRY_SIZE > view.byteLength || view.getUint32(at, true) !== ENTRY) return undefined;
    unpacked += view.getUint32(at + 24, true);
    at +=
      ENTRY_SIZE +
      view.getUint16(at + 28, true) +
      view.getUint16(at + 30, true) +
      view.getUint16(at + 32, true);
  }
  return { parts, unpacked };
}

function endOf(view: DataView): number | undefined {
  const last = view.byteLength - END_SIZE;
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at--)
    if (view.getUint32(at, true) === END) return at;
  return undefined;
}
