import fs from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goToView, VIEW_NAMES } from './lib/views';
import { launchBrowser, openPage, serveHost, type ServedHost } from './lib/window';

let browser: Browser;
let host: ServedHost;

beforeAll(async () => {
  browser = await launchBrowser();
  host = await serveHost();
});
afterAll(async () => {
  await browser.close();
  host.stop();
});

const total = (page: Page) => page.locator('.bottom-cell').first().locator('dd').innerText();

/** The total once nothing of the bottom line is settling any more, and different from the one before. */
async function settledTotal(page: Page, before: string): Promise<string> {
  await expect.poll(() => total(page), { timeout: 20_000 }).not.toBe(before);
  await expect.poll(() => page.locator('[data-settling]').count(), { timeout: 20_000 }).toBe(0);
  const amount = /\$[\d,]+/.exec(await total(page))?.[0] ?? '';
  expect(amount).not.toBe('');
  return amount;
}

async function saved(page: Page): Promise<void> {
  await expect.poll(() => page.locator('.bottom-head').innerText(), { timeout: 10_000 }).toContain('Saved');
}

test('by mouse: from first run to an edited, saved and reopened document', async () => {
  const { page, context } = await openPage(browser, host.address);
  await page.getByRole('button', { name: 'Start a grant budget' }).click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$[\d,]+/);
  const before = await total(page);
  await page.locator('[data-edit="/vessel/length"]').click();
  await page.locator('.cell-input').fill('140');
  await page.keyboard.press('Enter');
  const after = await settledTotal(page, before);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Save under another name' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill('By mouse');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await saved(page);
  expect(fs.existsSync(path.join(host.folder, 'By mouse.reef.json'))).toBe(true);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Close the project' }).click();
  await page.getByRole('button', { name: 'Open a file' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'By mouse.reef.json' }).first().click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toContain(after);
  expect(await page.locator('[data-edit="/vessel/length"]').innerText()).toContain('140');
  await goToView(page, 'Documents');
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: 'Make the workbook' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
  expect(
    fs
      .readFileSync(await download.path())
      .subarray(0, 2)
      .toString(),
  ).toBe('PK');
  await context.close();
}, 120_000);

/** Presses Tab until the focused element has these words, as someone without a mouse does. */
async function tabTo(page: Page, words: string): Promise<void> {
  for (let press = 0; press < 120; press++) {
    const here = await page.evaluate(() => document.activeElement?.textContent.trim() ?? '');
    if (here === words) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${words}`);
}

test('by keyboard alone: from first run to an edited, saved and reopened document', async () => {
  const { page, context } = await openPage(browser, host.address);
  await tabTo(page, 'Start a bid');
  await page.keyboard.press('Enter');
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$[\d,]+/);
  const before = await total(page);
  const at = () =>
    page.evaluate(
      () =>
        document.activeElement?.getAttribute('data-edit') ??
        document.activeElement?.getAttribute('data-place') ??
        '',
    );
  for (let press = 0; press < 60 && (await at()) === ''; press++) await page.keyboard.press('Tab');
  await page.keyboard.press('Control+Home');
  for (let press = 0; press < 20 && (await at()) !== '/vessel/length'; press++) {
    await page.keyboard.press(press === 0 ? 'ArrowRight' : 'ArrowDown');
    await page.waitForTimeout(60);
  }
  await page.keyboard.press('F2');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('150');
  await page.keyboard.press('Enter');
  const after = await settledTotal(page, before);
  await page.keyboard.press('Control+Shift+S');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('By keyboard');
  await page.keyboard.press('Enter');
  await saved(page);
  await page.keyboard.press('Control+Shift+W');
  await tabTo(page, 'Open a file');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await tabTo(page, 'By keyboard.reef.json');
  await page.keyboard.press('Enter');
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toContain(after);
  await context.close();
}, 120_000);

test('an edit is undone and done again, and the menu says what', async () => {
  const { page, context } = await openPage(browser, host.address);
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$/);
  const before = (await total(page)).split('\n')[0] ?? '';
  await page.locator('[data-edit="/vessel/length"]').click();
  await page.locator('.cell-input').fill('500');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await total(page)).split('\n')[0], { timeout: 20_000 }).not.toBe(before);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Undo: change Length overall' }).click();
  await expect.poll(async () => (await total(page)).split('\n')[0], { timeout: 20_000 }).toBe(before);
  await page.keyboard.press('Control+Shift+Z');
  await expect.poll(async () => (await total(page)).split('\n')[0], { timeout: 20_000 }).not.toBe(before);
  await context.close();
}, 120_000);

test('what cannot be read as a number is told beside the field and changes nothing', async () => {
  const { page, context } = await openPage(browser, host.address);
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$/);
  const before = await total(page);
  await page.locator('[data-edit="/vessel/length"]').click();
  await page.locator('.cell-input').fill('long');
  await page.keyboard.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'Write a plain number' }).waitFor();
  await page.keyboard.press('Escape');
  expect(await total(page)).toBe(before);
  await context.close();
});

test('a file dropped from a newer program or damaged is told and the window stays as it is', async () => {
  const { page, context } = await openPage(browser, host.address);
  await page.evaluate(() => {
    const drop = new DragEvent('drop', { dataTransfer: new DataTransfer(), cancelable: true });
    drop.dataTransfer?.items.add(
      new File(['{"format":"reefwright-project","version":99}'], 'newer.reef.json'),
    );
    window.dispatchEvent(drop);
  });
  await page.getByRole('alert').filter({ hasText: 'newer.reef.json could not be opened' }).waitFor();
  await page.getByRole('button', { name: 'Start a bid' }).waitFor();
  await context.close();
});

test('every figure of every view opens its derivation and reaches a given', async () => {
  const { page, context } = await openPage(browser, host.address, { width: 1920, height: 1080 });
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$/);
  await page.waitForTimeout(6000);
  const failed: string[] = [];
  let asked = 0;
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    for (const face of await page.locator('.view-switches .switch').all()) {
      await face.click();
      const names = await page
        .locator('[data-why]')
        .evaluateAll(all => [...new Set(all.map(one => one.getAttribute('data-why') ?? ''))]);
      const sampled = names.filter((_, index) => index < 5 || index % 61 === 0);
      for (const name of sampled) {
        const figure = page.locator(`[data-why="${name.replaceAll('"', '\\"')}"]`).first();
        if (!(await figure.isVisible())) continue;
        await figure.evaluate(async (element: HTMLElement | SVGElement) => {
          if (element instanceof HTMLElement && element.tagName === 'BUTTON') {
            element.click();
            return;
          }
          element.focus();
          await new Promise(resolve => setTimeout(resolve, 60));
          element.dispatchEvent(
            new KeyboardEvent('keydown', { key: 'Enter', altKey: element.tagName === 'TD', bubbles: true }),
          );
        });
        asked += 1;
        const opened = await page
          .locator('.why-rows li')
          .first()
          .waitFor({ timeout: 6000 })
          .then(
            () => true,
            () => false,
          );
        if (!opened) failed.push(`${view}: ${name}`);
        await page.evaluate(() =>
          document.querySelector<HTMLElement>('.why-bar .text-button:last-child')?.click(),
        );
      }
    }
  }
  expect(asked).toBeGreaterThan(150);
  expect(failed).toEqual([]);
  await context.close();
}, 400_000);
