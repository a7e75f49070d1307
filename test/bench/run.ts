import { estimate } from './estimate';
import { levelling } from './levelling/run';

/** The benches by the word they are called with; each returns its exit code. */
const BENCHES: Readonly<Record<string, (args: readonly string[]) => Promise<number>>> = {
  edit: args => import('./edit').then(bench => bench.edit(args)),
  estimate,
  levelling,
  risk: () => import('./risk').then(() => 0),
  schedule: args => import('./schedule').then(bench => bench.scheduling(args)),
  sheet: () => import('./sheet').then(() => 0),
  leg: args => import('./table').then(bench => bench.leg(args)),
  table: args => import('./table').then(bench => bench.table(args)),
  upright: () => import('./upright').then(bench => bench.upright()),
  workbook: args => import('./workbook').then(bench => bench.workbook(args)),
};

const words = process.argv.slice(2);
// Without a name, the whole table.
const [name = '', ...args] =
  words[0] === undefined || words[0].startsWith('--') ? ['table', ...words] : words;
const bench = BENCHES[name];
if (bench) {
  process.exitCode = await bench(args);
} else {
  process.stderr.write(`No bench is called "${name}". There are: ${Object.keys(BENCHES).join(', ')}.\n`);
  process.exitCode = 2;
}
