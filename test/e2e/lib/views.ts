import type { Page } from 'playwright-core';

export const VIEW_NAMES = [
  'Vessel',
  'Materials',
  'Sinking',
  'Work',
  'Rates',
  'Schedule',
  'Budget',
  'Funding',
  'Bid',
  'Risk',
  'Compare',
  'Review',
  'Decision',
  'Documents',
] as const;

/** Goes to a view by the list and waits until it is drawn. */
export async function goToView(page: Page, name: (typeof VIEW_NAMES)[number]): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Views' })
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click();
  await page.locator(`main[data-view="${name.toLowerCase()}"] .title-line .sentence`).waitFor();
  await drawn(page);
}

/** Waits until what was asked for last is on the screen. */
export function drawn(page: Page): Promise<void> {
  return page.evaluate(
    () => new Promise<void>(done => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
}

/** Waits until nothing is being worked out in the view that is open and in the bottom line. */
export async function workedOut(page: Page): Promise<void> {
  await page.locator('.working').first().waitFor({ state: 'detached', timeout: 60_000 });
  await page.locator('[data-settling]').first().waitFor({ state: 'detached', timeout: 60_000 });
  const stillSays = page.locator('.title-line .sentence', { hasText: /^Working out/ });
  await stillSays.first().waitFor({ state: 'detached', timeout: 60_000 });
}

/** Opens the sample from the first run and waits for its total. */
export async function openSample(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await page.locator('.bottom-cell', { hasText: 'Total' }).first().waitFor({ timeout: 30_000 });
}

/** What the bottom line says of the total. */
export function total(page: Page): Promise<string> {
  return page.locator('.bottom-cell').first().locator('dd').innerText();
}
