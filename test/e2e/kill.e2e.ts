import fs from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellOf } from './lib/inputs';
import { goToView, openSample } from './lib/views';
import { hostOver, launchBrowser, newBase, openPage, type RunningHost } from './lib/window';

const AT = '/site/towDistance';
/** Of every kill the work that is lost is told; `REEFWRIGHT_KILLS` asks for more of them. */
const KILLS = Number(process.env['REEFWRIGHT_KILLS'] ?? 2);
const MOST_LOST = 5000;

let browser: Browser | undefined;
const base = newBase();
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  fs.rmSync(base, { recursive: true, force: true });
});

/** When each edit was made, by what it put in. */
type Made = Map<number, number>;

/** Puts a value into the figure as a person does; who is too slow for a busy machine tries again. */
async function isPut(page: Page, value: string): Promise<boolean> {
  const editor = page.locator('.cell-input');
  try {
    await cellOf(page, AT).click({ timeout: 2000 });
    await editor.fill(value, { timeout: 2000 });
    await editor.press('Enter', { timeout: 2000 });
    return true;
  } catch {
    return false;
  }
}

/** Edits one figure over and over for so many milliseconds, another value each time. */
async function typeFor(page: Page, milliseconds: number, first: number): Promise<Made> {
  const made: Made = new Map();
  const until = performance.now() + milliseconds;
  for (let value = first; performance.now() < until; value++)
    if (await isPut(page, String(value))) made.set(value, performance.now());
  return made;
}

async function killed(host: RunningHost): Promise<number> {
  const gone = new Promise(resolve => host.child.once('exit', resolve));
  host.child.kill('SIGKILL');
  const at = performance.now();
  await gone;
  return at;
}

/** How old the oldest edit is that did not come back, in milliseconds before the kill. */
function lostOf(made: Made, found: number, at: number): number {
  const missing = [...made].filter(([value]) => value > found).map(([, when]) => at - when);
  return Math.max(0, ...missing);
}

test('a program killed in the middle of edits comes back with all but the last five seconds of them', async () => {
  if (browser === undefined) throw new Error('the browser is not started yet');
  const lost: number[] = [];
  let edits = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    const host = await hostOver(base);
    const { page, context } = await openPage(browser, host.address);
    if (kill === 0) await openSample(page);
    else await page.getByRole('button', { name: 'Recover it' }).click();
    await goToView(page, 'Vessel');
    const first = 1000 * (kill + 1);
    const made = await typeFor(page, 4000 + ((kill * 7919) % 3000), first);
    const at = await killed(host);
    await context.close();
    const again = await hostOver(base);
    const next = await openPage(browser, again.address);
    await next.page.getByRole('button', { name: 'Recover it' }).click();
    await goToView(next.page, 'Vessel');
    await expect.poll(() => cellOf(next.page, AT).innerText()).toMatch(/\d/);
    const found = Number((await cellOf(next.page, AT).innerText()).replace(/[^\d.]/g, ''));
    expect(found).toBeGreaterThanOrEqual(first);
    lost.push(lostOf(made, found, at));
    console.log(`${made.size} edits, ${(Math.max(...lost.slice(-1)) / 1000).toFixed(1)} s lost`);
    edits += made.size;
    await next.context.close();
    await killed(again);
  }
  const longest = Math.max(...lost);
  console.log(`${KILLS} kills among ${edits} edits: at most ${(longest / 1000).toFixed(1)} s of work lost`);
  expect(longest).toBeLessThanOrEqual(MOST_LOST);
}, 600_000);
