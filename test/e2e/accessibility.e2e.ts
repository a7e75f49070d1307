import { expect, test } from 'vitest';
import { shot, sideways, violations } from './lib/looks';
import { ownWindow } from './lib/own-window';
import { goToView, openSample, VIEW_NAMES } from './lib/views';

const own = ownWindow();

for (const theme of ['light', 'dark'] as const) {
  test(`axe finds nothing against A and AA in any view, ${theme}, empty and full`, async () => {
    const { page, context } = await own.open({ theme });
    expect(await violations(page), 'first run').toEqual([]);
    await page.getByRole('button', { name: 'Start a grant budget' }).click();
    await page.locator('.bottom-cell', { hasText: 'Total' }).first().waitFor({ timeout: 30_000 });
    for (const view of VIEW_NAMES) {
      await goToView(page, view);
      expect(await violations(page), `${view}, empty`).toEqual([]);
    }
    await page.keyboard.press('Control+Shift+W');
    await page.getByRole('button', { name: 'Leave them unsaved' }).click();
    await openSample(page);
    for (const view of VIEW_NAMES) {
      await goToView(page, view);
      for (const face of await page.locator('.view-switches .switch').all()) {
        await face.click();
        expect(await violations(page), `${view}, ${await face.innerText()}`).toEqual([]);
      }
      expect(await violations(page), view).toEqual([]);
    }
    await page.keyboard.press('F1');
    await page.getByRole('dialog').waitFor();
    expect(await violations(page), 'help').toEqual([]);
    await context.close();
  }, 240_000);
}

test('at 200 % zoom no view scrolls sideways and no control is lost', async () => {
  const { page, context } = await own.open({ width: 640, height: 360 });
  await openSample(page);
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    expect(await sideways(page), view).toBeLessThanOrEqual(0);
    await shot(page, `${view.toLowerCase()}-640-zoomed`);
    const buttons = await page.getByRole('navigation', { name: 'Views' }).getByRole('button').all();
    for (const button of buttons) expect(await button.isVisible()).toBe(true);
  }
  await context.close();
});

test('forced colours and reduced motion keep every view readable', async () => {
  const { page, context } = await own.open({
    forcedColours: true,
    reducedMotion: true,
  });
  await openSample(page);
  for (const view of VIEW_NAMES) {
    await goToView(page, view);
    const moving = await page.evaluate(
      () => document.getAnimations().filter(one => Number(one.effect?.getTiming().duration) > 0).length,
    );
    expect(moving, view).toBe(0);
    await shot(page, `${view.toLowerCase()}-forced`);
  }
  await context.close();
});

test('the grid keys follow the pattern of the ARIA Authoring Practices Guide', async () => {
  const { page, context } = await own.open();
  await openSample(page);
  await goToView(page, 'Rates');
  const at = () => page.evaluate(() => document.activeElement?.getAttribute('data-place'));
  await page.locator('[data-place="0-0"]').click();
  const steps: readonly (readonly [string, string])[] = [
    ['ArrowRight', '0-1'],
    ['ArrowDown', '1-1'],
    ['ArrowLeft', '1-0'],
    ['ArrowUp', '0-0'],
    ['ArrowUp', '0-0'],
    ['ArrowLeft', '0-0'],
    ['End', '0-4'],
    ['Home', '0-0'],
    ['PageDown', '10-0'],
    ['PageUp', '0-0'],
  ];
  for (const [key, place] of steps) {
    await page.keyboard.press(key);
    await expect.poll(at, { message: key }).toBe(place);
  }
  await page.keyboard.press('Control+End');
  await expect.poll(at).toMatch(/-4$/);
  await page.keyboard.press('Control+Home');
  await expect.poll(at).toBe('0-0');
  expect(await page.locator('td[tabindex="0"]').count()).toBe(1);
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('table') === null)).toBe(true);
  await context.close();
});
