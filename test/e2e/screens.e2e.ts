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

const SIZES = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
] as const;

for (const { width, height } of SIZES) {
  for (const theme of ['light', 'dark'] as const) {
    test(`every view is shown at ${width} in ${theme} colours without a complaint`, async () => {
      const { page, context, complaints } = await openPage(browser, host.address, { width, height, theme });
      await openSample(page);
      const only = process.env['REEFWRIGHT_VIEW']?.toLowerCase();
      for (const view of VIEW_NAMES.filter(name => only === undefined || name.toLowerCase() === only)) {
        await goToView(page, view);
        if (view === 'Risk') await page.getByRole('button', { name: 'Run the trials' }).click();
        await page.locator('.working').first().waitFor({ state: 'detached', timeout: 60_000 });
        await page.screenshot({ path: path.join(OUT, `${view.toLowerCase()}-${width}-${theme}.png`) });
        const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(sideways, `${view} scrolls sideways`).toBeLessThanOrEqual(0);
      }
      expect(complaints).toEqual([]);
      await context.close();
    });
  }
}

const SIGHTS = ['achromatopsia', 'protanopia', 'deuteranopia', 'tritanopia'] as const;
const PICTURED = ['Vessel', 'Sinking', 'Schedule', 'Budget', 'Funding', 'Risk', 'Compare'] as const;

test('every view with a picture is shown in grey and as the colour-blind see it, and its picture stays', async () => {
  const { page, context } = await openPage(browser, host.address);
  await openSample(page);
  const eyes = await context.newCDPSession(page);
  for (const view of PICTURED) {
    await goToView(page, view);
    if (view === 'Risk') {
      await page.getByRole('button', { name: 'Run the trials' }).click();
      await page.locator('svg[aria-label^="Cost of the runs"]').waitFor({ timeout: 60_000 });
    }
    await page.locator('.working').first().waitFor({ state: 'detached', timeout: 60_000 });
    const plain = await page.screenshot();
    for (const type of SIGHTS) {
      await eyes.send('Emulation.setEmulatedVisionDeficiency', { type });
      const file = path.join(OUT, `${view.toLowerCase()}-1280-${type}.png`);
      const seen = await page.screenshot({ path: file });
      expect(seen.equals(plain), `${view} is emulated`).toBe(false);
    }
    await eyes.send('Emulation.setEmulatedVisionDeficiency', { type: 'none' });
    expect(await page.locator('.surface svg, .strip').count(), view).toBeGreaterThan(0);
  }
  await context.close();
}, 240_000);
