import { estimate } from './estimate';
import { levelling } from './levelling/run';

/** The benches by the word they are called with; each returns its exit code. */
const BENCHES: Readonly<Record<string, (args: readonly string[]) => Promise<number>>> = {
  edit: args => import('./edit').then(bench => bench.edit(args)),
  estimate,
  levelling,
  risk: () => import('./risk').then(() => 0),
  sheet: () => import('./sheet').then(() => 0),
  upright: () => import('./upright').then(() => 0),
  workbook: () => import('./workbook').then(bench => bench.workbook()),
};

const [name = '', ...args] = process.argv.slice(2);
const bench = BENCHES[name];
if (bench) {
  process.exitCode = await bench(args);
} else {
  process.stderr.write(`No bench is called "${name}". There are: ${Object.keys(BENCHES).join(', ')}.\n`);
  process.exitCode = 2;
}
