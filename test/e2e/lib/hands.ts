import type { Page } from 'playwright-core';
import { cellOf } from './inputs';
import { goToView, type VIEW_NAMES } from './views';

/** How a person works the window: with a mouse, or with the keyboard alone. */
export interface Hand {
  readonly name: string;
  /** Presses a button by its words. */
  readonly press: (page: Page, words: string) => Promise<void>;
  readonly open: (page: Page, view: (typeof VIEW_NAMES)[number]) => Promise<void>;
  /** Puts a value into an input by its place in the document; a choice by its words. */
  readonly put: (page: Page, at: string, value: string) => Promise<void>;
  /** Runs a command by its name in the menu. */
  readonly command: (page: Page, title: string, keys: string) => Promise<void>;
  /** Answers a dialog of one name. */
  readonly giveName: (page: Page, value: string) => Promise<void>;
}

export const MOUSE: Hand = {
  name: 'by mouse',
  press: async (page, words) => {
    // What an open dialog covers cannot be pressed.
    const dialog = page.getByRole('dialog');
    const reach = (await dialog.count()) > 0 ? dialog.last() : page;
    await reach.getByRole('button', { name: words, exact: true }).first().click();
  },
  open: goToView,
  put: async (page, at, value) => {
    const cell = cellOf(page, at);
    await cell.scrollIntoViewIfNeeded();
    await cell.click();
    const editor = page.locator('.cell-input');
    await editor.waitFor();
    const isChoice = await editor.evaluate(element => element.tagName === 'SELECT');
    if (isChoice) await editor.selectOption({ label: value });
    else {
      await editor.fill(value);
      await editor.press('Enter');
    }
  },
  command: async (page, title) => {
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('menuitem', { name: title }).click();
  },
  giveName: async (page, value) => {
    await page.getByRole('textbox', { name: 'Name' }).fill(value);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
  },
};

/** The most presses of Tab before something counts as out of reach. */
const REACH = 400;

const focusedWords = (page: Page) =>
  page.evaluate(() => document.activeElement?.textContent.trim().replace(/\s+/g, ' ') ?? '');

/** Presses Tab until the focus is on a button with these words. */
export async function tabTo(page: Page, words: string): Promise<void> {
  for (let press = 0; press < REACH; press++) {
    if ((await focusedWords(page)) === words) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${words}`);
}

interface Spot {
  /** Whether the focus is in the table of the input. */
  readonly isThere: boolean;
  readonly from: string;
  readonly to: string;
}

async function spot(page: Page, at: string): Promise<Spot> {
  return page.evaluate(place => {
    const target = document.querySelector(`[data-edit="${CSS.escape(place)}"]`);
    const here = document.activeElement;
    const table = target?.closest('table');
    return {
      isThere: table !== undefined && table !== null && table.contains(here),
      from: here?.getAttribute('data-place') ?? '',
      to: target?.getAttribute('data-place') ?? '',
    };
  }, at);
}

/** Goes to the table of an input with Tab, and to its cell with the arrow keys. */
async function reach(page: Page, at: string): Promise<void> {
  await cellOf(page, at).waitFor({ state: 'attached' });
  for (let press = 0; press < REACH && !(await spot(page, at)).isThere; press++)
    await page.keyboard.press('Tab');
  for (let press = 0; press < REACH; press++) {
    const { from, to } = await spot(page, at);
    if (from === to && to !== '') return;
    const [fromRow = 0, fromColumn = 0] = from.split('-').map(Number);
    const [toRow = 0, toColumn = 0] = to.split('-').map(Number);
    await page.keyboard.press(
      fromRow < toRow
        ? 'ArrowDown'
        : fromRow > toRow
          ? 'ArrowUp'
          : fromColumn < toColumn
            ? 'ArrowRight'
            : 'ArrowLeft',
    );
    // A slow machine moves on later: the next key waits until this one has done something.
    for (let wait = 0; wait < 30 && (await spot(page, at)).from === from; wait++)
      await page.waitForTimeout(30);
  }
  throw new Error(`the keys never reached ${at}`);
}

export const KEYBOARD: Hand = {
  name: 'by keyboard alone',
  press: async (page, words) => {
    await tabTo(page, words);
    await page.keyboard.press('Enter');
  },
  open: async (page, view) => {
    const current = () => page.locator('.view-item[aria-current="page"]').innerText();
    for (let press = 0; press < 20 && !(await current()).startsWith(view); press++)
      await page.keyboard.press('Control+PageDown');
    await page.locator('.title-line .sentence').waitFor();
  },
  put: async (page, at, value) => {
    await reach(page, at);
    await page.keyboard.press('F2');
    const editor = page.locator('.cell-input');
    await editor.waitFor();
    const isChoice = await editor.evaluate(element => element.tagName === 'SELECT');
    if (!isChoice) await page.keyboard.press('Control+A');
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  },
  command: (page, _title, keys) => page.keyboard.press(keys),
  giveName: async (page, value) => {
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  },
};
