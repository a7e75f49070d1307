import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { GLOSSARY } from '../../renderer/words/glossary';
import { goToView, openSample, VIEW_NAMES, workedOut } from './lib/views';
import { ownWindow } from './lib/own-window';

const own = ownWindow();

/** What can be read now, block by block: headings, paragraphs, cells, labels, buttons. */
function blocks(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const inner = 'p, li, td, th, h1, h2, h3, dt, dd, label, button, caption, text';
    return [...document.querySelectorAll<HTMLElement | SVGElement>(inner)]
      .filter(one => one.querySelector('p, li, td, dd') === null)
      .map(one => (one instanceof HTMLElement ? one.innerText : one.textContent))
      .map(text => text.replace(/\s+/g, ' ').trim())
      .filter(text => text !== '');
  });
}

async function everything(page: Page): Promise<readonly string[]> {
  const read = new Set(await blocks(page));
  await openSample(page);
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    await workedOut(page);
    const faces = await page.locator('.title-line .view-switches .switch').all();
    for (const face of faces.length === 0 ? [undefined] : faces) {
      await face?.click();
      await page.waitForTimeout(120);
      for (const text of await blocks(page)) read.add(text);
    }
  }
  for (const keys of ['F1', 'Control+Shift+E']) {
    await page.keyboard.press(keys);
    await page.getByRole('dialog').waitFor();
    for (const text of await blocks(page)) read.add(text);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
  return [...read];
}

/** Words written in capitals that are no abbreviations of the window: numbers of papers, and words of a form. */
const NAMES =
  /^(GAO-[\w-]+|[A-Z]+-\d[\w-]*|II-1|VI|HC|CTS|WJHG|TOTALS|Q-?\d+|[A-Z]\d+[A-Z]?|E\d+|N\d+|ID|ABC)$/;
const TERMS = new Set(GLOSSARY.map(entry => entry.term));

function abbreviations(texts: readonly string[]): readonly string[] {
  const found = texts.flatMap(text =>
    [...text.matchAll(/(?<![\w.\u2019-])[A-Z][A-Z0-9]+(?:-[A-Z0-9]+)*(?![\w])/g)].map(one => one[0]),
  );
  return [...new Set(found)].filter(one => !TERMS.has(one) && !NAMES.test(one)).toSorted();
}

/** Sentences of running text: blocks that end as sentences do, split at their ends. */
function sentences(texts: readonly string[]): readonly string[] {
  return texts
    .filter(text => /[.!?]$/.test(text) && text.split(' ').length > 3)
    .flatMap(text => text.split(/(?<=[a-z0-9)”%][.!?])\s+(?=[A-Z“\d])/));
}

test('sentences are short, every abbreviation is in the glossary, and every finding says what to do', async () => {
  const { page, context } = await own.open({ width: 1920, height: 1080 });
  const read = await everything(page);
  const said = sentences(read);
  const lengths = said.map(one => one.split(/\s+/).length);
  const mean = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
  process.stdout.write(`${said.length} sentences, ${mean.toFixed(1)} words in the mean\n`);
  expect(said.length).toBeGreaterThan(200);
  expect(mean).toBeLessThan(20);
  expect(abbreviations(read)).toEqual([]);
  await goToView(page, 'Review');
  const remedies = await page.locator('.finding-line .quiet').allInnerTexts();
  expect(remedies.length).toBe(await page.locator('.finding-line').count());
  for (const words of remedies) expect(words.split(' ').length, words).toBeGreaterThan(3);
  await context.close();
}, 200_000);

/** What an error asks for: it names an act. */
const ACT = /\b(Write|Enter|Choose|Undo|Open|Save|Give|Say|Take|Add|Run|is needed before)\b/i;

test('every error that typing or a file can bring says what is so and what to do', async () => {
  const { page, context } = await own.open();
  await page.locator('body').evaluate(() => {
    const drop = new DragEvent('drop', { dataTransfer: new DataTransfer(), cancelable: true });
    drop.dataTransfer?.items.add(new File(['{'], 'broken.reef.json'));
    window.dispatchEvent(drop);
  });
  await page.getByRole('alert').filter({ hasText: 'broken.reef.json could not be opened' }).waitFor();
  const told = [await page.getByRole('alert').first().innerText()];
  await openSample(page);
  const typed = async (view: (typeof VIEW_NAMES)[number], face: string, at: string, words: string) => {
    await goToView(page, view);
    await page.locator('.title-line .view-switches .switch', { hasText: face }).first().click();
    await page.locator(`[data-edit="${at}"]`).first().click();
    await page.locator('.cell-input').fill(words);
    await page.keyboard.press('Enter');
    told.push(await page.locator('td .field-fault[role="alert"]').first().innerText());
    await page.keyboard.press('Escape');
  };
  await typed('Vessel', 'Tables', '/vessel/length', 'long');
  await typed('Vessel', 'Tables', '/vessel/built', 'early');
  await typed('Schedule', 'Calendar and limits', '/calendars/start', 'soon');
  await goToView(page, 'Work');
  await page.locator('.title-line .view-switches .switch', { hasText: 'Quotes' }).click();
  await page.getByRole('button', { name: 'Add a quote' }).click();
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  told.push(...(await page.locator('.add-form [role="alert"]').allInnerTexts()));
  expect(told.length).toBeGreaterThan(6);
  for (const words of told) {
    expect(words).toMatch(ACT);
    expect(words.split(' ').length, words).toBeGreaterThan(5);
  }
  await context.close();
}, 120_000);
