import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { writeProject } from '../../core/project';
import { largeProject } from '../bench/large-project';
import { ownWindow } from './lib/own-window';
import { goToView } from './lib/views';

const LINES = 2000;

const own = ownWindow(() => {
  const file = path.join(fs.mkdtempSync(path.join(os.tmpdir(), 'long-')), 'long.reef.json');
  fs.writeFileSync(file, writeProject(largeProject(LINES)));
  return file;
});

test('of a long project the lines near the view are in the page, wherever one looks, and all of them on paper', async () => {
  const { page, context, complaints } = await own.open();
  await page.locator('.bottom-cell', { hasText: 'Total' }).first().waitFor({ timeout: 60_000 });
  await goToView(page, 'Work');
  await expect
    .poll(() => page.locator('.title-line .sentence').innerText(), { timeout: 30_000 })
    .toContain('2,000 work items');
  const lines = page.locator('.work-line');
  await lines.first().waitFor();
  await expect.poll(() => lines.count()).toBeLessThan(400);
  const atTop = await lines.first().getAttribute('data-subject');
  await page.locator('.surface').evaluate(surface => surface.scrollTo(0, surface.scrollHeight));
  await expect.poll(() => lines.first().getAttribute('data-subject')).not.toBe(atTop);
  await expect.poll(() => lines.count()).toBeLessThan(400);
  const last = lines.last().locator('.inline-input').first();
  await last.focus();
  await page.keyboard.press('Shift+Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('.work-sentences') !== null)).toBe(true);
  await page.emulateMedia({ media: 'print' });
  await expect.poll(() => lines.count(), { timeout: 60_000 }).toBeGreaterThanOrEqual(LINES);
  expect(complaints).toEqual([]);
  await context.close();
}, 200_000);
