import { parseArgs } from 'node:util';
import { anyBlocks } from '../../core/base';
import { localDate } from '../local-date';
import { Stopped, STOPPED, UsageError, type Call, type Command, type Outcome } from './command';
import { COMMANDS } from './commands';
import { commandHelp, findingLines, findingsInShort, generalHelp } from './words';

/** Runs one command and answers with the exit code: 0 done, 1 findings that block, 2 wrong use. */
async function main(argv: readonly string[]): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined || name === '--help' || name === 'help') {
    process.stdout.write(generalHelp(COMMANDS));
    return name === undefined ? 2 : 0;
  }
  const command = COMMANDS.find(candidate => candidate.name === name);
  if (command === undefined) throw new UsageError(`There is no command "${name}".`);
  const { values, positionals } = readArguments(command, rest);
  if (values['help'] === true) {
    process.stdout.write(commandHelp(command));
    return 0;
  }
  const outcome = await command.run(callOf(values, positionals));
  return print(outcome, { json: values['json'] === true, findings: values['findings'] === true });
}

type Values = Readonly<Record<string, string | boolean | undefined>>;

function readArguments(command: Command, rest: readonly string[]): { values: Values; positionals: string[] } {
  const options: Record<string, { type: 'string' | 'boolean' }> = {
    json: { type: 'boolean' },
    help: { type: 'boolean' },
    findings: { type: 'boolean' },
    today: { type: 'string' },
  };
  for (const [name, spec] of Object.entries(command.options)) options[name] = { type: spec.type };
  try {
    return parseArgs({ args: [...rest], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(`${error instanceof Error ? error.message : String(error)}\n${command.usage}`);
  }
}

function callOf(values: Values, positionals: readonly string[]): Call {
  const option = (name: string) => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const today = option('today');
  if (today !== undefined && !/^\d{4}-\d{2}-\d{2}$/.test(today))
    throw new UsageError(`--today takes a date such as 2027-03-15, not "${today}".`);
  return {
    files: positionals,
    option,
    flag: name => values[name] === true,
    today,
    machineDate: localDate(new Date()),
  };
}

/** Results go to standard output; findings in one line beside it, those that block and those asked for in full. */
function print(outcome: Outcome, asks: { readonly json: boolean; readonly findings: boolean }): number {
  const blocked = anyBlocks(outcome.findings);
  if (asks.json) process.stdout.write(JSON.stringify(outcome.json) + '\n');
  else {
    if (outcome.lines.length > 0) process.stdout.write(outcome.lines.join('\n') + '\n');
    const lines = asks.findings ? findingLines(outcome.findings) : findingsInShort(outcome.findings);
    if (lines.length > 0) process.stderr.write(lines.join('\n') + '\n');
  }
  return blocked ? 1 : 0;
}

// A reader that stops early, such as a pager or `head`, is no fault.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => process.exit(fault.code === 'EPIPE' ? 0 : 2));

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  if (error instanceof Stopped) process.stderr.write(`${error.message}\n`);
  else if (error instanceof UsageError) process.stderr.write(`${error.message}\nTry: reefwright --help\n`);
  else
    process.stderr.write(
      `Reefwright met a fault of its own and stopped; no file was changed.\n${error instanceof Error ? error.message : String(error)}\n`,
    );
  process.exitCode = error instanceof Stopped ? STOPPED : 2;
}
