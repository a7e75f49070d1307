import { expect, test } from 'vitest';
import { ownWindow } from './lib/own-window';
import { openSample } from './lib/views';

const own = ownWindow();

/** Words of the ship's drawing that meet one another or leave it. */
function clashes(): string[] {
  const picture = document.querySelector('main[data-view="vessel"] svg.picture');
  if (picture === null) return ['no drawing'];
  const edge = picture.getBoundingClientRect();
  const words = [...picture.querySelectorAll('text.mark-text, .mark-text text, text.strong-text')].map(
    one => ({ text: one.textContent, box: one.getBoundingClientRect() }),
  );
  return words.flatMap((one, at) => [
    ...(one.box.left < edge.left - 1 || one.box.right > edge.right + 1 || one.box.bottom > edge.bottom + 1
      ? [`${one.text} leaves the drawing`]
      : []),
    ...words
      .slice(at + 1)
      .filter(
        other =>
          one.box.left < other.box.right - 1 &&
          other.box.left < one.box.right - 1 &&
          one.box.top < other.box.bottom - 4 &&
          other.box.top < one.box.bottom - 4,
      )
      .map(other => `${one.text} meets ${other.text}`),
  ]);
}

test('the words of the ship’s drawing keep apart, wide and beside an open derivation', async () => {
  const { page, context, complaints } = await own.open();
  await page.setViewportSize({ width: 1280, height: 720 });
  await openSample(page);
  await page.getByText('At rest on the seabed').waitFor();
  expect(await page.evaluate(clashes)).toEqual([]);
  await page.locator('.bottom-cell button.figure').first().click();
  await page.locator('.why-panel').waitFor();
  await expect.poll(() => page.evaluate(clashes)).toEqual([]);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);
