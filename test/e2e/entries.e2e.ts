import fs from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellOf } from './lib/inputs';
import { ownWindow } from './lib/own-window';
import { goToView, openSample, total } from './lib/views';

const own = ownWindow();

const face = (page: Page, title: string) =>
  page.locator('.title-line .view-switches .switch', { hasText: title }).first().click();

test('a quote is added by its form, which says what is missing; it is taken out and brought back', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Work');
  await face(page, 'Quotes');
  const rows = page.locator('[data-remove^="/quotes/"]');
  const before = await rows.count();
  await page.getByRole('button', { name: 'Add a quote' }).click();
  await page.getByLabel('Vendor').fill('Invented Yard');
  await page.getByLabel('Amount, $').fill('12,500');
  await page.getByLabel('Dated').fill('2026-11-02');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByRole('alert').filter({ hasText: 'Valid until is needed' }).waitFor();
  await page.getByLabel('Valid until').fill('2027-11-02');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect.poll(() => rows.count(), { timeout: 15_000 }).toBe(before + 1);
  await page.locator('[data-remove="/quotes/invented-yard"]').click();
  await expect.poll(() => rows.count(), { timeout: 15_000 }).toBe(before);
  await page.keyboard.press('Control+z');
  await expect.poll(() => rows.count(), { timeout: 15_000 }).toBe(before + 1);
  expect(complaints).toEqual([]);
  await context.close();
});

test('what is missing of a new entry is told below its fields, and none of them moves', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Work');
  await face(page, 'Quotes');
  await page.getByRole('button', { name: 'Add a quote' }).click();
  const fields = page.locator('.add-form input, .add-form select, .add-form button');
  const places = async () => Promise.all((await fields.all()).map(one => one.boundingBox()));
  const before = await places();
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.locator('.add-form [role="alert"]').first().waitFor();
  expect(await places()).toEqual(before);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a laboratory table is brought in: its columns are found, its words asked for, and it is one step to undo', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Materials');
  await face(page, 'Laboratory');
  const rows = page.locator('[data-remove^="/survey/laboratory/"]');
  const before = await rows.count();
  await page.getByRole('button', { name: 'Bring in a table' }).click();
  const csv = [
    'Sample ID,Location,Matrix,Analyte,Result,Units,RL,Date',
    'Q-01,Shaft alley,Cable jacket,PCB total,<5,mg/kg,5,2026-10-01',
    'Q-02,Pump room,Cable jacket,PCB total,71,mg/kg,5,2026-10-01',
  ].join('\n');
  await page.locator('.import-panel input[type="file"]').setInputFiles({
    name: 'results.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(csv),
  });
  await page.getByRole('status').filter({ hasText: '0 rows are new' }).waitFor();
  await page.getByLabel('Cable jacket').selectOption('pcb-cable');
  await page.getByRole('status').filter({ hasText: '2 rows are new' }).waitFor();
  await page.getByRole('button', { name: 'Bring in 2 rows' }).click();
  await expect.poll(() => rows.count(), { timeout: 15_000 }).toBe(before + 2);
  await page.keyboard.press('Control+z');
  await expect.poll(() => rows.count(), { timeout: 15_000 }).toBe(before);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a scenario is added, an edit is kept in it alone, and the others stay as they were', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  const letters = page.locator('.scenario-letters .letter');
  const before = await letters.count();
  const ofFirst = await total(page);
  await page.getByRole('button', { name: 'Scenarios', exact: true }).click();
  await page.getByRole('button', { name: 'Add a scenario like A' }).click();
  await expect.poll(() => letters.count()).toBe(before + 1);
  await page.getByRole('radio').nth(1).check();
  await page.keyboard.press('Escape');
  await goToView(page, 'Vessel');
  await page.locator('[data-edit="/site/towDistance"]').click();
  await page.locator('.cell-input').fill('900');
  await page.keyboard.press('Enter');
  await expect.poll(() => total(page), { timeout: 15_000 }).not.toBe(ofFirst);
  await letters.first().click();
  await expect.poll(() => total(page), { timeout: 15_000 }).toContain(ofFirst.split('\n')[0] ?? ofFirst);
  await expect
    .poll(() => cellOf(page, '/site/towDistance').innerText(), { timeout: 30_000 })
    .not.toContain('900');
  expect(complaints).toEqual([]);
  await context.close();
});

test('a note on a figure stays with the figure, and the list of changes names it until it is saved', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await page.locator('.bottom-cell .figure').first().click();
  await page.getByRole('button', { name: 'Write a note on this figure' }).click();
  await page.locator('.why-note .note-input').fill('Agreed with the county on the telephone');
  await page.locator('.why-note .note-input').press('Enter');
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.locator('.bottom-cell .figure').first().click();
  await expect
    .poll(() => page.locator('.why-note .note-input').inputValue())
    .toBe('Agreed with the county on the telephone');
  await goToView(page, 'Documents');
  await face(page, 'Changes');
  await page.locator('.change-list').getByText('Change Note on total').waitFor();
  await face(page, 'Evidence');
  await page.locator('.evidence-choice input').setInputFiles({
    name: 'survey.pdf',
    mimeType: 'application/pdf',
    buffer: Buffer.from('invented'),
  });
  await page.getByRole('gridcell', { name: 'survey.pdf' }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test('find anything reaches tanks and quotes, on the face where they stand', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  const names = async (view: 'Vessel' | 'Work', of: string) => {
    await goToView(page, view);
    await face(page, of);
    return (await page.locator('.surface td[data-edit][data-kind="text"]').first().innerText()).trim();
  };
  const search = async (words: string) => {
    await goToView(page, 'Budget');
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog').getByRole('searchbox').fill(words);
  };
  for (const [view, of] of [
    ['Vessel', 'Tanks'],
    ['Work', 'Quotes'],
  ] as const) {
    const name = await names(view, of);
    await search(name);
    const kind = of.toLowerCase().slice(0, -1);
    await page.getByRole('menuitem').filter({ hasText: kind }).first().click();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent ?? ''), { message: of })
      .toContain(name);
  }
  expect(complaints).toEqual([]);
  await context.close();
});

