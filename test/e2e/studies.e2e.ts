import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { clipped, shot, sideways, violations } from './lib/looks';
import { ownWindow } from './lib/own-window';
import { goToView, openSample } from './lib/views';

const own = ownWindow();

const LONG = { timeout: 90_000 };

async function faces(page: Page, view: string, suffix: string): Promise<void> {
  for (const face of await page.locator('.title-line .view-switches .switch').all()) {
    await face.click();
    await page.waitForTimeout(150);
    const name = (await face.innerText()).toLowerCase().replaceAll(' ', '-');
    await shot(page, `study-${view}-${name}-${suffix}`);
    expect(await violations(page), `${view}, ${name}`).toEqual([]);
    expect(await clipped(page), `${view}, ${name}`).toEqual([]);
    expect(await sideways(page), `${view}, ${name} scrolls sideways`).toBeLessThanOrEqual(0);
  }
  await page.locator('.title-line .view-switches .switch').first().click();
}

test('a contingency by confidence waits for the trials, and has its amount once they were run', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Funding');
  await page.locator('.title-line .view-switches .switch', { hasText: 'Sources and terms' }).click(LONG);
  await page.locator('[data-edit="/contingency"]').click(LONG);
  await page.locator('.cell-input').selectOption('confidence');
  await page.locator('[data-edit="/contingency/confidence"]', { hasText: '80 in 100' }).waitFor(LONG);
  expect(await page.locator('[data-edit="/contingency/share"]').count()).toBe(0);
  const withheld = page.getByText('there is no grant budget', { exact: false }).first();
  await withheld.waitFor(LONG);
  await goToView(page, 'Risk');
  await page.locator('button:not([disabled])', { hasText: 'Run the trials' }).click(LONG);
  await page.locator('.bottom-cell', { hasText: 'P80 cost' }).waitFor({ timeout: 120_000 });
  await goToView(page, 'Funding');
  await withheld.waitFor({ state: 'detached', ...LONG });
  await page.locator('.title-line .view-switches .switch', { hasText: 'SF-424A' }).first().waitFor(LONG);
  expect(complaints).toEqual([]);
  await context.close();
}, 240_000);

test('a run is made on demand, can be stopped, keeps typing free, and tells P80 and the grant period below', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Risk');
  const run = page.getByRole('button', { name: 'Run the trials' });
  await run.waitFor(LONG);
  await expect
    .poll(() => page.locator('.title-line').innerText(), { timeout: 30_000 })
    .toContain('has not been worked out yet');
  expect(await page.locator('.bottom-cell', { hasText: 'P80' }).count()).toBe(0);
  await run.click();
  await page.getByRole('button', { name: 'Stop, keep the last answer' }).click(LONG);
  await run.waitFor(LONG);
  await expect
    .poll(() => page.locator('.title-line').innerText(), { timeout: 30_000 })
    .toContain('has not been worked out yet');
  await page.locator('button:not([disabled])', { hasText: 'Run the trials' }).click(LONG);
  await page.getByText(/Running the trials, \d+ of/).waitFor(LONG);
  await page.getByRole('button', { name: 'Register' }).click();
  await page.getByRole('button', { name: 'Add an event' }).click();
  const started = Date.now();
  await page.getByLabel('What may happen').fill('A crane is late');
  expect(Date.now() - started).toBeLessThan(1000);
  await expect
    .poll(() => page.getByLabel('What may happen').inputValue(), { timeout: 30_000 })
    .toBe('A crane is late');
  await page.getByRole('button', { name: 'Leave it' }).click();
  await page.getByRole('button', { name: 'Curves' }).click();
  await page.locator('svg[aria-label^="Cost of the runs"]').waitFor(LONG);
  await expect
    .poll(() => page.locator('.title-line .sentence').innerText(), { timeout: 30_000 })
    .toMatch(/\d+ in 100 runs end inside the money and the date/);
  await page.locator('.bottom-cell', { hasText: 'P80 cost' }).waitFor();
  await page.locator('.bottom-cell', { hasText: 'In grant period' }).waitFor();
  await faces(page, 'risk', '1280-light');
  expect(complaints).toEqual([]);
  await context.close();
}, 240_000);

