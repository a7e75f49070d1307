import fs from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changeInput, inputsHere, shownIn, type Input } from './lib/inputs';
import { ownWindow } from './lib/own-window';
import { drawn, goToView, openSample, VIEW_NAMES, workedOut } from './lib/views';

const own = ownWindow();

const FACES = '.title-line .view-switches .switch';

async function goToFace(page: Page, view: string, face: string): Promise<void> {
  const name = VIEW_NAMES.find(one => one === view);
  if (name === undefined) throw new Error(`no view ${view}`);
  await goToView(page, name);
  if (face !== '') await page.locator(FACES, { hasText: face }).first().click();
  await drawn(page);
}

/** What some views need before they have an input: the board’s own weights, a file named as evidence. */
const PREPARE: Partial<Record<(typeof VIEW_NAMES)[number], (page: Page) => Promise<void>>> = {
  Compare: async page => {
    await goToFace(page, 'Compare', 'Weights');
    await page.getByRole('button', { name: 'Set the board’s own weights' }).click({ timeout: 90_000 });
    await page.locator('[data-edit="/decision/weights/0/weight"]').waitFor({ timeout: 90_000 });
  },
  Documents: async page => {
    await goToFace(page, 'Documents', 'Evidence');
    await page.locator('.evidence-choice input').setInputFiles({
      name: 'gauging.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from('invented'),
    });
    await page.getByRole('gridcell', { name: 'gauging.pdf' }).waitFor({ timeout: 15_000 });
  },
};

/** Kinds of input of the demo’s views, at the least; what a view gains is edited as well. */
const KINDS: Readonly<Record<(typeof VIEW_NAMES)[number], readonly string[]>> = {
  Vessel: ['choice', 'whole', 'figure', 'text'],
  Materials: ['figure', 'text', 'choice', 'decimal', 'date'],
  Sinking: [],
  Work: ['figure', 'choice', 'text', 'date', 'switch', 'decimal'],
  Rates: ['figure'],
  Schedule: ['date', 'switch', 'text'],
  Budget: [],
  Funding: ['text', 'choice', 'figure', 'date', 'whole', 'switch'],
  Bid: ['text', 'figure', 'switch', 'date'],
  Risk: ['text', 'figure', 'whole', 'decimal', 'choice'],
  Compare: ['decimal'],
  Review: ['text', 'date', 'figure'],
  Decision: ['choice', 'text'],
  Documents: ['whole', 'text'],
};

/** Edits an input, undoes it and does it again, looking at what it shows each time. */
async function editUndoRedo(page: Page, input: Input): Promise<string | undefined> {
  const before = await shownIn(page, input.at);
  await changeInput(page, input);
  const shown = () => shownIn(page, input.at);
  await expect
    .poll(shown, { timeout: 15_000, message: `${input.view} ${input.at} is changed` })
    .not.toBe(before);
  const after = await shown();
  await page.keyboard.press('Control+z');
  await expect.poll(shown, { timeout: 15_000, message: `${input.view} ${input.at} is undone` }).toBe(before);
  await page.keyboard.press('Control+Shift+Z');
  await expect
    .poll(shown, { timeout: 15_000, message: `${input.view} ${input.at} is done again` })
    .toBe(after);
  await workedOut(page);
  return after;
}

test('in every view one input of each kind is edited, undone, done again, saved, closed and found after reopening', async () => {
  const { page, context, complaints } = await own.open({ width: 1920, height: 1080 });
  await openSample(page);
  const done: Input[] = [];
  const faults: string[] = [];
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    await PREPARE[view]?.(page);
    const faces = await page.locator(FACES).allInnerTexts();
    const kinds = new Set<string>();
    for (const face of faces.length === 0 ? [''] : faces) {
      await goToFace(page, view, face);
      await workedOut(page);
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
  const kinds = (view: string) => done.filter(one => one.view === view).map(one => one.kind);
  process.stdout.write(`${VIEW_NAMES.map(view => `${view}: ${kinds(view).join(', ')}`).join('\n')}\n`);
  for (const view of VIEW_NAMES) expect(kinds(view), view).toEqual(expect.arrayContaining([...KINDS[view]]));
  const kept = new Map<string, string>();
  for (const input of done) {
    await goToFace(page, input.view, input.face);
    kept.set(input.at, await shownIn(page, input.at));
  }
  await page.keyboard.press('Control+Shift+S');
  await page.getByRole('textbox', { name: 'Name' }).fill('Edited');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect.poll(() => page.locator('.bottom-head').innerText(), { timeout: 15_000 }).toContain('Saved');
  expect(fs.existsSync(path.join(own.folder(), 'Edited.reef.json'))).toBe(true);
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
