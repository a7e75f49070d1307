import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { EXAMPLES } from './all';
import { homeOf } from '../../../core/views/finding-rows';
import { codesInSource } from './codes';
import { cataloguePage, type CatalogueRow } from './page';

const PAGE = path.join(import.meta.dirname, 'README.md');
const source = codesInSource();
const fileOf = new Map(source.codes.map(({ code, file }) => [code, file]));
const all = EXAMPLES.flatMap(([file, list]) => list.map(example => ({ ...example, file })));
const rows: CatalogueRow[] = [];

/** Words of one run that another run does not have: folders of the machine. */
const steady = (words: string) =>
  words.replaceAll(os.tmpdir(), '/tmp').replace(/reefwright-example-\w+/g, 'FOLDER');

describe('the findings of the source', () => {
  test('each has an example, and no example is of a code that is gone', () => {
    const shown = new Set(all.map(({ code }) => code));
    expect(source.codes.map(({ code }) => code).filter(code => !shown.has(code))).toEqual([]);
    expect([...shown].filter(code => !fileOf.has(code))).toEqual([]);
    expect(all.length).toBe(shown.size);
  });

  test('every code is written so that it can be found', () => {
    expect(source.notUnderstood).toEqual([]);
    expect(source.codes.length).toBeGreaterThan(200);
  });
});

describe.each(EXAMPLES)('%s', (file, list) => {
  test.each(list.map(({ code, tiny, make }) => [code, tiny, make] as const))(
    '%s: %s',
    async (code, tiny, make) => {
      const said = (await make()).find(told => told.code === code);
      if (said === undefined) throw new Error(`${tiny} does not bring ${code} about`);
      expect(said.message.trim().length, 'what is so').toBeGreaterThan(8);
      expect(said.remedy.trim().length, 'what to do').toBeGreaterThan(8);
      expect(`${said.message} ${said.meaning ?? ''} ${said.remedy}`).not.toMatch(/undefined|NaN|\[object/);
      expect((said.meaning ?? '').trim().length, 'what it means').toBeGreaterThan(8);
      if ('weight' in said) expect(said.place, 'where').not.toBe('');
      rows.push({
        code,
        tiny,
        file: fileOf.get(code) ?? '',
        test: file,
        said: {
          ...said,
          ...(said.place === undefined ? {} : { place: steady(said.place) }),
          message: steady(said.message),
          remedy: steady(said.remedy),
        },
      });
    },
  );
});

test('a finding of a project leads to the view where it is put right', () => {
  // Of a file, of the review itself, of the checks of a schedule's totals, and of what no view asks for.
  const elsewhere = /^((document|review|books|benefit|verify|scenario|papers)\/|rules\/plate-too-thin$)/;
  const led = rows.filter(({ code, said }) => said.place?.startsWith('/') === true && !elsewhere.test(code));
  expect(led.length).toBeGreaterThan(90);
  expect(led.filter(({ said }) => homeOf(said.place ?? '') === 'review')).toEqual([]);
});

test('the page is what the examples give', () => {
  rows.sort((a, b) => (a.code < b.code ? -1 : 1));
  const page = cataloguePage(rows);
  if (process.env['WRITE_FINDINGS'] !== undefined) fs.writeFileSync(PAGE, page);
  expect(fs.readFileSync(PAGE, 'utf8')).toBe(page);
});
