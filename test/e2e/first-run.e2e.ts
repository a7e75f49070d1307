import fs from 'node:fs';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser, openPage, OUT, serveHost, type ServedHost } from './lib/window';

let browser: Browser;
let host: ServedHost;

beforeAll(async () => {
  fs.mkdirSync(OUT, { recursive: true });
  browser = await launchBrowser();
  host = await serveHost();
});
afterAll(async () => {
  await browser.close();
  host.stop();
});

test('the first run offers three starting points and complains of nothing', async () => {
  const { page, context, complaints } = await openPage(browser, host.address);
  await page.getByRole('heading', { name: 'What do you need to put in front of people?' }).waitFor();
  for (const name of ['Start a grant budget', 'Start a bid', 'Start a comparison']) {
    expect(await page.getByRole('button', { name }).count()).toBe(1);
  }
  expect(complaints).toEqual([]);
  await page.screenshot({ path: path.join(OUT, 'first-run-1280-light.png') });
  await context.close();
});

test('the token leaves the address bar and a reload still works', async () => {
  const { page, context } = await openPage(browser, host.address);
  expect(new URL(page.url()).hash).toBe('');
  await page.reload();
  await page.getByRole('button', { name: 'Start a bid' }).waitFor();
  const about = await page.evaluate(async () => {
    const token = window.sessionStorage.getItem('reefwright-token') ?? '';
    const reply = await fetch('/api/about', {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
      body: '{}',
    });
    return reply.status;
  });
  expect(about).toBe(200);
  await context.close();
});
