import { beforeEach, expect, test, vi } from 'vitest';
import type { FundingView, OpenedRows } from '../../core/views';
import { ask, isOfBefore, lookAt, namesIn } from '../../renderer/state/opened';
import { change, EMPTY_STATE, state } from '../../renderer/state/store';

let answer: Partial<OpenedRows> = {};
vi.mock('../../renderer/engine/engine', () => ({
  engine: () => ({ ask: () => Promise.resolve(answer), cancel: () => undefined }),
}));

const funding: FundingView = {
  sentence: ['The grant budget.'],
  missing: [],
  findings: [],
  awards: [],
  begin: undefined,
} as never;

beforeEach(() => {
  change(EMPTY_STATE);
  answer = {};
});

test('a view that is looked at is of before until its rows of the last evaluation have come', async () => {
  const leave = lookAt('funding');
  expect(isOfBefore(state())).toBe(true);
  await ask('funding');
  expect(isOfBefore(state())).toBe(true);
  answer = { funding };
  await ask('funding');
  expect(state().opened.funding).toBe(funding);
  expect(state().ofLast).toEqual(['funding']);
  expect(isOfBefore(state())).toBe(false);
  // The next evaluation brings other rows than these.
  change({ ofLast: [] });
  expect(isOfBefore(state())).toBe(true);
  leave();
  expect(isOfBefore(state())).toBe(false);
  expect(isOfBefore({ ...state(), isBehind: true })).toBe(true);
});

test('a view that is looked at twice is looked at until both are left', () => {
  const [first, second] = [lookAt('evidence'), lookAt('evidence')];
  first();
  expect(state().lookedAt).toEqual(['evidence']);
  second();
  expect(state().lookedAt).toEqual([]);
});

test('what has rows is told by its name', () => {
  expect(namesIn({})).toEqual([]);
  expect(namesIn({ funding })).toEqual(['funding']);
});
