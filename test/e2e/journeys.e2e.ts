import fs from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { KEYBOARD, MOUSE, type Hand } from './lib/hands';
import { cellOf } from './lib/inputs';
import { handedOver, numbersOf, wordsOf } from './lib/papers';
import { ownWindow } from './lib/own-window';
import { total } from './lib/views';

const own = ownWindow();

const LONG = { timeout: 60_000 };
const missing = (page: Page) => page.locator('.still-missing').innerText();
const sentence = (page: Page) => page.locator('.title-line .sentence').innerText();
const currentView = (page: Page) => page.locator('.view-item[aria-current="page"]').innerText();

/** The total as whole dollars, once nothing is being worked out. */
async function settledTotal(page: Page): Promise<number> {
  await page.waitForTimeout(500);
  await expect.poll(() => page.locator('[data-settling]').count(), LONG).toBe(0);
  await page.locator('.working').waitFor({ state: 'detached', ...LONG });
  const amount = /\$([\d,]+)/.exec(await total(page))?.[1] ?? '';
  expect(amount).not.toBe('');
  return Number(amount.replaceAll(',', ''));
}

async function begin(page: Page, hand: Hand, words: string): Promise<void> {
  const button = page.getByRole('button', { name: words, exact: true }).first();
  await button.waitFor(LONG);
  await hand.press(page, words);
  // On a slow machine the press may come before the window listens: whoever still sees the page of the start presses again.
  await button.waitFor({ state: 'detached', timeout: 20_000 }).catch(() => hand.press(page, words));
  await expect.poll(() => total(page).catch(() => ''), LONG).toMatch(/^\$[\d,]+/);
}

/** Follows one of the things that are still missing to its input and gives it. */
async function give(page: Page, hand: Hand, words: string, at: string, value: string): Promise<void> {
  await expect.poll(() => missing(page), LONG).toContain(words);
  await hand.press(page, words);
  await cellOf(page, at).waitFor(LONG);
  await page.waitForTimeout(250);
  await hand.put(page, at, value);
  await settledTotal(page);
}

async function save(page: Page, hand: Hand, name: string): Promise<void> {
  await hand.command(page, 'Save under another name', 'Control+Shift+S');
  await hand.giveName(page, name);
  await expect.poll(() => page.locator('.bottom-head').innerText(), LONG).toContain('Saved');
  expect(fs.existsSync(path.join(own.folder(), `${name}.reef.json`))).toBe(true);
}

/** Makes workbook and report and reads both back: the total of the bottom line and the words stand in them. */
async function papers(page: Page, hand: Hand, amount: number, words: readonly string[]): Promise<void> {
  await hand.open(page, 'Documents');
  const books = await handedOver(page, () => hand.press(page, 'Make the workbook'));
  const [book] = [...books].filter(([name]) => name.endsWith('.xlsx'));
  if (book === undefined) throw new Error('no workbook came');
  expect((await numbersOf(book[1])).some(one => Math.round(one) === amount)).toBe(true);
  const reports = await handedOver(page, () => hand.press(page, 'Make the report'));
  const [, report = ''] = [...reports].find(([name]) => name.endsWith('-report.pdf')) ?? [];
  const text = wordsOf(report).replace(/\s+/g, ' ');
  for (const word of words) expect(text).toContain(word);
  // The report prints cents, the bottom line whole dollars.
  const amounts = [...text.matchAll(/\$([\d,]+\.\d\d)/g)].map(found =>
    Number((found[1] ?? '').replaceAll(',', '')),
  );
  expect(amounts.some(one => Math.round(one) === amount)).toBe(true);
}

async function closeAndReopen(page: Page, hand: Hand, name: string, amount: number): Promise<void> {
  await hand.command(page, 'Close the project', 'Control+Shift+W');
  await hand.press(page, 'Open a file');
  await page.getByRole('dialog').waitFor();
  await hand.press(page, `${name}.reef.json`);
  await expect.poll(() => total(page).catch(() => ''), LONG).toContain(amount.toLocaleString('en-US'));
}