test('the trials of a saved project are run again when it is opened, and of the sample they are not', async () => {
  const { page, context, complaints } = await own.open();
  const p80 = page.locator('.bottom-cell', { hasText: 'P80 cost' });
  await openSample(page);
  await goToView(page, 'Risk');
  await page.locator('button:not([disabled])', { hasText: 'Run the trials' }).click(LONG);
  await p80.waitFor({ timeout: 120_000 });
  const before = await p80.innerText();
  await page.keyboard.press('Control+Shift+S');
  await page.getByRole('textbox', { name: 'Name' }).fill('Trials kept');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect.poll(() => page.locator('.bottom-head').innerText(), LONG).toContain('Saved');
  await page.keyboard.press('Control+Shift+W');
  await page.getByRole('button', { name: 'Open a file' }).click(LONG);
  await page.getByRole('dialog').getByRole('button', { name: 'Trials kept.reef.json' }).first().click(LONG);
  await p80.waitFor({ timeout: 120_000 });
  expect(await p80.innerText()).toBe(before);
  await page.keyboard.press('Control+Shift+W');
  await openSample(page);
  await goToView(page, 'Risk');
  await page.locator('button:not([disabled])', { hasText: 'Run the trials' }).waitFor(LONG);
  expect(await p80.count()).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
}, 240_000);

test('an event of the library is taken in, its chance changed, and both undone', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Risk');
  await page.getByRole('button', { name: 'Register' }).click();
  const cells = page.locator('td[data-edit$="/probability"]');
  await cells.first().waitFor(LONG);
  const before = await cells.count();
  await page.getByLabel('Event of the library').selectOption('lien');
  await page.getByRole('button', { name: 'Take it in to change it' }).click();
  const chance = page.locator('td[data-edit="/risk/register/lien/probability"]');
  await chance.waitFor(LONG);
  const was = await chance.innerText();
  await chance.click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('0.44');
  await page.keyboard.press('Enter');
  await expect.poll(() => chance.innerText(), LONG).toBe('44');
  await page.keyboard.press('Control+z');
  await expect.poll(() => chance.innerText(), LONG).toBe(was);
  await page.keyboard.press('Control+z');
  await expect.poll(() => cells.count(), LONG).toBe(before);
  expect(complaints).toEqual([]);
  await context.close();
}, 200_000);

test('scenarios are compared in words, tables and pictures, and the board’s weights reach the order', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Compare');
  await page.locator('svg[aria-label*="costs $"]').first().waitFor(LONG);
  await expect
    .poll(() => page.locator('.title-line .sentence').innerText(), { timeout: 30_000 })
    .toMatch(/costs (least, )?\$[\d,]+ (more|less) than A/);
  await shot(page, 'study-compare-before-1280-light');
  await page.getByRole('button', { name: 'Run the trials of all scenarios' }).click(LONG);
  await page.getByText('P80 cost').first().waitFor(LONG);
  await faces(page, 'compare', '1280-light');
  await page.getByRole('button', { name: 'Weights' }).click();
  await page.getByRole('button', { name: 'Set the board’s own weights' }).click();
  const weight = page.locator('td[data-edit="/decision/weights/0/weight"]');
  await weight.waitFor(LONG);
  await weight.click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('0.9');
  await page.keyboard.press('Enter');
  await expect.poll(() => weight.innerText(), LONG).toBe('0.9');
  await page.getByText('by the board’s weights').waitFor(LONG);
  // Weights change nothing that was simulated: the runs still count.
  const p80 = page.locator('.bottom-cell', { hasText: 'P80 cost' });
  await expect.poll(() => p80.innerText(), LONG).toMatch(/\$[\d,]+\s*$/);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Set the board’s own weights' }).waitFor(LONG);
  // A scenario more waits for its own trials alone: the others keep theirs.
  await page.getByRole('button', { name: 'Scenarios', exact: true }).click();
  await page.getByRole('button', { name: 'Add a scenario like A' }).click();
  await page.keyboard.press('Escape');
  await page.locator('.title-line .view-switches .switch').first().click();
  await page.getByText(/^The trials of [A-Z] have not been run; the others keep theirs\.$/).waitFor(LONG);
  expect(await page.getByText('P80 cost').count()).toBeGreaterThan(0);
  expect(complaints).toEqual([]);
  await context.close();
}, 240_000);

