import { afterEach, expect, it, vi } from 'vitest';
import { levelling } from '../../bench/levelling/run';

afterEach(() => {
  vi.restoreAllMocks();
});

function heard(): string[] {
  const said: string[] = [];
  vi.spyOn(process.stderr, 'write').mockImplementation(text => said.push(String(text)) > 0);
  return said;
}

it('the bench ends with exit 2 and names the folder that is missing', async () => {
  const said = heard();
  const code = await levelling(['--set', 'j30', '--dir', '/nowhere/at-all']);
  expect([code, said.join('')]).toEqual([2, expect.stringContaining('/nowhere/at-all/j30')]);
});

it('the bench ends with exit 2 on wrong use', async () => {
  const said = heard();
  expect(await levelling([])).toBe(2);
  expect(await levelling(['--set', 'j30', '--schedules', 'many'])).toBe(2);
  expect(said.join('')).toContain('"many" is not a number above 0.');
});
