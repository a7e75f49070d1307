import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { expect, test } from 'vitest';
import { goToView, openSample, VIEW_NAMES, workedOut } from './lib/views';
import { sideways } from './lib/looks';
import { ownWindow } from './lib/own-window';
import { OUT } from './lib/window';

const own = ownWindow();

/** The width of a letter page across, less its margins, in CSS pixels. */
const PAGE_WIDTH = 965;
/** Views that tell of danger, and what they must say on paper. */
const CAUTIONS: Partial<Record<string, string>> = {
  Vessel: 'not a naval architect',
  Materials: 'replaces none of them',
  Sinking: 'Screening, not a naval architect',
  Compare: 'not a naval architect',
  Decision: 'not a naval architect',
};
const plain = (text: string) => text.replace(/\s+/g, ' ').trim();

test('every view is printed whole: its sentence, all rows of its tables, its cautions, nothing cut off', async () => {
  const { page, context } = await own.open({ width: PAGE_WIDTH, height: 720 });
  await openSample(page);
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    await workedOut(page);
    await page.emulateMedia({ media: 'print' });
    await page.waitForTimeout(150);
    expect(await sideways(page), `${view} is wider than the paper`).toBeLessThanOrEqual(0);
    const rows = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLTableElement>('.surface table')].map(table => ({
        shown: table.tBodies[0]?.querySelectorAll('tr[aria-rowindex]').length ?? 0,
        all: Number(table.getAttribute('aria-rowcount') ?? '1') - 1,
      })),
    );
    for (const { shown, all } of rows) if (all >= 0) expect(shown, `${view}, rows on paper`).toBe(all);
    const file = path.join(OUT, `print-${view.toLowerCase()}.pdf`);
    await page.pdf({ path: file, preferCSSPageSize: true });
    const words = plain(execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }));
    await page.emulateMedia({ media: 'screen' });
    const sentence = plain(await page.locator('.title-line .sentence').innerText());
    expect(words.replaceAll(' ', ''), view).toContain(sentence.replaceAll(' ', '').slice(0, 40));
    const caution = CAUTIONS[view];
    if (caution !== undefined) expect(words.replaceAll(' ', ''), view).toContain(caution.replaceAll(' ', ''));
  }
  await context.close();
}, 200_000);
