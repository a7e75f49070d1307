import { expect, test } from 'vitest';
import { isSameData, keeping, keepingParts, onceFor } from '../../../core/base';

test('a kept answer is told again for the very same objects, and forgotten when too many came since', () => {
  let made = 0;
  const step = keeping(2, (of: object) => ({ of, made: ++made }));
  const [a, b, c] = [{}, {}, {}];
  const first = step(a);
  expect(step(a)).toBe(first);
  step(b);
  expect(step(a)).toBe(first);
  step(c);
  expect(step(a)).toBe(first);
  expect(step(b).made).toBe(4);
});

interface Priced {
  readonly title: string;
  readonly figure: object;
  readonly map: ReadonlyMap<string, number>;
  readonly price: number;
}

test('parts are compared by what they say, whatever else changes, and maps by identity', () => {
  let made = 0;
  const step = keepingParts(
    1,
    ({ title, figure, map }: Priced) => [title, figure, map],
    () => ++made,
  );
  const map = new Map([['a', 1]]);
  expect(step({ title: 'x', figure: { value: '1', low: [1, 2] }, map, price: 1 })).toBe(1);
  expect(step({ title: 'x', figure: { value: '1', low: [1, 2] }, map, price: 2 })).toBe(1);
  expect(step({ title: 'x', figure: { value: '1', low: [1, 3] }, map, price: 2 })).toBe(2);
  expect(step({ title: 'x', figure: { value: '1', low: [1, 3] }, map: new Map(map), price: 2 })).toBe(3);
});

test('plain data says the same when every field does; a field that is missing is not one that says nothing', () => {
  expect(isSameData({ a: [1, { b: 'x' }] }, { a: [1, { b: 'x' }] })).toBe(true);
  expect(isSameData({ a: undefined }, {})).toBe(false);
  expect(isSameData({ a: undefined }, { b: undefined })).toBe(false);
  expect(isSameData([1, 2], [1, 2, 3])).toBe(false);
  expect(isSameData([], {})).toBe(false);
  expect(isSameData(new Set([1]), new Set([1]))).toBe(false);
});

test('an object is read once', () => {
  let reads = 0;
  const read = onceFor(({ a }: { a?: number }) => {
    reads += 1;
    return a;
  });
  const object = {};
  expect([read(object), read(object), read({ a: 2 })]).toEqual([undefined, undefined, 2]);
  expect(reads).toBe(2);
});