test('a copy for others says what it leaves out, and the file holds none of it', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Documents');
  await face(page, 'Copy for others');
  await page.getByText('quotes and the names of vendors').waitFor();
  const [forOwner] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Write the copy' }).click(),
  ]);
  const whole = fs.readFileSync(await forOwner.path(), 'utf8');
  expect(whole).toContain('"format": "reefwright-project"');
  expect(whole).not.toContain('"vendor"');
  await page.getByRole('radio').nth(1).check();
  await page.getByText('funding sources, shares and match').waitFor();
  const [forBidders] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Write the copy' }).click(),
  ]);
  expect(fs.readFileSync(await forBidders.path(), 'utf8')).not.toContain('"awardDate"');
  expect(complaints).toEqual([]);
  await context.close();
});

test('a vent, a way between compartments and a plan to compare with are added, and undone', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Vessel');
  await face(page, 'Compartments');
  const removals = (at: string) => page.locator(`[data-remove*="/${at}/"]`);
  for (const [button, list] of [
    [/^Add a vent to/, 'vents'],
    [/^Add a way out of/, 'connections'],
  ] as const) {
    const before = await removals(list).count();
    await page.getByRole('button', { name: button }).click();
    await page.getByLabel(/^Area/).fill('4');
    await page.getByLabel(/^Centre above the keel/).fill('12');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await expect.poll(() => removals(list).count(), { timeout: 15_000 }).toBe(before + 1);
    await page.keyboard.press('Control+z');
    await expect.poll(() => removals(list).count(), { timeout: 15_000 }).toBe(before);
  }
  await goToView(page, 'Review');
  await face(page, 'Record');
  const kept = page.locator('[data-edit="/record/baseline/keptOn"]');
  await kept.waitFor();
  await page.locator('[data-remove="/record/baseline"]').click();
  await page.getByRole('button', { name: 'Add this plan as the one to compare with' }).click();
  await page.getByLabel('Kept on').fill('2026-11-30');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await kept.waitFor({ timeout: 15_000 });
  await page.keyboard.press('Control+z');
  await kept.waitFor({ state: 'detached', timeout: 15_000 });
  expect(complaints).toEqual([]);
  await context.close();
});

test('a number a project begins with is taken over by typing it again, left with Tab; any sign starts typing', async () => {
  const { page, context, complaints } = await own.open();
  const missing = page.locator('.still-missing');
  const press = (words: string) => page.getByRole('button', { name: words, exact: true }).first().click();
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('data-edit') ?? '');
  await press('Start a grant budget');
  await missing.filter({ hasText: 'the sources of the money' }).waitFor();
  await press('the sources of the money');
  await expect.poll(focused, { timeout: 15_000 }).toBe('/funding');
  await page.keyboard.press('Enter');
  await missing.filter({ hasText: 'the share of the grant' }).waitFor();
  await press('the share of the grant');
  await expect.poll(focused, { timeout: 15_000 }).toBe('/funding/sources/grant/share');
  const ring = () =>
    page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineStyle);
  expect(await ring()).toBe('solid');
  await page.keyboard.type('0.75');
  await page.keyboard.press('Tab');
  await expect.poll(() => missing.innerText(), { timeout: 15_000 }).not.toContain('the share of the grant');
  await expect.poll(focused, { timeout: 15_000 }).toBe('/funding/sources/grant/cap');
  await page.keyboard.type('$1,500,000');
  expect(await page.locator('.cell-input').inputValue()).toBe('$1,500,000');
  await page.keyboard.press('Enter');
  await expect.poll(() => cellOf(page, '/funding/sources/grant/cap').innerText()).toContain('1,500,000');
  await press('quantities found by a survey');
  await expect.poll(focused, { timeout: 15_000 }).toMatch(/^\/survey\/measured\/./);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a finding leads to its input, which is then the one that is typed in', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Review');
  await face(page, 'Findings');
  const line = page
    .locator('.finding-line')
    .filter({ has: page.getByRole('button', { name: 'Go to Work' }) });
  await line.first().getByRole('button').click();
  await expect.poll(() => page.locator('[data-found="true"]').count(), { timeout: 15_000 }).toBe(1);
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-edit') ?? '')).toMatch(
    /^\/items\//,
  );
  expect(complaints).toEqual([]);
  await context.close();
});

test('a year nobody built ships in is refused in its cell, and the document stays one that opens', async () => {
  const { page, context, complaints } = await own.open();
  await openSample(page);
  await goToView(page, 'Vessel');
  const before = await total(page);
  const cell = cellOf(page, '/vessel/built');
  await cell.dblclick();
  await page.locator('.cell-input').fill('2999');
  await page.locator('.cell-input').press('Enter');
  await page.getByRole('alert').filter({ hasText: 'Built is more than 2100' }).waitFor();
  await page.keyboard.press('Escape');
  expect(await cell.innerText()).toContain('1957');
  expect(await total(page)).toBe(before);
  await cell.dblclick();
  await page.locator('.cell-input').fill('1968');
  await page.locator('.cell-input').press('Enter');
  await expect.poll(() => cell.innerText(), { timeout: 15_000 }).toContain('1968');
  expect(complaints).toEqual([]);
  await context.close();
});
