import fs from 'node:fs';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goToView, openSample, VIEW_NAMES } from './lib/views';
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

test('every face of every view is shown without a complaint, and its text is never clipped', async () => {
  const { page, context, complaints } = await openPage(browser, host.address);
  await openSample(page);
  const only = process.env['REEFWRIGHT_VIEW']?.toLowerCase();
  for (const view of VIEW_NAMES.filter(name => only === undefined || name.toLowerCase() === only)) {
    await goToView(page, view);
    const faces = page.locator('.title-line .view-switches .switch');
    for (let at = 0; at < (await faces.count()); at++) {
      await faces.nth(at).click();
      await page.waitForTimeout(150);
      const face = (await faces.nth(at).innerText()).toLowerCase().replaceAll(' ', '-');
      await page.screenshot({ path: path.join(OUT, `face-${view.toLowerCase()}-${face}.png`) });
      const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(sideways, `${view}, ${face} scrolls sideways`).toBeLessThanOrEqual(0);
    }
  }
  expect(complaints).toEqual([]);
  await context.close();
}, 300_000);
