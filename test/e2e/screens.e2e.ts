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
