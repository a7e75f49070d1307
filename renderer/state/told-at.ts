import type { FindingRow } from '../../core/views';

interface Told {
  readonly findings: readonly FindingRow[];
}

const KNOWN = new WeakMap<readonly FindingRow[], ReadonlyMap<string, string>>();

/** What the findings say of each place of the document, to be told beside its input. */
export function toldAt(rows: Told | undefined): ReadonlyMap<string, string> {
  if (rows === undefined) return new Map();
  const known = KNOWN.get(rows.findings);
  if (known !== undefined) return known;
  const told = new Map(
    rows.findings.map(({ finding: { place, message, meaning, remedy } }) => [
      place,
      [message, meaning, remedy].filter(part => part !== undefined).join(' '),
    ]),
  );
  KNOWN.set(rows.findings, told);
  return told;
}
