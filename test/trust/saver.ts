// A program that saves one version after another until it is killed, and says after each that it is saved.
import fs from 'node:fs';
import { saveAtomically } from '../../electron/files/atomic-save';
import { Journal } from '../../electron/files/journal';
import { KINDS, versionText } from './version-text';

const [way = '', target = '', first = '0', size = '500000'] = process.argv.slice(2);
const journal = new Journal(target);

async function save(text: string): Promise<void> {
  if (way === 'safely') await saveAtomically(target, text, 'versions');
  else if (way === 'journal') await journal.keep('x', text, { place: '', base: '' });
  else overwrite(text);
}

/** Pieces in which a stream writes. */
const PIECE = 2 ** 16;

/** Writes over the file itself, piece by piece, as a program does that takes no care. */
function overwrite(text: string): void {
  const bytes = Buffer.from(text);
  const file = fs.openSync(target, 'w');
  for (let at = 0; at < bytes.length; at += PIECE) fs.writeSync(file, bytes.subarray(at, at + PIECE));
  fs.closeSync(file);
}

// What texts are made of is made before the first save: from then on the program does next to nothing but save.
for (let n = 0; n < KINDS; n++) versionText(n, Number(size));
for (let n = Number(first); ; n++) {
  await save(versionText(n, Number(size)));
  fs.writeSync(1, `${n}\n`);
}
