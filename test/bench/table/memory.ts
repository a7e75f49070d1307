import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type CDPSession, type Page } from 'playwright-core';
import { writeProject } from '../../../core/project';
import { largeProject } from '../large-project';
import { CHROMIUM, startedHost, SWITCHES } from './host';
import type { BenchRow } from './row';

const LINES = 2000;
/** Every view, that of the most inputs last. */
const VIEWS = [
  'Materials',
  'Sinking',
  'Rates',
  'Schedule',
  'Budget',
  'Funding',
  'Bid',
  'Risk',
  'Compare',
].concat(['Review', 'Decision', 'Documents', 'Work']);
const MEGABYTE = 1e6;
const PATIENCE = { timeout: 240_000 };

/** What a page holds after its rubbish is collected: objects, buffers and nodes, bytes. */
async function pageHolds(session: CDPSession): Promise<number> {
  await session.send('HeapProfiler.collectGarbage');
  const heap = await session.send('Runtime.getHeapUsage');
  return heap.usedSize + heap.embedderHeapUsedSize + heap.backingStorageSize;
}

/** What the process of the page has for itself, bytes, as the system counts it; absent elsewhere than on Linux. */
async function processHolds(browser: Browser): Promise<number | undefined> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const held = processInfo
    .filter(one => one.type === 'renderer')
    .map(one => {
      const file = `/proc/${one.id}/smaps_rollup`;
      if (!existsSync(file)) return 0;
      const kilobytes = [...readFileSync(file, 'utf8').matchAll(/^Private_\w+: +(\d+) kB/gm)];
      return kilobytes.reduce((sum, found) => sum + 1024 * Number(found[1]), 0);
    });
  const most = Math.max(0, ...held);
  return most === 0 ? undefined : most;
}

/** Asks a worker of a page over the session of its page. */
function askWorker(session: CDPSession, sessionId: string) {
  let number = 0;
  return (method: string): Promise<Record<string, unknown>> =>
    new Promise((resolve, reject) => {
      const id = ++number;
      const heard = (event: { sessionId: string; message: string }) => {
        if (event.sessionId !== sessionId) return;
        const said: unknown = JSON.parse(event.message);
        if (!isAnswer(said) || said.id !== id) return;
        session.off('Target.receivedMessageFromTarget', heard);
        if (said.result === undefined) reject(new Error(`${method}: ${event.message}`));
        else resolve(said.result);
      };
      session.on('Target.receivedMessageFromTarget', heard);
      void session.send('Target.sendMessageToTarget', {
        sessionId,
        message: JSON.stringify({ id, method }),
      });
    });
}

interface Answer {
  readonly id: number;
  readonly result?: Record<string, unknown>;
}
const isAnswer = (value: unknown): value is Answer =>
  typeof value === 'object' && value !== null && 'id' in value;

interface Held {
  readonly page: number;
  readonly workers: readonly number[];
  readonly nodes: number;
  readonly process: number | undefined;
}

async function show(page: Page, view: string): Promise<void> {
  const views = page.getByRole('navigation', { name: 'Views' });
  await views.getByRole('button', { name: new RegExp(`^${view}`) }).click();
  await page.locator(`main[data-view="${view.toLowerCase()}"] .title-line`).waitFor(PATIENCE);
  await page
    .locator('.working')
    .first()
    .waitFor({ state: 'detached', ...PATIENCE });
}

/** How many work items the list of views counts. */
async function lineCount(page: Page): Promise<number> {
  const work = page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: /^Work/ });
  return Number((await work.innerText()).replace(/\D/g, ''));
}

/** Opens a document, edits it, shows every view of it and asks what is held then. */
async function measured(browser: Browser, file: string): Promise<Held> {
  const { address, stop } = await startedHost([file]);
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 720 } });
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    const workers: string[] = [];
    session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
      if (targetInfo.type === 'worker') workers.push(sessionId);
    });
    const attach = { autoAttach: true, waitForDebuggerOnStart: false, flatten: false };
    await session.send('Target.setAutoAttach', attach);
    await page.goto(address);
    await page.locator('.bottom-cell', { hasText: 'Total' }).first().waitFor({ timeout: 60_000 });
    await page.waitForFunction(() => document.querySelector('[data-settling]') === null);
    const lines = await lineCount(page);
    if (lines < LINES) throw new Error(`the window counts ${lines} lines`);
    await show(page, 'Vessel');
    await page.locator('[data-edit="/vessel/length"]').click();
    await page.locator('.cell-input').fill('440');
    await page.keyboard.press('Enter');
    await page.locator('.bottom-cell .moved').first().waitFor({ timeout: 60_000 });
    for (const view of VIEWS) await show(page, view);
    await page.locator('main[data-view="work"] .work-line').first().waitFor(PATIENCE);
    const held: number[] = [];
    for (const one of workers) {
      const ask = askWorker(session, one);
      await ask('HeapProfiler.collectGarbage');
      const heap = await ask('Runtime.getHeapUsage');
      held.push(Number(heap['usedSize']) + Number(heap['backingStorageSize'] ?? 0));
    }
    const all = {
      page: await pageHolds(session),
      workers: held,
      nodes: (await session.send('Memory.getDOMCounters')).nodes,
      process: await processHolds(browser),
    };
    await context.close();
    return all;
  } finally {
    stop();
  }
}

const megabytes = (bytes: number) => (bytes / MEGABYTE).toFixed(0);

/** What page and workers hold of a project of 2,000 lines after an edit and every view. */
export async function memoryRows(): Promise<BenchRow[]> {
  const name = `memory of page and workers, ${LINES.toLocaleString('en-US')} lines`;
  if (!existsSync(CHROMIUM)) return [{ name, unit: 'MB', said: 'Chromium is not on this machine' }];
  const folder = mkdtempSync(join(tmpdir(), 'memory-'));
  const file = join(folder, 'large.reef.json');
  writeFileSync(file, writeProject(largeProject(LINES)));
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: SWITCHES });
  try {
    const { page, workers, nodes, process } = await measured(browser, file);
    const each = `page ${megabytes(page)} with ${nodes} nodes, workers ${workers.map(megabytes).join(' and ')}`;
    const whole = process === undefined ? '' : `; its process has ${megabytes(process)}`;
    return [
      {
        name,
        figure: workers.reduce((sum, one) => sum + one, page) / MEGABYTE,
        unit: 'MB',
        said: `${each}, after collection${whole}`,
      },
    ];
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
