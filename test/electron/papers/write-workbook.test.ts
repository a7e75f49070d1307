import JSZip from 'jszip';
import { describe, expect, test } from 'vitest';
import type { PaperCell, PaperWorkbook } from '../../../core/papers';
import { readWorkbook } from '../../../electron/papers/read-workbook';
import { writeWorkbook } from '../../../electron/papers/write-workbook';
import { HOSTILE } from '../../core/papers/hostile';

const text = (row: number, column: number, words: string): PaperCell => ({
  row,
  column,
  content: { kind: 'text', text: words },
});

/** A small workbook with one of everything, its rows out of order, and some texts. */
function paper(texts: readonly string[] = []): PaperWorkbook {
  const cells: PaperCell[] = [
    { row: 3, column: 2, content: { kind: 'money', value: 12.5, role: 'input' } },
    { row: 1, column: 2, content: { kind: 'text', text: 'Amount' }, style: 'heading' },
    {
      row: 4,
      column: 2,
      content: { kind: 'formula', formula: 'ROUND(B3*B2,2)', result: 25, format: 'money', decimals: 2 },
      style: 'total',
    },
    { row: 2, column: 2, content: { kind: 'number', value: 2, decimals: 0, role: 'given' } },
    { row: 5, column: 1, content: { kind: 'date', iso: '2028-02-29' } },
    text(1, 1, 'What'),
    ...texts.map((words, i) => text(10 + i, 1, words)),
  ];
  const charts = [
    { title: 'One', kind: 'bars' as const, names: "'Data'!$A$1:$A$2", values: "'Data'!$B$1:$B$2" },
  ];
  return {
    title: texts[0] ?? 'Small',
    date: '2026-11-24',
    names: [{ name: 'amount', range: "'Data'!$B$3" }],
    sheets: [
      { name: 'Data', cells, widths: [20, 12], headingRows: 1, landscape: true, numberInputs: ['B3'] },
      {
        name: 'Charts',
        cells: [text(1, 1, 'Charts')],
        widths: [14],
        headingRows: 0,
        landscape: false,
        charts,
      },
    ],
  };
}

async function parts(bytes: Buffer): Promise<Map<string, string>> {
  const zip = await JSZip.loadAsync(bytes);
  const names = Object.keys(zip.files).sort();
  return new Map(
    await Promise.all(
      names.map(async (name): Promise<[string, string]> => [
        name,
        (await zip.file(name)?.async('string')) ?? '',
      ]),
    ),
  );
}

describe('a workbook as it is written', () => {
  test('holds every cell where the paper has it, whatever the order, with results, dates and what is open', async () => {
    const bytes = await writeWorkbook(paper());
    const cells = await readWorkbook(bytes);
    const at = (row: number, column: number) =>
      cells.find(cell => cell.row === row && cell.column === column);
    expect(at(3, 2)?.content).toEqual({ kind: 'number', value: 12.5 });
    expect(at(4, 2)).toMatchObject({ formula: 'ROUND(B3*B2,2)', content: { kind: 'number', value: 25 } });
    expect(at(5, 1)?.content).toEqual({ kind: 'date', iso: '2028-02-29' });
    const written = await parts(bytes);
    const sheet = written.get('xl/worksheets/sheet1.xml') ?? '';
    expect(sheet.indexOf('r="B2"')).toBeLessThan(sheet.indexOf('r="B3"'));
    expect(sheet).toContain('<sheetProtection sheet="1"');
    expect(sheet).toContain('<dataValidation type="decimal"');
    expect(written.get('xl/workbook.xml')).toContain('fullCalcOnLoad="1"');
    expect(written.get('xl/workbook.xml')).toContain('name="amount"');
    expect(written.get('xl/charts/chart1.xml')).toContain("'Data'!$B$1:$B$2");
    expect(written.get('docProps/core.xml')).toContain('2026-11-24T00:00:00Z');
  });

  test('written twice it has the same parts, and the same bytes', async () => {
    const [first, second] = [await writeWorkbook(paper()), await writeWorkbook(paper())];
    expect(await parts(first)).toEqual(await parts(second));
    expect(first.equals(second)).toBe(true);
  });

  test('cells that look alike share a look, and a heading over figures stands to the right', async () => {
    const styles = (await parts(await writeWorkbook(paper()))).get('xl/styles.xml') ?? '';
    expect(styles).toContain('horizontal="right"');
    expect(Number(/<cellXfs count="(\d+)"/.exec(styles)?.[1])).toBeLessThan(12);
  });

  test('prints what the sheet holds, its area bound on both sides', async () => {
    const book = (await parts(await writeWorkbook(paper()))).get('xl/workbook.xml') ?? '';
    expect(book).toMatch(/_xlnm\.Print_Area[^>]*>&apos;Data&apos;!\$A\$1:\$[A-Z]+\$\d+</);
  });

  test('a row is as high as the words that are wrapped in it, and words keep a gap from figures', async () => {
    const words = 'Entry before a test of the air and a certificate is forbidden, whoever asks for it.';
    const sheet = {
      ...{ name: 'Words', widths: [20, 22], headingRows: 0, landscape: false },
      cells: [
        { row: 1, column: 1, content: { kind: 'text', text: 'Short' }, style: 'words' },
        { row: 2, column: 2, content: { kind: 'text', text: words }, style: 'words' },
      ],
    } as const;
    const written = await parts(
      await writeWorkbook({ title: 'Words', date: '2026-11-24', names: [], sheets: [sheet] }),
    );
    const rows = written.get('xl/worksheets/sheet1.xml') ?? '';
    const height = Number(/<row r="2"[^>]* ht="([\d.]+)"/.exec(rows)?.[1]);
    expect(height).toBeGreaterThanOrEqual(5 * 12);
    expect(height).toBeLessThan(8 * 14);
    expect(rows).not.toMatch(/<row r="1"[^>]* ht=/);
    expect(written.get('xl/styles.xml')).toContain('indent="1"');
  });

  test(`${HOSTILE.length} texts that could be taken for something to run stay text: no formula, link or connection more`, async () => {
    const written = await parts(await writeWorkbook(paper(HOSTILE)));
    const all = [...written.values()].join('');
    expect(all.match(/<f>/g)?.length).toBe(1);
    expect(all).not.toMatch(
      /<hyperlink|<externalReference|<ddeLink|<connection|<script|TargetMode="External"/,
    );
    expect(
      [...written.keys()].filter(name => /externalLink|vba|connections|hyperlink|customXml/i.test(name)),
    ).toEqual([]);
  });

  test('a figure that is not finite is a fault of the program, told before anything is written', async () => {
    const broken = paper();
    const [sheet] = broken.sheets;
    if (sheet === undefined) throw new Error('the workbook has a sheet');
    const cell: PaperCell = {
      row: 9,
      column: 9,
      content: { kind: 'money', value: Number.NaN, role: 'result' },
    };
    await expect(
      writeWorkbook({ ...broken, sheets: [{ ...sheet, cells: [...sheet.cells, cell] }] }),
    ).rejects.toThrow('not a finite number');
  });
});
