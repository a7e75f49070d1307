import type { Finding } from '../../core/base';
import type { Command } from './command';

const HEADS: Readonly<Record<Finding['weight'], string>> = {
  blocks: 'Blocks',
  warns: 'Look at',
  notes: 'Note',
};

/** Findings as lines for people: what is so, what it means, what to do. */
export function findingLines(findings: readonly Finding[]): string[] {
  return findings.flatMap(finding => [
    `${HEADS[finding.weight]}: ${finding.place}: ${finding.message}`,
    ...(finding.meaning === undefined ? [] : [`    ${finding.meaning}`]),
    `    To do: ${finding.remedy}`,
    ...(finding.rule === undefined ? [] : [`    Rule: ${finding.rule}`]),
  ]);
}

/** Findings counted in one line, after those that block, which withhold a result and are told in full. */
export function findingsInShort(findings: readonly Finding[]): string[] {
  if (findings.length === 0) return [];
  const blocking = findings.filter(({ weight }) => weight === 'blocks');
  const count = (weight: Finding['weight']) => findings.filter(finding => finding.weight === weight).length;
  const notes = count('notes') === 1 ? 'note' : 'notes';
  const parts = (
    [
      [blocking.length, blocking.length === 1 ? 'blocks' : 'block'],
      [count('warns'), 'to look at'],
      [count('notes'), notes],
    ] as const
  ).flatMap(([number, words]) => (number === 0 ? [] : [`${number} ${words}`]));
  const all = `${findings.length} ${findings.length === 1 ? 'finding' : 'findings'}`;
  return [...findingLines(blocking), `${all}: ${parts.join(', ')}. --findings prints them in full.`];
}

/** The commands with a line each. */
export function generalHelp(commands: readonly Command[]): string {
  const width = Math.max(...commands.map(command => command.name.length));
  return [
    'Reefwright: what it costs to clean, tow and sink a ship as a reef, how long it takes, and how sure that is.',
    '',
    ...commands.map(command => `  ${command.name.padEnd(width)}  ${command.words}`),
    '',
    'Every command takes --json (one JSON object and nothing else), --findings (each finding in full),',
    '--today YYYY-MM-DD and --help.',
    'Exit 0 done, 1 findings that block, 2 wrong use.',
    '',
  ].join('\n');
}

/** One command: how it is called and its options. */
export function commandHelp(command: Command): string {
  const options = Object.entries(command.options).map(
    ([name, spec]) => `  --${name}${spec.sample === undefined ? '' : ` ${spec.sample}`}: ${spec.words}`,
  );
  return [
    command.words,
    '',
    command.usage,
    ...(options.length > 0 ? ['', ...options] : []),
    ...(command.more === undefined ? [] : ['', command.more()]),
    '',
  ].join('\n');
}
