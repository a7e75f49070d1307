import { createHash } from 'node:crypto';

/** The `n`th version of a document of about `size` characters, with a hash that tells whether it is whole. */
export function versionText(n: number, size: number): string {
  const rows = Array.from(
    { length: Math.ceil(size / 50) },
    (_, i) => `"row ${i}: ${(n * 7919 + i * 31) % 99991} of a document"`,
  );
  const body = `{"n": ${n}, "rows": [${rows.join(',\n')}]}`;
  return `${createHash('sha256').update(body).digest('hex')}\n${body}`;
}

/** The number of a version when the text is whole, or `undefined` for a damaged one. */
export function wholeVersion(text: string): number | undefined {
  const at = text.indexOf('\n');
  const body = text.slice(at + 1);
  if (createHash('sha256').update(body).digest('hex') !== text.slice(0, at)) return undefined;
  return Number(/^\{"n": (\d+),/.exec(body)?.[1]);
}
