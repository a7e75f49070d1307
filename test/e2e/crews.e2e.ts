import { expect, test } from 'vitest';
import { shot, sideways, violations } from './lib/looks';
import { ownWindow } from './lib/own-window';
import { goToView, openSample } from './lib/views';

const own = ownWindow();

const LONG = { timeout: 240_000 };

test('the schedule answers about its crews: evened out, as few as can be, and which cost least', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Schedule');
  await page.locator('.title-line .view-switches .switch', { hasText: 'Crews' }).click();
  await page.getByRole('heading', { name: 'How few crews keep the finish?' }).waitFor(LONG);
  await expect
    .poll(() => page.locator('main').innerText(), { timeout: 30_000 })
    .toMatch(/crews hired become \d+/);
  await expect
    .poll(() => page.locator('main').innerText(), { timeout: 30_000 })
    .toContain('It is not part of the estimate.');

  // A long table under other tables shows its first rows when one looks at them, each under its name.
  const moved = page.getByRole('grid', { name: 'Activities that start on another day' }).last();
  await moved.evaluate(table => table.scrollIntoView({ block: 'start' }));
  await expect
    .poll(() => moved.locator('tbody tr').first().innerText(), { timeout: 30_000 })
    .toMatch(/^[A-Z][a-z]+.*\d{4}/s);

  const search = page.getByRole('button', { name: 'Find the cheapest plan' });
  await search.click();
  await page.getByRole('button', { name: 'Stop, keep the last answer' }).waitFor(LONG);
  await page.getByRole('button', { name: 'Stop, keep the last answer' }).click();
  await search.waitFor(LONG);
  await search.click();
  await page.getByRole('button', { name: 'Search again' }).and(page.locator(':enabled')).waitFor(LONG);
  const text = await page.locator('main').innerText();
  expect(text).toMatch(/The cheapest plan found/);
  expect(text).toMatch(/local codes/);
  expect(await page.getByRole('grid', { name: 'Crew plans' }).locator('tbody tr').count()).toBeGreaterThan(5);
  await shot(page, 'crews', true);
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  // A plan is taken up as a scenario beside the others; the total is then that of the plan, and undo takes it away.
  const total = () => page.locator('.bottom-cell', { hasText: 'Total' }).first().innerText();
  const before = await total();
  await page
    .getByRole('button', { name: /^Make a scenario of plan/ })
    .first()
    .click();
  await page.getByText('Made a scenario: Crew plan').waitFor();
  await expect.poll(total, { timeout: 30_000 }).not.toBe(before);
  expect(complaints).toEqual([]);
  await context.close();
}, 600_000);
