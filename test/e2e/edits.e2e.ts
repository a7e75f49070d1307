import fs from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { changeInput, inputsHere, shownIn, type Input } from './lib/inputs';
import { goToView, openSample, VIEW_NAMES } from './lib/views';
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

const FACES = '.title-line .view-switches .switch';

async function goToFace(page: Page, view: string, face: string): Promise<void> {
  const name = VIEW_NAMES.find(one => one === view);
  if (name === undefined) throw new Error(`no view ${view}`);
  await goToView(page, name);
  if (face !== '') await page.locator(FACES, { hasText: face }).first().click();
  await page.waitForTimeout(150);
}

async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(300);
  await page.locator('.working').waitFor({ state: 'detached', timeout: 20_000 });
}

/** Edits an input, undoes it and does it again, looking at what it shows each time. */
async function editUndoRedo(page: Page, input: Input): Promise<string | undefined> {
  const before = await shownIn(page, input.at);
  await changeInput(page, input);
  const shown = () => shownIn(page, input.at);
  await expect
    .poll(shown, { timeout: 15_000, message: `${input.view} ${input.at} is changed` })
    .not.toBe(before);
  await settled(page);
  const after = await shown();
  await page.keyboard.press('Control+z');
  await expect.poll(shown, { timeout: 15_000, message: `${input.view} ${input.at} is undone` }).toBe(before);
  await settled(page);
  await page.keyboard.press('Control+Shift+Z');
  await expect
    .poll(shown, { timeout: 15_000, message: `${input.view} ${input.at} is done again` })
    .toBe(after);
  await settled(page);
  return after;
}

test('in every view one input of each kind is edited, undone, done again, saved, closed and found after reopening', async () => {
  const { page, context, complaints } = await openPage(browser, host.address, { width: 1920, height: 1080 });
  await openSample(page);
  const done: Input[] = [];
  const faults: string[] = [];
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    const faces = await page.locator(FACES).allInnerTexts();
    const kinds = new Set<string>();
    for (const face of faces.length === 0 ? [''] : faces) {
      await goToFace(page, view, face);
      for (const { at, kind } of await inputsHere(page, kinds)) {
        kinds.add(kind);
        const input = { view, face, at, kind };
        try {
          await editUndoRedo(page, input);
          done.push(input);
        } catch (cause) {
          faults.push(
            `${view}, ${face}, ${at}: ${cause instanceof Error ? (cause.message.split('\n')[0] ?? '') : ''}`,
          );
          await page.keyboard.press('Escape');
        }
      }
    }
  }
  expect(faults).toEqual([]);
  expect(done.length).toBeGreaterThan(20);
  const kept = new Map<string, string>();
  for (const input of done) {
    await goToFace(page, input.view, input.face);
    kept.set(input.at, await shownIn(page, input.at));
  }
  await page.keyboard.press('Control+Shift+S');
  await page.getByRole('textbox', { name: 'Name' }).fill('Edited');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect.poll(() => page.locator('.bottom-head').innerText(), { timeout: 15_000 }).toContain('Saved');
  expect(fs.existsSync(path.join(host.folder, 'Edited.reef.json'))).toBe(true);
  await page.keyboard.press('Control+Shift+W');
  await page.getByRole('button', { name: 'Open a file' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Edited.reef.json' }).first().click();
  await page.locator('.bottom-cell').first().waitFor({ timeout: 30_000 });
  for (const input of done) {
    await goToFace(page, input.view, input.face);
    expect(await shownIn(page, input.at), `${input.view} ${input.at} after reopening`).toBe(
      kept.get(input.at),
    );
  }
  expect(complaints).toEqual([]);
  await context.close();
}, 600_000);
