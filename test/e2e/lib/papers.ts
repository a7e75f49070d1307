import { execFileSync } from 'node:child_process';
import ExcelJS from 'exceljs';
import type { Download, Page } from 'playwright-core';
import { expect } from 'vitest';

/** The files that a press hands over, by name, once the window says that they are made. */
export async function handedOver(
  page: Page,
  press: () => Promise<void>,
): Promise<ReadonlyMap<string, string>> {
  const came: Download[] = [];
  const take = (download: Download) => came.push(download);
  page.on('download', take);
  const said = () => page.locator('p[role="status"].unseen').innerText();
  const before = await said();
  await press();
  await expect.poll(said, { timeout: 150_000 }).not.toBe(before);
  await expect.poll(said, { timeout: 150_000 }).toContain('Made: ');
  await page.waitForTimeout(400);
  page.off('download', take);
  const files = await Promise.all(
    came.map(async one => [one.suggestedFilename(), await one.path()] as const),
  );
  return new Map(files);
}

/** The numbers of a written workbook, formulas by their cached results. */
export async function numbersOf(file: string): Promise<readonly number[]> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const found: number[] = [];
  for (const sheet of book.worksheets)
    sheet.eachRow(row =>
      row.eachCell(cell => {
        const value = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value;
        if (typeof value === 'number') found.push(value);
      }),
    );
  return found;
}

/** The words of a printed report. */
export function wordsOf(file: string): string {
  return execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' });
}
