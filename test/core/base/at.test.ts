import { expect, it } from 'vitest';
import { at, BugError, byteAt, intAt, known, valueAt, wholeAt, withId } from '../../../core/base';

it('takes what is there, a zero or an empty word too, and stops loudly where nothing is', () => {
  expect([at([3, 0], 1), at(Float64Array.of(2.5), 0), at(['', 'a'], 0)]).toEqual([0, 2.5, '']);
  const amounts = new Map([['hold', 0]]);
  expect(known(amounts, 'hold')).toBe(0);
  for (const index of [2, -1, 0.5]) expect(() => at([3, 0], index)).toThrow(BugError);
  expect(() => at([3, 0], 2)).toThrow('There is no entry 2 in a list of 2.');
  expect([
    valueAt(Float64Array.of(0, 2.5), 1),
    intAt(Int32Array.of(0), 0),
    byteAt(Uint8Array.of(1, 9), 1),
  ]).toEqual([2.5, 0, 9]);
  expect(() => valueAt(Float64Array.of(1), 1)).toThrow(new BugError('There is no entry 1 in a list of 1.'));
  expect(() => intAt(Int32Array.of(1), -1)).toThrow(new BugError('There is no entry -1 in a list of 1.'));
  expect([wholeAt(Uint32Array.of(7), 0), wholeAt(Uint16Array.of(0), 0)]).toEqual([7, 0]);
  expect(() => wholeAt(Uint32Array.of(7), 1)).toThrow(new BugError('There is no entry 1 in a list of 1.'));
  expect(() => byteAt(Uint8Array.of(), 0)).toThrow(new BugError('There is no entry 0 in a list of 0.'));
  expect(() => known(amounts, 'deck')).toThrow(new BugError('Nothing is held under the key deck.'));
  const places = [{ id: 'hold' }, { id: 'deck' }];
  expect(withId(places, 'deck')).toBe(places[1]);
  expect(() => withId(places, 'mast')).toThrow(new BugError('No entry has the id mast.'));
});
