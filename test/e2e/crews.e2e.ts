import fs from 'node:fs';
import path from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goToView, openSample } from './lib/views';
import { launchBrowser, openPage, OUT, serveHost, type ServedHost } from './lib/window';

let browser: Browser;
let host: ServedHost;

beforeAll(async () => {
  fs.mkdirSync(OUT, { recursive: true });
  browser = await launchBrowser();
  host = await serveHost();
});
afterAll(async () => {
  await browser.close();
  host.stop();
});

const LONG = { timeout: 240_000 };

/** What the rules of the web content guidelines find in the page. */
async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    type Found = { violations: { id: string; nodes: { html: string }[] }[] };
    const { axe: engine } = window as unknown as { axe: { run: (root: Document) => Promise<Found> } };
    return (await engine.run(document)).violations.map(
      one => `${one.id}: ${one.nodes[0]?.html.slice(0, 140)}`,
    );
  });
}

test('the schedule answers about its crews: evened out, as few as can be, and which cost least', async () => {
  const { page, context, complaints } = await openPage(browser, host.address);
  await openSample(page);
  await goToView(page, 'Schedule');
  await page.locator('.title-line .view-switches .switch', { hasText: 'Crews' }).click();
  await page.getByRole('heading', { name: 'How few crews keep the finish?' }).waitFor(LONG);
  expect(await page.locator('main').innerText()).toMatch(/crews hired become \d+/);
  expect(await page.locator('main').innerText()).toContain('It is not part of the estimate.');

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
  await page.screenshot({ path: path.join(OUT, 'crews.png'), fullPage: true });
  expect(await violations(page)).toEqual([]);
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(sideways).toBeLessThanOrEqual(0);
  expect(complaints).toEqual([]);
  await context.close();
}, 600_000);
