import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { clipped, shot, sideways } from './lib/looks';
import { ownWindow } from './lib/own-window';
import { drawn, goToView, openSample, VIEW_NAMES, workedOut } from './lib/views';
import { OUT } from './lib/window';

const own = ownWindow();

const FACES = '.title-line .view-switches .switch';
const LONG = { timeout: 120_000 };
/** Panels, and the keys that open them. */
const PANELS = [
  ['help', 'F1'],
  ['find', 'Control+k'],
  ['scenarios', 'Control+Shift+E'],
  ['import', 'Control+Shift+I'],
] as const;
const SIZES = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
] as const;

/** Keeps a picture of what is shown; nothing scrolls sideways and no text is cut off. */
async function look(page: Page, name: string): Promise<void> {
  await workedOut(page);
  await drawn(page);
  await shot(page, name);
  expect(await sideways(page), `${name} scrolls sideways`).toBeLessThanOrEqual(0);
  expect(await clipped(page), name).toEqual([]);
}

for (const { width, height } of SIZES) {
  for (const theme of ['light', 'dark'] as const) {
    test(`every face of every view is shown at ${width} in ${theme} colours without a complaint`, async () => {
      const { page, context, complaints } = await own.open({ width, height, theme });
      const kind = `${width}-${theme}`;
      await shot(page, `first-run-${kind}`);
      await openSample(page);
      const only = process.env['REEFWRIGHT_VIEW']?.toLowerCase();
      for (const view of VIEW_NAMES.filter(name => only === undefined || name.toLowerCase() === only)) {
        await goToView(page, view);
        if (view === 'Risk') await page.getByRole('button', { name: 'Run the trials' }).click();
        // The pictures of the papers are of this size: they show what is known once every scenario was simulated.
        if (view === 'Compare' && kind === '1280-light') {
          await page.getByRole('button', { name: 'Run the trials of all scenarios' }).click(LONG);
          await page.getByText('P80 cost').first().waitFor(LONG);
        }
        await look(page, `${view.toLowerCase()}-${kind}`);
        for (const face of (await page.locator(FACES).all()).slice(1)) {
          await face.click();
          const words = (await face.innerText()).toLowerCase().replaceAll(' ', '-');
          if (view === 'Schedule' && words === 'crews')
            await page.getByRole('heading', { name: 'How few crews keep the finish?' }).waitFor(LONG);
          await look(page, `${view.toLowerCase()}-${words}-${kind}`);
        }
      }
      expect(complaints).toEqual([]);
      await context.close();
    }, 300_000);

    test(`a derivation, an editor, a form and the panels are shown at ${width} in ${theme} colours`, async () => {
      const { page, context, complaints } = await own.open({ width, height, theme });
      const kind = `${width}-${theme}`;
      await openSample(page);
      await goToView(page, 'Budget');
      await page.locator('.surface td[data-why]').nth(3).click();
      await page.locator('.why-rows li').first().waitFor();
      await look(page, `why-${kind}`);
      await page.keyboard.press('Escape');
      await goToView(page, 'Rates');
      await page.locator('td[data-edit][data-kind="figure"]').first().click();
      await page.locator('.cell-input').fill('much');
      await page.keyboard.press('Enter');
      await look(page, `editor-${kind}`);
      await page.keyboard.press('Escape');
      await goToView(page, 'Risk');
      await page.getByRole('button', { name: 'Register' }).click();
      await page.getByRole('button', { name: 'Add an event' }).click();
      await look(page, `form-${kind}`);
      for (const [name, keys] of PANELS) {
        await page.keyboard.press(keys);
        await page.getByRole('dialog').waitFor();
        await look(page, `${name}-${kind}`);
        await page.keyboard.press('Escape');
        await page.getByRole('dialog').waitFor({ state: 'detached' });
      }
      expect(complaints).toEqual([]);
      await context.close();
    });
  }
}

const SIGHTS = ['achromatopsia', 'protanopia', 'deuteranopia', 'tritanopia'] as const;
const PICTURED = ['Vessel', 'Sinking', 'Schedule', 'Budget', 'Funding', 'Risk', 'Compare'] as const;

test('every view with a picture is shown in grey and as the colour-blind see it, and its picture stays', async () => {
  const { page, context } = await own.open();
  await openSample(page);
  const eyes = await context.newCDPSession(page);
  for (const view of PICTURED) {
    await goToView(page, view);
    if (view === 'Risk') {
      await page.getByRole('button', { name: 'Run the trials' }).click();
      await page.locator('svg[aria-label^="Cost of the runs"]').waitFor({ timeout: 60_000 });
    }
    await workedOut(page);
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
