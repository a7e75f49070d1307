import fs from 'node:fs';
import path from 'node:path';

/** File systems over a network, by the number `statfs` gives them (linux/magic.h: NFS, SMB, SMB2, CIFS). */
const NETWORK = new Set([0x6969, 0x517b, 0xfe534d42, 0xff534d42]);

/** What to know of a folder where saving is less safe than on a disk of the machine; `undefined` for such a disk. */
export function folderHint(target: string): string | undefined {
  const words =
    'This document lies in a network folder. Saving there is checked by reading back, but keep a copy on your own disk.';
  if (target.startsWith('\\\\')) return words;
  try {
    return NETWORK.has(fs.statfsSync(path.dirname(path.resolve(target))).type) ? words : undefined;
  } catch {
    return undefined;
  }
}
