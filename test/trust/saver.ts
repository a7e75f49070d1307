// A program that saves one version after another until it is killed, and says after each that it is saved.
import fs from 'node:fs';
import { saveAtomically } from '../../electron/files/atomic-save';
import { Journal } from '../../electron/files/journal';
import { versionText } from './version-text';

const [way = '', target = '', first = '0', size = '500000'] = process.argv.slice(2);
const journal = new Journal(target);

async function save(text: string): Promise<void> {
  if (way === 'safely') await saveAtomically(target, text, 'versions');
  else if (way === 'journal') await journal.keep('x', text, { place: '', base: '' });
  else fs.writeFileSync(target, text);
}

for (let n = Number(first); ; n++) {
  await save(versionText(n, Number(size)));
  fs.writeSync(1, `${n}\n`);
}
