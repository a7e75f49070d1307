import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellOf, shownIn } from './lib/inputs';
import { ownWindow } from './lib/own-window';
import { goToView, openSample } from './lib/views';

const own = ownWindow();

const told = (page: Page) => page.locator('main .title-line .sentence').innerText();

async function type(page: Page, at: string, text: string): Promise<void> {
  await cellOf(page, at).click();
  await page.locator('.cell-input').fill(text);
  await page.keyboard.press('Enter');
}

test('what the reef is worth is read, opened and changed beside the decision, with its range and what binds after', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Decision');
  await page.locator('.view-switches .switch', { hasText: 'Life and benefits' }).click();
  await expect.poll(() => told(page), { timeout: 15_000 }).toMatch(/^Benefit over cost is \d/);
  const before = await told(page);
  await page.locator('main .sentence .figure').first().click();
  await page.locator('.why-panel').getByText('worth today of all years').first().waitFor();
  await page.getByRole('button', { name: 'Close', exact: true }).click();

  await type(page, '/benefits/uses/diving/visitsPerYear', '3000');
  await expect.poll(() => told(page), { timeout: 15_000 }).not.toBe(before);
  // The range spoke of the number before: it is gone, and typed again.
  await expect.poll(() => shownIn(page, '/benefits/uses/diving/visitsPerYear/low')).not.toContain('1,200');
  const certain = await told(page);
  await type(page, '/benefits/uses/diving/visitsPerYear/low', '1500');
  await expect.poll(() => told(page), { timeout: 15_000 }).not.toBe(certain);

  await page.getByRole('button', { name: 'Write these down to change them' }).click();
  await type(page, '/benefits/obligations/buoys/costPerYear', '9000');
  await expect
    .poll(() => shownIn(page, '/benefits/obligations/buoys/costPerYear'), { timeout: 15_000 })
    .toContain('9,000');
  expect(complaints).toEqual([]);
  await context.close();
});
