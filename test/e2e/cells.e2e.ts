import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { shot } from './lib/looks';
import { ownWindow } from './lib/own-window';
import { goToView, openSample } from './lib/views';

const own = ownWindow();
const LONG = { timeout: 30_000 };

const cell = (page: Page, name: string): Locator => page.locator(`td[data-edit="/vessel/${name}"]`);

/** How often the focus of the table changes within a second. */
function changesOfFocus(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>(done => {
        let count = 0;
        const counter = () => (count += 1);
        window.addEventListener('focusin', counter);
        setTimeout(() => {
          window.removeEventListener('focusin', counter);
          done(count);
        }, 1000);
      }),
  );
}

test('going to another cell while one is open takes what was typed, by one click or two, and the focus comes to rest', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  for (const goOn of ['click', 'dblclick'] as const) {
    const [length, depth] = goOn === 'click' ? ['321', '31'] : ['322', '32'];
    await cell(page, 'length')[goOn](LONG);
    await page.locator('.cell-input').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type(length);
    await cell(page, 'depth')[goOn](LONG);
    await page.locator('td[data-edit="/vessel/depth"] .cell-input').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type(depth);
    expect(await changesOfFocus(page), goOn).toBeLessThan(3);
    await page.keyboard.press('Enter');
    await expect.poll(() => cell(page, 'length').innerText(), LONG).toBe(length);
    await expect.poll(() => cell(page, 'depth').innerText(), LONG).toBe(depth);
    await expect.poll(() => changesOfFocus(page), LONG).toBe(0);
  }
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('typing goes on beside a choice that was left open, and each cell keeps its own', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  const hull = await cell(page, 'hullType').innerText(LONG);
  await cell(page, 'hullType').click();
  await page.locator('select.cell-input').waitFor();
  await cell(page, 'beam').dblclick();
  await page.locator('td[data-edit="/vessel/beam"] .cell-input').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('47.5', { delay: 20 });
  expect(await changesOfFocus(page)).toBe(0);
  await page.keyboard.press('Enter');
  await expect.poll(() => cell(page, 'beam').innerText(), LONG).toBe('47.5');
  expect(await cell(page, 'hullType').innerText()).toBe(hull);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('a choice made by keys waits for Enter, and Escape leaves it as it was', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  const hull = await cell(page, 'hullType').innerText(LONG);
  for (const end of ['Escape', 'Enter'] as const) {
    await cell(page, 'hullType').click();
    const list = page.locator('select.cell-input');
    await list.waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await list.count(), 'the list stays').toBe(1);
    await page.keyboard.press(end);
    await list.waitFor({ state: 'detached' });
    if (end === 'Escape') expect(await cell(page, 'hullType').innerText()).toBe(hull);
    else await expect.poll(() => cell(page, 'hullType').innerText(), LONG).not.toBe(hull);
  }
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('a wage below zero is told at its cell, by mark, words and description, until it is put right', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Rates');
  const wage = page.locator('td[data-edit^="/rates/overrides/trades~1"]').first();
  const before = await wage.innerText();
  const put = async (value: string) => {
    await wage.click(LONG);
    await page.locator('.cell-input').fill(value);
    await page.keyboard.press('Enter');
  };
  await put('-5');
  await expect.poll(() => wage.getAttribute('aria-invalid'), LONG).toBe('true');
  const words = page.locator(`[id="${await wage.getAttribute('aria-describedby')}"]`);
  expect(await words.innerText()).toMatch(/must be 0 or more/);
  await shot(page, 'told-at-cell');
  await put(before);
  await expect.poll(() => wage.getAttribute('aria-invalid'), LONG).toBeNull();
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);
