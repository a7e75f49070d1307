import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { ownWindow } from './lib/own-window';
import { goToView, openSample } from './lib/views';

const own = ownWindow();
const LONG = { timeout: 20_000 };

/** Finds something by its words with the keys alone, of a kind that begins with a word. */
async function find(page: Page, words: string, kind: RegExp): Promise<void> {
  await page.keyboard.press('Control+k');
  await page.locator('.finder-hits').waitFor(LONG);
  await page.keyboard.type(words);
  const hit = page.getByRole('menuitem').filter({ hasText: kind }).first();
  await hit.waitFor(LONG);
  for (let press = 0; press < 40; press++) {
    if ((await hit.getAttribute('data-focused')) === 'true') break;
    await page.keyboard.press('ArrowDown');
  }
  await page.keyboard.press('Enter');
}

/** Where the focus is: the subject, whether it is marked as chosen, and whether it is in sight. */
function focused(page: Page): Promise<{ subject: string; isMarked: boolean; isInSight: boolean }> {
  return page.evaluate(() => {
    const here = document.activeElement?.closest('[data-subject]');
    const surface = document.querySelector('.surface')?.getBoundingClientRect();
    const box = here?.getBoundingClientRect();
    return {
      subject: here?.getAttribute('data-subject') ?? '',
      isMarked: here?.classList.contains('chosen') === true || here?.getAttribute('aria-pressed') === 'true',
      isInSight:
        box !== undefined && surface !== undefined && box.top >= surface.top && box.bottom <= surface.bottom,
    };
  });
}

test('what is found is shown on the face that is open, in sight, marked, and has the focus', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Work');
  await page.getByRole('button', { name: 'Table', exact: true }).click();
  await find(page, 'pipe lagging', /work item/);
  await expect.poll(() => focused(page), LONG).toMatchObject({ isMarked: true, isInSight: true });
  const { subject } = await focused(page);
  expect(subject).not.toBe('');
  const there = { subject, isMarked: true, isInSight: true };
  const table = page.getByRole('button', { name: 'Table', exact: true });
  expect(await table.getAttribute('aria-pressed')).toBe('true');
  await page.evaluate(() => document.querySelector('.surface')?.scrollTo(0, 0));
  await find(page, 'pipe lagging', /work item/);
  await expect.poll(() => focused(page), LONG).toEqual(there);
  await find(page, 'pipe lagging', /activity/);
  await page.locator('main[data-view="schedule"]').waitFor(LONG);
  await expect.poll(() => focused(page), LONG).toEqual(there);
  await goToView(page, 'Budget');
  await find(page, 'pipe lagging', /work item/);
  await page.locator('main[data-view="work"]').waitFor(LONG);
  await expect.poll(() => focused(page), LONG).toEqual(there);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);
