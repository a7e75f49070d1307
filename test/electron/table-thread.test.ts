import fs from 'node:fs';
import path from 'node:path';
import ExcelJS from 'exceljs';
import { build } from 'vite';
import { beforeAll, describe, expect, test } from 'vitest';
import { LARGEST_TABLE, readTableApart } from '../../electron/imports/table-thread';
import { HostProblem } from '../../electron/problem';
import { newFolder } from './support';

const ROOT = path.join(import.meta.dirname, '../..');
let reader: string;

/** The thread as the desktop program ships it. */
beforeAll(async () => {
  const folder = newFolder();
  await build({
    configFile: path.join(ROOT, 'electron/vite.config.ts'),
    mode: 'table-reader',
    logLevel: 'silent',
    build: { outDir: folder },
  });
  reader = path.join(folder, 'table-reader.cjs');
});

const text = (words: string, extension = '.csv') => ({ bytes: Buffer.from(words), extension });
/** A thread that does this instead of reading. */
function bad(words: string): string {
  const file = path.join(newFolder(), 'bad.cjs');
  fs.writeFileSync(file, words);
  return file;
}
async function problemOf(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (cause) {
    if (cause instanceof HostProblem) return `${cause.problem.code}: ${cause.message}`;
    throw cause;
  }
  return 'it was read';
}

describe('a table read in a thread of its own', () => {
  test('gives the same rows as one read here: CSV, old letters, a worksheet by name', async () => {
    const rows = [['Nr', 'Wert'], ['S-1', '=1+1'], ['']];
    expect(await readTableApart(reader, text('Nr;Wert\nS-1;=1+1\n'))).toEqual(rows);
    expect(await readTableApart(undefined, text('Nr;Wert\nS-1;=1+1\n'))).toEqual(rows);
    expect(await readTableApart(reader, { bytes: Uint8Array.of(0xe4), extension: '.csv' })).toEqual([['ä']]);
    const book = new ExcelJS.Workbook();
    book.addWorksheet('One').addRow(['a']);
    book.addWorksheet('Two').addRow(['b']);
    const bytes = Buffer.from(await book.xlsx.writeBuffer());
    expect(await readTableApart(reader, { bytes, extension: '.xlsx' })).toEqual([['a']]);
    expect(await readTableApart(reader, { bytes, extension: '.xlsx', sheet: 'Two' })).toEqual([['b']]);
  });

  test('a workbook that is none is refused in the words of the reader', async () => {
    expect(await problemOf(readTableApart(reader, text('no workbook', '.xlsx')))).toMatch(
      /^file\/workbook-refused: /,
    );
  });

  test('a table of more than 20 MB is refused before a thread is begun', async () => {
    const bytes = new Uint8Array(LARGEST_TABLE + 1);
    expect(await problemOf(readTableApart('/no/such/reader', { bytes, extension: '.csv' }))).toBe(
      'file/table-refused: The table has more than 20 MB.',
    );
  });

  test('one that never ends, takes all memory, fails or ends in silence stops the thread alone', async () => {
    const limits = { megabytes: 32, milliseconds: 400 };
    const refusals = await Promise.all(
      [
        'for (;;);',
        'const all = []; for (;;) all.push(new Array(1e6).fill(all.length));',
        'throw new Error("x")',
        'process.exit(0)',
      ].map((words, i) =>
        problemOf(
          readTableApart(bad(words), text('a'), i === 0 ? limits : { ...limits, milliseconds: 20_000 }),
        ),
      ),
    );
    expect(refusals).toEqual([
      'file/table-refused: The table takes longer to read than any table needs.',
      expect.stringMatching(/more memory than any table/),
      expect.stringMatching(/more memory than any table|damaged/),
      'file/table-refused: Reading the table ended without an answer.',
    ]);
  });

  test('the command line and both windows are built with the reader, and the package holds it', () => {
    const said = (file: string) => fs.readFileSync(path.join(ROOT, file), 'utf8');
    expect(said('electron/cli.vite.config.ts')).toContain("'table-reader': 'electron/table-reader.ts'");
    expect(said('electron/build.mjs')).toContain("'table-reader'");
    expect(said('electron/electron-builder.yml')).toContain('dist/electron/table-reader.cjs');
    for (const shell of ['electron/start.ts', 'electron/entry.ts'])
      expect(said(shell)).toContain("'table-reader.cjs')");
  });
});

test.each([',', ';', '\t'])('a table of two columns and one row is parted at %j', async mark => {
  const words = `Trade${mark}Wage\nburner${mark}30\n`;
  expect(await readTableApart(undefined, text(words))).toEqual([['Trade', 'Wage'], ['burner', '30'], ['']]);
});
