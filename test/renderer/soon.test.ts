import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { soon } from '../../renderer/state/soon';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const clock = {
  set: (ring: () => void, milliseconds: number) => Number(setTimeout(ring, milliseconds)),
  stop: (id: number) => clearTimeout(id),
};

test('work is done once for many calls, and a call every second for a minute does not put it off', () => {
  const work = vi.fn();
  const keep = soon(work, 2000, clock);
  for (let second = 0; second < 60; second++) {
    keep.call();
    vi.advanceTimersByTime(1000);
    expect(work.mock.calls.length).toBeGreaterThanOrEqual(Math.floor((second + 1) / 3));
  }
  expect(work.mock.calls.length).toBeLessThanOrEqual(30);
});

test('what is cancelled is not done, and can be called for again', () => {
  const work = vi.fn();
  const keep = soon(work, 2000, clock);
  keep.call();
  keep.cancel();
  vi.advanceTimersByTime(5000);
  expect(work).not.toHaveBeenCalled();
  keep.call();
  vi.advanceTimersByTime(2000);
  expect(work).toHaveBeenCalledTimes(1);
});

test('unsaved work is kept so, within five seconds of the first edit', () => {
  const source = readFileSync('renderer/state/recovery.ts', 'utf8');
  const [, within = '9999'] = /const WITHIN = (\d+);/.exec(source) ?? [];
  expect(Number(within)).toBeLessThanOrEqual(5000);
  expect(source).toMatch(/soon\(.*WITHIN/);
});
