import type { FindingRow, Row } from '../../core/views';

interface Told {
  readonly findings: readonly FindingRow[];
}

type ByPlace = ReadonlyMap<string, string>;

const NOTHING: ByPlace = new Map();
const KNOWN = new WeakMap<readonly FindingRow[], ByPlace>();

/** What the findings say of each place of the document, to be told beside its input. */
export function toldAt(rows: Told | undefined): ByPlace {
  if (rows === undefined) return NOTHING;
  const known = KNOWN.get(rows.findings);
  if (known !== undefined) return known;
  const told = new Map<string, string>();
  for (const { at, finding } of rows.findings) {
    const { message, meaning, remedy } = finding;
    const before = told.get(at);
    told.set(at, [before, message, meaning, remedy].filter(part => part !== undefined).join(' '));
  }
  KNOWN.set(rows.findings, told);
  return told;
}

/** What is said of one input, at its own place or at the figure it is the number of. */
export function toldOf(told: ByPlace, at: string): string | undefined {
  return told.get(at) ?? told.get(ofFigure(at));
}

/** What is said of the inputs of a row, by column; what is said of the entry it stands for is told at the first of them. */
export function toldOfRow(told: ByPlace, row: Row): Readonly<Record<string, string>> {
  const inputs = Object.entries(row.cells).flatMap(([key, { edit }]) =>
    edit === undefined ? [] : [{ key, at: edit.at }],
  );
  return Object.fromEntries(
    inputs.flatMap(({ key, at }, place) => {
      const places = new Set([at, ofFigure(at), ...(place === 0 ? [entryOf(at)] : [])]);
      const said = [...places].flatMap(one => told.get(one) ?? []);
      return said.length === 0 ? [] : [[key, said.join(' ')]];
    }),
  );
}

const ofFigure = (at: string) => at.replace(/\/figure$/, '');

/** The entry of a list that an input is inside of; the sections of the document are no entries. */
function entryOf(at: string): string {
  return /^(\/[^/]+(?:\/[^/]+)+)\/[^/]+$/.exec(at)?.[1] ?? '';
}
