import path from 'node:path';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { OUT } from './window';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface Found {
  readonly violations: readonly { id: string; nodes: { html: string }[] }[];
}

/** What axe finds against A and AA, as lines that say where. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(async tags => {
    const { axe: engine } = window as unknown as {
      axe: { run: (root: Document, options: object) => Promise<Found> };
    };
    return (await engine.run(document, { runOnly: tags })).violations;
  }, TAGS);
  return found.map(one => {
    const where = one.nodes.slice(0, 3).map(node => node.html.slice(0, 160));
    return `${one.id}: ${where.join(' | ')}`;
  });
}

/** By how many pixels the page is wider than its window; nothing may scroll sideways. */
export function sideways(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
}

/** Text that its own box cuts off. */
export function clipped(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main td, main th, main h1, main h2, main li, main p')]
      .filter(one => getComputedStyle(one).overflow === 'hidden' && one.scrollWidth > one.clientWidth + 1)
      .map(one => one.innerText.slice(0, 60)),
  );
}

/** Keeps a picture of what is shown. */
export function shot(page: Page, name: string, fullPage = false): Promise<Buffer> {
  return page.screenshot({ path: path.join(OUT, `${name}.png`), fullPage });
}
