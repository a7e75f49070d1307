import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { holds, OUTSIDE_CHECKS } from './checks';
import { outsideChecksPage } from './page';

const page = path.join(import.meta.dirname, 'README.md');
const all = OUTSIDE_CHECKS.flatMap(([subject, checks]) => checks.map(check => ({ subject, check })));

describe.each(OUTSIDE_CHECKS)('%s', (_subject, checks) => {
  test.each(checks.map(check => [check.what, check.source, check] as const))(
    '%s (%s)',
    (_what, _source, check) => {
      const got = check.got();
      expect(holds(check, got), `expected ${check.expected}, got ${got}`).toBe(true);
    },
  );
});

test('there are at least 150 checks over at least 25 sources', () => {
  expect(all.length).toBeGreaterThanOrEqual(150);
  expect(new Set(all.map(({ check }) => check.source)).size).toBeGreaterThanOrEqual(25);
});

test('every check tells what and by whom, and none twice', () => {
  const keys = all.map(({ subject, check }) => `${subject} ${check.source} ${check.what}`);
  expect(new Set(keys).size).toBe(keys.length);
  expect(all.filter(({ check }) => check.source.length < 8 || check.what.length < 4)).toEqual([]);
});

test('a check that is off by more than its tolerance does not hold', () => {
  for (const { check } of all) {
    const wrong = typeof check.expected === 'number' ? check.expected * 1.5 + 3 : `${check.expected} `;
    expect(holds(check, wrong), check.what).toBe(false);
  }
});

test('the page is what the checks give', () => {
  if (process.env['WRITE_OUTSIDE_CHECKS'] !== undefined) fs.writeFileSync(page, outsideChecksPage());
  expect(fs.readFileSync(page, 'utf8')).toBe(outsideChecksPage());
});
