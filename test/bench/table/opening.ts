import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';
import { CHROMIUM, startedHost, SWITCHES } from './host';
import type { BenchRow } from './row';

const RUNS = 5;
interface Opened {
  /** From starting the host to the total on the bottom line, milliseconds. */
  readonly fromStart: number;
  /** From asking for the example to the total on the bottom line, milliseconds. */
  readonly fromAsking: number;
}

/** Starts the host, loads the window in a fresh page and opens the example. The browser itself runs already. */
async function opened(browser: Browser): Promise<Opened> {
  const started = performance.now();
  const { address, stop } = await startedHost();
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 720 } });
    const page = await context.newPage();
    await page.goto(address);
    const sample = page.getByRole('button', { name: 'Look at the sample ship' });
    await sample.waitFor();
    const asked = performance.now();
    await sample.click();
    await page.locator('.bottom-cell', { hasText: 'Total' }).first().waitFor({ timeout: 60_000 });
    const now = performance.now();
    await context.close();
    return { fromStart: now - started, fromAsking: now - asked };
  } finally {
    stop();
  }
}

/** How long the example takes until its total stands in the window, in Chromium over the loopback host. */
export async function openingRows(): Promise<BenchRow[]> {
  const name = 'opening the example until its total is shown';
  if (!existsSync(CHROMIUM)) return [{ name, unit: 's', said: 'Chromium is not on this machine' }];
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: SWITCHES });
  const runs: Opened[] = [];
  try {
    for (let i = 0; i < RUNS; i++) runs.push(await opened(browser));
  } finally {
    await browser.close();
  }
  const median = (values: readonly number[]) =>
    (values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN) / 1000;
  return [
    {
      name: `${name}, from starting the host`,
      figure: median(runs.map(run => run.fromStart)),
      unit: 's',
      said: `median of ${RUNS}, a fresh page each, the browser running`,
    },
    {
      name: `${name}, from asking for it`,
      figure: median(runs.map(run => run.fromAsking)),
      unit: 's',
      said: `median of ${RUNS}`,
    },
  ];
}
