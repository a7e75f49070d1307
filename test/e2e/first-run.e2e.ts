import { expect, test } from 'vitest';
import { shot } from './lib/looks';
import { ownWindow } from './lib/own-window';

const own = ownWindow();

test('the first run offers three starting points and complains of nothing', async () => {
  const { page, context, complaints } = await own.open();
  await page.getByRole('heading', { name: 'What do you need to put in front of people?' }).waitFor();
  for (const name of ['Start a grant budget', 'Start a bid', 'Start a comparison']) {
    expect(await page.getByRole('button', { name }).count()).toBe(1);
  }
  expect(complaints).toEqual([]);
  await shot(page, 'first-run-1280-light');
  await context.close();
});

test('the token leaves the address bar and a reload still works', async () => {
  const { page, context } = await own.open();
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
