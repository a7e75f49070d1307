import { describe, expect, test } from 'vitest';
import { largestFirst, sumOf, sumRows } from '../../../core/views/why-sums';

describe('the derivation of a sum', () => {
  const told = (cents: readonly (number | undefined)[]) => {
    const parts = cents.map((each, at) => ({ cents: each, words: `Part ${at + 1}`, why: `part:${at + 1}` }));
    const { value, rows, title, words } = sumRows('all', 'All of it', 'The sum of the parts.', parts);
    expect([title, words]).toEqual(['All of it', 'The sum of the parts.']);
    return [value.text, ...rows.map(row => `${row.operator} ${row.value.text} ${row.words}`)];
  };

  test('begins with its largest part and adds the others, without those that are nothing', () => {
    expect(told([1250, 0, 310_000, 5])).toEqual([
      '3,112.55',
      '= 3,100.00 Part 3',
      '+ 12.50 Part 1',
      '+ 0.05 Part 4',
    ]);
  });

  test('of nothing is nothing, and says that no line has any of it', () => {
    const none = ['0.00', '= 0.00 no line has any of it'];
    expect([told([]), told([0, 0])]).toEqual([none, none]);
  });

  test('with parts that are not known is not known, and tells those first', () => {
    const [value, first, second, third] = told([100, undefined, 200]);
    expect([first?.slice(-6), second, third]).toEqual(['Part 2', '+ 2.00 Part 3', '+ 1.00 Part 1']);
    expect(value).not.toMatch(/\d/);
  });

  test('is put in order alike wherever parts stand: not known, large, small', () => {
    const parts = [3, undefined, 20, undefined, 1];
    expect(parts.map(each => each ?? Number.NaN).toSorted((a, b) => sign(a, b))).toEqual([
      ...[Number.NaN, Number.NaN],
      ...[20, 3, 1],
    ]);
    expect([
      largestFirst(undefined, 5),
      largestFirst(5, undefined),
      largestFirst(undefined, undefined),
    ]).toEqual([-1, 1, 0]);
    expect([sumOf([1, 2]), sumOf([1, undefined]), sumOf([])]).toEqual([3, undefined, 0]);
  });
});

const orNothing = (each: number) => (Number.isNaN(each) ? undefined : each);
const sign = (a: number, b: number) => largestFirst(orNothing(a), orNothing(b));
