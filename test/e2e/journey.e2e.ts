import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { ownWindow } from './lib/own-window';
import { goToView, total, VIEW_NAMES, workedOut } from './lib/views';

const own = ownWindow();

test('an edit is undone and done again, and the menu says what', async () => {
  const { page, context } = await own.open();
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
  const { page, context } = await own.open();
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$/);
  const before = await total(page);
  await page.locator('[data-edit="/vessel/length"]').click();
  await page.locator('.cell-input').fill('long');
  await page.keyboard.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'Write a number such as' }).waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => total(page), { timeout: 30_000 }).toBe(before);
  await context.close();
});

// NIST SP 811 (2008), appendix B.8: 1 ft = 0.3048 m, so that 130 m are 426.509 ft.
test('a length typed in another unit than its field is converted', async () => {
  const { page, context } = await own.open();
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  const cell = page.locator('[data-edit="/vessel/length"]');
  await cell.click({ timeout: 30_000 });
  await page.locator('.cell-input').fill('130 m');
  await page.keyboard.press('Enter');
  await expect.poll(() => cell.innerText(), { timeout: 30_000 }).toBe('426.509');
  await context.close();
});

test('a file dropped from a newer program or damaged is told and the window stays as it is', async () => {
  const { page, context } = await own.open();
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

/** Figures in tables and sentences that nothing opens. */
const CLOSED = () => {
  const cells = [...document.querySelectorAll<HTMLElement>('.surface td.number')]
    .filter(cell => /\d/.test(cell.innerText))
    .filter(cell => cell.dataset['why'] === undefined && cell.dataset['edit'] === undefined)
    .map(cell => {
      const table = cell.closest('table')?.caption?.innerText ?? '';
      return `${table}: ${cell.closest('tr')?.innerText.replace(/\s+/g, ' ').slice(0, 60) ?? ''}`;
    });
  const said = [...document.querySelectorAll<HTMLElement>('.surface .sentence')].flatMap(sentence =>
    [...sentence.childNodes]
      .filter(node => node.nodeType === Node.TEXT_NODE && /\$\d/.test(node.textContent ?? ''))
      .map(node => node.textContent ?? ''),
  );
  return [...cells, ...said];
};

test('every figure of every view opens its derivation and reaches a given', async () => {
  const { page, context } = await own.open({ width: 1920, height: 1080 });
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await expect.poll(() => total(page).catch(() => ''), { timeout: 30_000 }).toMatch(/^\$/);
  await expect.poll(() => page.locator('[data-settling]').count(), { timeout: 60_000 }).toBe(0);
  await goToView(page, 'Compare');
  await page.getByRole('button', { name: 'Run the trials of all scenarios' }).click({ timeout: 90_000 });
  await page.getByText('P80 cost').first().waitFor({ timeout: 120_000 });
  const failed: string[] = [];
  const closed: string[] = [];
  let asked = 0;
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    await workedOut(page);
    for (const face of await facesOf(page)) {
      await face?.click();
      await workedOut(page);
      closed.push(...(await page.evaluate(CLOSED)).map(words => `${view}: ${words}`));
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
  expect(asked).toBeGreaterThan(180);
  expect(failed).toEqual([]);
  expect(closed).toEqual([]);
  await context.close();
}, 500_000);

/** The faces of the view that is open; one that is nothing to press where it has no others. */
async function facesOf(page: Page) {
  const faces = await page.locator('.title-line .view-switches .switch').all();
  return faces.length === 0 ? [undefined] : faces;
}

test('a simulated figure leads through its drivers to a given with its range', async () => {
  const { page, context } = await own.open();
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await goToView(page, 'Risk');
  await page.getByRole('button', { name: 'Run the trials' }).click({ timeout: 90_000 });
  await page.locator('svg[aria-label^="Cost of the runs"]').waitFor({ timeout: 120_000 });
  await page.locator('[data-why="run:percentiles|p80|cost"]').click();
  const panel = page.locator('.why-panel');
  await panel.getByText('seed: the same seed gives the same runs').waitFor();
  const ways = panel.locator('.why-row', { hasText: 'of the variance' }).locator('[data-why]');
  const names = await ways.evaluateAll(all => all.map(one => one.getAttribute('data-why') ?? ''));
  const given = names.findIndex(name => !name.startsWith('run:'));
  expect(given).toBeGreaterThanOrEqual(0);
  await ways.nth(given).click();
  await panel.locator('.why-range').first().waitFor();
  await panel.getByRole('button', { name: '‹ Back' }).click();
  await panel.getByText('seed: the same seed gives the same runs').waitFor();
  await context.close();
}, 240_000);
