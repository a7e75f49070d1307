import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sourceFiles } from './files';

/** What weakens the type checker, counted: the numbers may only fall. */
const LIMITS = JSON.parse(readFileSync('test/repo/suppressions.json', 'utf8')) as Readonly<
  Record<string, number>
>;

const PATTERNS: Readonly<Record<string, RegExp>> = {
  any: /(?:: |<|\bas )any\b/g,
  as: /\bas (?!const\b)(?=[A-Z{(]|unknown|string|number|keyof|typeof|readonly)/g,
  'non-null': /[\w)\]]!(?=[.;,)\]\s[])(?!=)/g,
  suppression: /@ts-(?:ignore|expect-error|nocheck)|eslint-disable/g,
};

describe('suppressions in core, electron and renderer', () => {
  const files = ['core', 'electron', 'renderer'].flatMap(sourceFiles);

  test.each(Object.keys(PATTERNS))('%s is not used more than before', name => {
    const pattern = PATTERNS[name];
    const found = files.flatMap(file => {
      const code = file.text
        .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
        .replace(/^(import|export) (type )?\{[^}]*\}/gm, '')
        .replace(/'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g, "''");
      return pattern === undefined ? [] : [...code.matchAll(pattern)].map(() => file.path);
    });
    console.log(name, found.length, [...new Set(found)].slice(0, 30).join(' '));
    expect(found.length).toBeLessThanOrEqual(LIMITS[name] ?? 0);
  });
});