test('the decision asks the board in one sentence, and its vote is kept and undone', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Decision');
  await page.getByText('What was not studied').waitFor(LONG);
  const sentence = () => page.locator('.title-line .sentence').innerText();
  if ((await sentence()).includes('is asked to choose scenario')) {
    await page.getByRole('button', { name: /^Show scenario/ }).click();
  }
  await expect.poll(sentence, LONG).toMatch(/is asked to approve scenario .* with a budget of \$[\d,]+/);
  const chosen = page.locator('td[data-edit="/decision/chosen"]');
  await chosen.click();
  const letter = (await page.locator('.recommended .letter').innerText()).trim();
  const options = await chosen.locator('option').allInnerTexts();
  const other = options.find(one => one !== 'not yet' && !one.startsWith(letter)) ?? '';
  await chosen.locator('select').selectOption({ label: other });
  await page.getByText('chosen by the board').waitFor(LONG);
  await expect.poll(sentence, LONG).toContain(`has chosen scenario ${other.charAt(0)}, `);
  // Papers are of the scenario that is open, and Documents says so where the board has chosen another.
  await goToView(page, 'Documents');
  const ofWhich = `The board has chosen scenario ${other.charAt(0)}. The papers made now are of scenario ${letter}.`;
  await page.getByRole('note').filter({ hasText: ofWhich }).waitFor(LONG);
  await goToView(page, 'Decision');
  await page.getByText('chosen by the board').waitFor(LONG);
  await page.keyboard.press('Control+z');
  await page.getByText('comes first', { exact: false }).first().waitFor(LONG);
  expect(await violations(page)).toEqual([]);
  expect(await clipped(page)).toEqual([]);
  await shot(page, 'study-decision-1280-light');
  expect(complaints).toEqual([]);
  await context.close();
}, 200_000);

test('a comparison opens with the page a board votes on, then the scenarios side by side', async () => {
  const { page, context, complaints } = await own.open();
  await page.getByRole('button', { name: 'Start a comparison' }).click();
  await page.getByText('What was not studied').waitFor(LONG);
  await expect
    .poll(() => page.locator('.view-item[aria-current="page"]').innerText(), { timeout: 30_000 })
    .toBe('Decision');
  await shot(page, 'study-decision-new-1280-light');
  expect(await violations(page)).toEqual([]);
  await goToView(page, 'Compare');
  await page.getByText('May be carried out').waitFor(LONG);
  expect(await violations(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('an edit reaches the bottom line while a run of 100,000 trials goes on', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Risk');
  await page.getByRole('button', { name: 'How it is run' }).click();
  const trials = page.locator('td[data-edit="/risk/trials"]');
  await trials.click(LONG);
  await page.keyboard.press('Control+A');
  await page.keyboard.type('100000');
  await page.keyboard.press('Enter');
  await expect.poll(() => trials.innerText(), LONG).toBe('100000');
  await page.getByRole('button', { name: 'Curves' }).click();
  await page.locator('button:not([disabled])', { hasText: 'Run the trials' }).click(LONG);
  await page.getByText(/Running the trials, \d+ of/).waitFor(LONG);
  await goToView(page, 'Rates');
  const rate = page.locator('td[data-edit][data-kind="figure"]').first();
  await rate.click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('99');
  const started = Date.now();
  await page.keyboard.press('Enter');
  await page.locator('.bottom-cell .moved').first().waitFor(LONG);
  const waited = Date.now() - started;
  process.stdout.write(`an edit during a run of 100,000 trials shows in ${waited} ms\n`);
  expect(waited).toBeLessThan(5000);
  await goToView(page, 'Risk');
  await page.getByText(/Running the trials, \d+ of/).waitFor(LONG);
  await page.getByRole('button', { name: 'Stop, keep the last answer' }).click();
  await page.locator('button:not([disabled])', { hasText: 'Run the trials' }).waitFor(LONG);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('what would widen the margin is priced when the sinking is opened', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Sinking');
  await page.getByText('The plan as it stands').waitFor(LONG);
  await shot(page, 'study-sinking-1280-light');
  expect(await violations(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('risk, compare and decision are shown large and in dark colours', async () => {
  for (const [width, height, theme] of [
    [1920, 1080, 'light'],
    [1280, 720, 'dark'],
  ] as const) {
    const { page, context } = await own.open({ width, height, theme });
    await openSample(page);
    await goToView(page, 'Compare');
    await page.getByRole('button', { name: 'Run the trials of all scenarios' }).click(LONG);
    await page.getByText('P80 cost').first().waitFor(LONG);
    await faces(page, 'compare', `${width}-${theme}`);
    await goToView(page, 'Decision');
    await page.getByText('80 in 100 runs cost no more than').waitFor(LONG);
    await shot(page, `study-decision-${width}-${theme}`);
    expect(await violations(page), 'decision').toEqual([]);
    await goToView(page, 'Risk');
    await page.locator('svg[aria-label^="Cost of the runs"]').waitFor(LONG);
    await faces(page, 'risk', `${width}-${theme}`);
    await context.close();
  }
}, 300_000);
