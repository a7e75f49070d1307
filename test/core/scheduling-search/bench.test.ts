import { afterEach, expect, it, vi } from 'vitest';
import { spread } from '../../bench/levelling/instances';
import { readOptions } from '../../bench/levelling/options';
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

it('the bench against the peer needs one option: 12 hard instances of each of two sets', () => {
  expect(readOptions(['--peer'])).toMatchObject({
    set: 'j60,j120',
    isHardOnly: true,
    take: 12,
    doesPeer: true,
  });
  expect(readOptions(['--peer', '--set', 'j30'])).toMatchObject({ set: 'j30', isHardOnly: false });
});

it('a few of many instances are spread evenly', () => {
  const list = Array.from({ length: 10 }, (_, k) => k);
  expect(spread(list, 4)).toEqual([0, 3, 5, 8]);
  expect(spread(list, 10)).toEqual(list);
  expect(spread(list, Infinity)).toEqual(list);
});
