import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { MOUSE } from './lib/hands';
import { cellOf } from './lib/inputs';
import { ownWindow } from './lib/own-window';
import { goToView, openSample, total } from './lib/views';

const own = ownWindow();
const LONG = { timeout: 30_000 };

/** Keeps what the window has shown of the bid beside a total: whether it was marked, and whether it said there is none. */
function watch(page: Page): Promise<void> {
  return page.evaluate(() => {
    const seen = new Set<string>();
    const look = () => {
      const main = document.querySelector<HTMLElement>('main[data-view="bid"]');
      const total = document.querySelector('.bottom-cell')?.textContent ?? '';
      const says = main?.querySelector('.bid-note')?.textContent ?? '';
      if (main !== null && says.includes('have no amount') && total.startsWith('Total'))
        seen.add(`${main.dataset['behind']}`);
      document.body.dataset['seen'] = [...seen].join(' ');
    };
    new MutationObserver(look).observe(document.querySelector('.frame') ?? document.body, {
      attributes: true,
      childList: true,
      characterData: true,
      subtree: true,
    });
  });
}

test('a view that is opened right after an edit does not tell what was so before it', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Rates');
  const trade = await page
    .locator('td[data-edit^="/rates/overrides/trades~1"]')
    .first()
    .getAttribute('data-edit');
  const wage = trade ?? '';
  const before = await cellOf(page, wage).innerText();
  await MOUSE.put(page, wage, '-5');
  await expect.poll(() => page.locator('.bottom-cell').first().innerText(), LONG).toMatch(/not the total/);
  await goToView(page, 'Bid');
  await expect.poll(() => page.locator('main .bid-note').first().innerText(), LONG).toMatch(/have no amount/);
  await goToView(page, 'Rates');
  await watch(page);
  await MOUSE.put(page, wage, before);
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: /^Bid/ }).click();
  await expect.poll(() => total(page), LONG).toMatch(/^\$5,/);
  await expect
    .poll(() => page.locator('main[data-view="bid"] .sentence').innerText(), LONG)
    .toMatch(/base bid/);
  expect(await page.locator('main').getAttribute('data-behind')).toBe('false');
  expect(await page.locator('body').getAttribute('data-seen')).not.toContain('false');
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);
