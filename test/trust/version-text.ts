import { createHash, type Hash } from 'node:crypto';

/** Rows differ from one version to the next, and come again after so many. */
export const KINDS = 4;

interface Rows {
  readonly text: string;
  readonly hash: Hash;
}

const known = new Map<string, Rows>();

/** The rows of a version with what they make of its hash: made once, so that a saver spends its time on saving. */
function rowsOf(kind: number, size: number): Rows {
  const key = `${kind} ${size}`;
  const made = known.get(key);
  if (made !== undefined) return made;
  const rows = Array.from(
    { length: Math.ceil(size / 50) },
    (_, i) => `"row ${i}: ${(kind * 7919 + i * 31) % 99991} of a document"`,
  );
  const text = `{"rows": [${rows.join(',\n')}], "n": `;
  const own = { text, hash: createHash('sha256').update(text) };
  known.set(key, own);
  return own;
}

/** The `n`th version of a document of about `size` characters, with a hash that tells whether it is whole. */
export function versionText(n: number, size: number): string {
  const { text, hash } = rowsOf(n % KINDS, size);
  const end = `${n}}`;
  return `${hash.copy().update(end).digest('hex')}\n${text}${end}`;
}

/** The number of a version when the text is whole, or `undefined` for a damaged one. */
export function wholeVersion(text: string): number | undefined {
  const at = text.indexOf('\n');
  const body = text.slice(at + 1);
  if (createHash('sha256').update(body).digest('hex') !== text.slice(0, at)) return undefined;
  return Number(/"n": (\d+)\}$/.exec(body)?.[1]);
}
