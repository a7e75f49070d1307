import type { FoundCode } from './codes';
import type { Told } from './example';

/** One row of the catalogue: a code, what brought it about, and what was said. */
export interface CatalogueRow extends FoundCode {
  readonly tiny: string;
  readonly test: string;
  readonly said: Told;
}

const cell = (text: string) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/** The page of all findings with the wording of their smallest examples. */
export function cataloguePage(rows: readonly CatalogueRow[]): string {
  const subjects = [...new Set(rows.map(({ code }) => code.split('/')[0] ?? ''))];
  const lines = [
    '# Findings',
    '',
    'Everything the program says of the data it is given, and of files: the code, the smallest example that brings it about, and the words of that example. This page is made by `npm run findings` from the source and from a run of every example; `test/repo/findings/findings.test.ts` fails when a code has no example, an example does not bring its code about, or the page is not what it would write.',
    '',
    `${rows.length} findings about ${subjects.length} subjects.`,
  ];
  for (const subject of subjects) {
    lines.push('', `## ${subject}`);
    for (const { code, tiny, said, file, test } of rows.filter(row => row.code.startsWith(`${subject}/`))) {
      lines.push(
        '',
        `### ${code}`,
        '',
        `- made in: \`${file}\``,
        `- smallest example: ${cell(tiny)} (\`${test}\`)`,
        ...(said.weight === undefined ? [] : [`- weight: ${said.weight}`]),
        ...(said.place === undefined ? [] : [`- place: \`${said.place}\``]),
        `- says: ${cell(said.message)}`,
        ...(said.meaning === undefined ? [] : [`- means: ${cell(said.meaning)}`]),
        `- to do: ${cell(said.remedy)}`,
      );
    }
  }
  return `${lines.join('\n')}\n`;
}
