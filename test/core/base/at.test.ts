import { expect, it } from 'vitest';
import { at, BugError, known, withId } from '../../../core/base';

it('takes what is there, a zero or an empty word too, and stops loudly where nothing is', () => {
  expect([at([3, 0], 1), at(Float64Array.of(2.5), 0), at(['', 'a'], 0)]).toEqual([0, 2.5, '']);
  const amounts = new Map([['hold', 0]]);
  expect(known(amounts, 'hold')).toBe(0);
  for (const index of [2, -1, 0.5]) expect(() => at([3, 0], index)).toThrow(BugError);
  expect(() => at([3, 0], 2)).toThrow('There is no entry 2 in a list of 2.');
  expect(() => known(amounts, 'deck')).toThrow(new BugError('Nothing is held under the key deck.'));
  const places = [{ id: 'hold' }, { id: 'deck' }];
  expect(withId(places, 'deck')).toBe(places[1]);
  expect(() => withId(places, 'mast')).toThrow(new BugError('No entry has the id mast.'));
});
