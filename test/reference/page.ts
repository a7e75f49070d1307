import { OUTSIDE_CHECKS, type OutsideCheck } from './checks';

const printed = (value: number | string) =>
  typeof value === 'number' ? String(Number(value.toPrecision(7))) : value;

function toleranceWords({ tolerance }: OutsideCheck): string {
  if (tolerance === 'exactly') return 'exactly';
  return 'absolute' in tolerance
    ? `± ${tolerance.absolute}`
    : `± ${Number((tolerance.relative * 100).toPrecision(3))} %`;
}

const cell = (text: string) => text.replaceAll('|', '\\|');

function row(check: OutsideCheck): string {
  const cells = [
    check.what,
    printed(check.expected),
    printed(check.got()),
    toleranceWords(check),
    check.source,
    check.kind,
  ];
  return `| ${cells.map(cell).join(' | ')} |`;
}

/** The page of all outside checks, from a fresh run of each. */
export function outsideChecksPage(): string {
  const all = OUTSIDE_CHECKS.flatMap(([, checks]) => checks);
  const sources = new Set(all.map(check => check.source));
  const kinds = (['published', 'common practice', 'from memory'] as const).map(
    kind => `${all.filter(check => check.kind === kind).length} ${kind}`,
  );
  const lines = [
    '# Outside checks',
    '',
    'What the program gives, held against what nobody here wrote: handbooks, regulations, worked examples and libraries. This page is made by `npm run outside-checks`; the test `test/reference/outside-checks.test.ts` runs every check and fails when the page is not what it would write.',
    '',
    `${all.length} checks over ${sources.size} sources: ${kinds.join(', ')}.`,
  ];
  for (const [subject, checks] of OUTSIDE_CHECKS)
    lines.push(
      '',
      `## ${subject}`,
      '',
      '| what | expected | got | tolerance | source | kind |',
      '|---|---|---|---|---|---|',
      ...checks.map(row),
    );
  return `${lines.join('\n')}\n`;
}
