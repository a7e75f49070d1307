import { levelling } from './levelling/run';

/** The benches by the word they are called with; each returns its exit code. */
const BENCHES: Readonly<Record<string, (args: readonly string[]) => Promise<number>>> = { levelling };

const [name = '', ...args] = process.argv.slice(2);
const bench = BENCHES[name];
if (bench) {
  process.exitCode = await bench(args);
} else {
  process.stderr.write(`No bench is called "${name}". There are: ${Object.keys(BENCHES).join(', ')}.\n`);
  process.exitCode = 2;
}