describe.each([MOUSE, KEYBOARD])('$name', hand => {
  const named = (who: string) => `${who} ${hand.name}`;

  test('a coordinator begins a grant budget, is told what is missing, and leaves with forms, workbook and report', async () => {
    const { page, context, complaints, foreign } = await own.open();
    await begin(page, hand, 'Start a grant budget');
    await expect.poll(() => currentView(page), LONG).toBe('Funding');
    await expect.poll(() => missing(page), LONG).toContain('the sources of the money');
    await hand.press(page, 'Begin with one grant and the own share');
    await page.locator('.still-missing', { hasText: 'the period of the grant' }).waitFor(LONG);
    await expect.poll(() => missing(page), LONG).not.toContain('the sources of the money');
    const period = '/funding/sources/grant/period';
    await give(page, hand, 'the period of the grant', `${period}/start`, '2026-12-01');
    await hand.put(page, `${period}/finish`, '2030-12-31');
    await give(page, hand, 'the share of the grant', '/funding/sources/grant/share', '0.8');
    await give(page, hand, 'the name, type and year of the ship', '/vessel/name', 'Corrigan Light');
    await hand.open(page, 'Funding');
    await page.getByText('SF-424A, section B', { exact: false }).first().waitFor(LONG);
    await expect.poll(() => missing(page), LONG).not.toContain('the name, type and year of the ship');
    await expect.poll(() => missing(page), LONG).toContain('her length');
    const amount = await settledTotal(page);
    await save(page, hand, named('Grant'));
    await papers(page, hand, amount, ['Corrigan Light']);
    await expect.poll(() => missing(page), LONG).toContain('quantities found by a survey');
    await closeAndReopen(page, hand, named('Grant'), amount);
    expect(complaints).toEqual([]);
    expect(foreign, 'requests to other machines').toEqual([]);
    await context.close();
  }, 240_000);

  test('a contractor begins a bid, gives ship and wage, and leaves with sheet, bid file, workbook and report', async () => {
    const { page, context, complaints, foreign } = await own.open();
    await begin(page, hand, 'Start a bid');
    await expect.poll(() => currentView(page), LONG).toBe('Bid');
    await expect.poll(() => sentence(page), LONG).toMatch(/items make a base bid of \$[\d,]+/);
    const before = await settledTotal(page);
    await give(page, hand, 'her length', '/vessel/length', '400');
    await hand.open(page, 'Bid');
    await hand.press(page, 'your wages');
    await hand.put(page, '/rates/overrides/trades~1burner~1wage/figure', '31.5');
    const amount = await settledTotal(page);
    expect(amount).toBeGreaterThan(before);
    await hand.open(page, 'Bid');
    await page.locator('.still-missing', { hasText: 'your mark-ups' }).waitFor(LONG);
    await expect.poll(() => missing(page), LONG).not.toContain('your wages');
    await save(page, hand, named('Bid'));
    await papers(page, hand, amount, ['Unnamed ship']);
    const prints = await handedOver(page, () => hand.press(page, 'Make the printed bid'));
    expect([...prints].map(([name]) => name.replace(/^.*-(?=bid)/, ''))).toEqual(['bid-file.pdf']);
    expect(wordsOf([...prints][0]?.[1] ?? '')).toContain('Schedule of values');
    const files = await handedOver(page, () => hand.press(page, 'Make the bid file'));
    const [, file = ''] = [...files].find(([name]) => name.endsWith('.xlsx')) ?? [];
    const inFile = await numbersOf(file);
    await hand.open(page, 'Bid');
    const bid = /base bid of \$([\d,]+)/.exec(await sentence(page))?.[1] ?? '';
    expect(inFile.map(one => Math.round(one))).toContain(Number(bid.replaceAll(',', '')));
    await closeAndReopen(page, hand, named('Bid'), amount);
    expect(complaints).toEqual([]);
    expect(foreign, 'requests to other machines').toEqual([]);
    await context.close();
  }, 240_000);

  test('a board begins a comparison, sees what it votes on, votes, and leaves with workbook and report', async () => {
    const { page, context, complaints, foreign } = await own.open();
    await begin(page, hand, 'Start a comparison');
    await expect.poll(() => currentView(page), LONG).toBe('Decision');
    await page.getByText('What was not studied').waitFor(LONG);
    await give(page, hand, 'the last date', '/calendars/deadline', '2030-12-31');
    await hand.open(page, 'Compare');
    await page.getByText('May be carried out').first().waitFor(LONG);
    await expect
      .poll(() => sentence(page), LONG)
      .toMatch(/costs (least, )?\$[\d,]+ (more|less) than A|costs as much as A/);
    await hand.press(page, 'Weights');
    await hand.press(page, 'Set the board’s own weights');
    await page.locator('[data-edit="/decision/weights/0/weight"]').waitFor(LONG);
    await hand.put(page, '/decision/weights/0/weight', '0.6');
    await hand.open(page, 'Decision');
    await page.locator('.still-missing', { hasText: 'the vote' }).waitFor(LONG);
    const letter = (await page.locator('.recommended .letter').innerText()).trim();
    const chosen = page.locator('[data-edit="/decision/chosen"]');
    await chosen.waitFor(LONG);
    await hand.put(page, '/decision/chosen', await titled(page, hand, letter));
    await page.getByText('chosen by the board').waitFor(LONG);
    const amount = await settledTotal(page);
    await expect.poll(() => missing(page), LONG).not.toContain('the vote');
    await save(page, hand, named('Comparison'));
    await papers(page, hand, amount, ['Unnamed ship']);
    await closeAndReopen(page, hand, named('Comparison'), amount);
    await expect.poll(() => currentView(page), LONG).toBe('Decision');
    await page.getByText('chosen by the board').waitFor(LONG);
    expect(complaints).toEqual([]);
    expect(foreign, 'requests to other machines').toEqual([]);
    await context.close();
  }, 240_000);
});

/** The words of a scenario as the vote offers them. */
async function titled(page: Page, hand: Hand, letter: string): Promise<string> {
  const title = (await page.locator('.recommended .head').innerText()).replace(/\s+/g, ' ').trim();
  const words = /^\S+ (.+): (comes first|chosen by the board)$/.exec(title)?.[1] ?? '';
  return hand.name === MOUSE.name ? `${letter}, ${words}` : letter;
}
