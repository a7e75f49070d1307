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

/** Goes to a view by the list and waits until its sentence stands. */
export async function goToView(page: Page, name: (typeof VIEW_NAMES)[number]): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Views' })
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click();
  await page.locator('.title-line .sentence').waitFor();
  await page.waitForTimeout(120);
}

/** Opens the sample from the first run and waits for its total. */
export async function openSample(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look at the sample ship' }).click();
  await page.locator('.bottom-cell', { hasText: 'Total' }).first().waitFor({ timeout: 30_000 });
}
