import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { Buffers } from '../../../../core/sheet/columns/buffers';
import * as slow from '../../../../core/sheet/columns/kernels';
import { sharedPowers } from '../../../../core/sheet/columns/powers';
import * as quick from '../../../../core/sheet/columns/quick-kernels';
import { roundOne } from '../../../../core/sheet/columns/rounding';
import {
  addAll,
  asTrials,
  inTurn,
  multiplyAll,
  passOn,
  roundProduct,
} from '../../../../core/sheet/columns/runs';

type Trials = Float64Array;
/** Longer than the patterns below and no multiple of four: every place of a turn meets every value. */
const LENGTH = 47;
const UNTOUCHED = -12345;
const trials = (...values: number[]) =>
  Float64Array.from({ length: LENGTH }, (_, i) => values[i % values.length] ?? NaN);

const A = trials(3, -2.5, 0, NaN, 1.005, 40, 7.25, -0.125, 1, 2, 9);
const B = trials(2, 4, 5, 6, -1, 0, NaN, 8, 1, -3, 0.5);
const C = trials(1, 0, 1, 2, NaN, 1, 0.25);
const D = trials(0.5, 1, -4, 8, 2, 16, 1, 2, -1, 0, 3, 4, -6);
const at = (array: Trials, i: number) => array[i] ?? NaN;

/** What decimals of many digits make of a value, half away from zero. */
const inDecimals = (value: number, digits: number) =>
  Number.isNaN(value)
    ? NaN
    : new Decimal(value).toDecimalPlaces(digits, Decimal.ROUND_HALF_UP).toNumber() + 0;
const higher = (a: number, b: number) => (Number.isNaN(a) || Number.isNaN(b) ? NaN : Math.max(a, b));
const lower = (a: number, b: number) => (Number.isNaN(a) || Number.isNaN(b) ? NaN : Math.min(a, b));

type Kernel = readonly [string, (out: Trials, n: number) => void, (i: number, before: number) => number];

/** Each loop beside what it means in one trial; `before` is what stood in its place. */
const KERNELS: readonly Kernel[] = [
  ['minus', (out, n) => slow.minus(out, A, B, n), i => at(A, i) - at(B, i)],
  ['over', (out, n) => slow.over(out, A, B, n), i => (at(B, i) === 0 ? NaN : at(A, i) / at(B, i))],
  ['roundUp', (out, n) => slow.roundUp(out, A, 100, n), i => Math.ceil(inDecimals(at(A, i), 2)) + 0],
  [
    'reaches',
    (out, n) => slow.reaches(out, A, B, 10, n),
    i => {
      const gap = inDecimals(at(A, i), 1) - inDecimals(at(B, i), 1);
      return Number.isNaN(gap) ? NaN : Number(gap >= 0);
    },
  ],
  [
    'choose',
    (out, n) => slow.choose(out, C, A, B, n),
    i => (Number.isNaN(at(C, i)) ? NaN : at(C, i) === 1 ? at(A, i) : at(B, i)),
  ],
  [
    'firstPresent',
    (out, n) => slow.firstPresent(out, A, B, n),
    i => (Number.isNaN(at(A, i)) ? at(B, i) : at(A, i)),
  ],
  [
    'addPresent',
    (out, n) => slow.addPresent(out, A, n),
    (i, before) => (Number.isNaN(at(A, i)) ? before : before + at(A, i)),
  ],
  [
    'countPresent',
    (out, n) => slow.countPresent(out, A, n),
    (i, before) => (Number.isNaN(at(A, i)) ? before : before + 1),
  ],
  [
    'addWhere',
    (out, n) => slow.addWhere(out, D, C, trials(1), n),
    (i, before) => (Number.isNaN(at(C, i)) ? NaN : at(C, i) === 1 ? before + at(D, i) : before),
  ],
  ['addWhere without a wanted key', (out, n) => slow.addWhere(out, D, C, trials(NaN), n), () => NaN],
  [
    'between',
    (out, n) => slow.between(out, A, trials(0.25), trials(0.5, 0.75), 1000, n),
    i => {
      const upTo = inDecimals(at(A, i) * at(trials(0.5, 0.75), i), 2);
      return inDecimals(upTo - inDecimals(at(A, i) * 0.25, 2), 2);
    },
  ],
  [
    'grossUp',
    (out, n) => slow.grossUp(out, D, trials(0.5, 1, 1.5, 0), 100, n),
    i => {
      const rest = 1 - at(trials(0.5, 1, 1.5, 0), i);
      return rest > 0 ? inDecimals(at(D, i) / rest, 2) : NaN;
    },
  ],
  ['power', (out, n) => slow.power(out, D, trials(2), n), i => slow.raised(at(D, i), 2)],
  ['roundTo', (out, n) => quick.roundTo(out, A, 100, n), i => inDecimals(at(A, i), 2)],
  ['roundTimes1', (out, n) => quick.roundTimes1(out, A, 0.5, 10, n), i => inDecimals(at(A, i) * 0.5, 1)],
  [
    'roundTimes2',
    (out, n) => quick.roundTimes2(out, A, D, 2, 10, n),
    i => inDecimals(at(A, i) * at(D, i) * 2, 1),
  ],
  ['add1', (out, n) => quick.add1(out, A, 8, n), i => at(A, i) + 8],
  ['add2', (out, n) => quick.add2(out, A, B, 8, n), i => at(A, i) + at(B, i) + 8],
  ['add3', (out, n) => quick.add3(out, A, B, C, 8, n), i => at(A, i) + at(B, i) + at(C, i) + 8],
  [
    'add4',
    (out, n) => quick.add4(out, A, B, C, D, 8, n),
    i => at(A, i) + at(B, i) + (at(C, i) + at(D, i)) + 8,
  ],
  ['times1', (out, n) => quick.times1(out, A, 8, n), i => at(A, i) * 8],
  ['times2', (out, n) => quick.times2(out, A, B, 8, n), i => at(A, i) * at(B, i) * 8],
  ['overConstant', (out, n) => quick.overConstant(out, A, 8, n), i => at(A, i) / 8],
  ['least', (out, n) => quick.least(out, A, B, n), i => lower(at(A, i), at(B, i))],
  ['greatest', (out, n) => quick.greatest(out, A, B, n), i => higher(at(A, i), at(B, i))],
];

describe('a loop over trials', () => {
  it.each(KERNELS)(
    '%s gives each of the first n trials its value, and touches no other',
    (_name, run, meaning) => {
      for (let n = 0; n <= LENGTH; n++) {
        const out = new Float64Array(LENGTH).fill(UNTOUCHED);
        run(out, n);
        const expected = Array.from({ length: LENGTH }, (_, i) =>
          i < n ? meaning(i, UNTOUCHED) : UNTOUCHED,
        );
        expect([...out].map(x => x + 0)).toEqual(expected.map(x => x + 0));
      }
    },
  );

  it.each(KERNELS)('%s reads nothing past the end of its arrays but absence', (_name, run) => {
    const out = new Float64Array(LENGTH + 12).fill(UNTOUCHED);
    run(out, LENGTH + 10);
    expect([...out.slice(LENGTH + 10)]).toEqual([UNTOUCHED, UNTOUCHED]);
  });
});

describe('a rounding in doubles', () => {
  it.each([
    [1.005, 2, 1.01],
    [-1.005, 2, -1.01],
    [2.675, 2, 2.68],
    [0.5, 0, 1],
    [-0.5, 0, -1],
    [0.49, 0, 0],
    [1234.5649, 2, 1234.56],
    [35.855, 2, 35.86],
  ])('%d to %d decimals is %d', (value, digits, expected) => {
    expect(roundOne(value, 10 ** digits)).toBe(expected);
  });
});

// Math.pow of the engine is the outside reference; 4e-14 is what the kernel promises.
describe('a power in doubles', () => {
  const bases = [
    0.01, 0.05, 0.0626, 0.5, 0.8, 0.82, 0.9, 0.96, 0.999, 1, 1.0025, 1.04, 1.1, 1.2, 1.23, 2, 15.9, 16.1, 120,
  ];
  const exponents = [-7, -4.5, -3.9, -1.25, -0.5, 0, 1 / 12, 0.25, 1, 1.75, 3.5, 4.1, 6, 9];
  // Where a logarithm times the exponent is great, its last digits are lost: by it these would stray further.
  const great = [1e60, 1e-60].flatMap(
    base =>
      [
        [base, 3.9],
        [base, -3.9],
      ] as const,
  );
  it('is that of the engine', () => {
    const pairs = bases.flatMap(base => exponents.map(exponent => [base, exponent] as const));
    for (const [base, exponent] of [...pairs, ...great, [11, 288], [5, 396]] as const) {
      const expected = Math.pow(base, exponent);
      expect(Math.abs(slow.raised(base, exponent) - expected)).toBeLessThanOrEqual(4e-14 * expected);
    }
  });
  it.each([
    [0, -1],
    [-2, 0.5],
    [NaN, 1],
    [NaN, 0],
    [2, NaN],
    [1e200, 2],
    [2, Infinity],
  ])('%d to the power %d is absent', (base, exponent) => expect(slow.raised(base, exponent)).toBeNaN());
  it.each([
    [0, 0, 1],
    [0, 2, 0],
    [-2, 3, -8],
    [-2, 2, 4],
  ])('%d to the power %d is %d', (base, exponent, expected) =>
    expect(slow.raised(base, exponent)).toBe(expected),
  );

  it('is worked out anew when the base or the exponent of a trial changes, and shared by steps of one base', () => {
    const [base, out, other] = [new Float64Array(3), new Float64Array(3), new Float64Array(3)];
    const exponent = new Float64Array(3);
    const [run, again] = [sharedPowers(out, base, exponent), sharedPowers(other, base, exponent)];
    const say = (bases: readonly number[], exponents: readonly number[], n = 3) => {
      base.set(bases);
      exponent.set(exponents);
      run(n);
      again(n);
      expect([...other.subarray(0, n)]).toEqual([...out.subarray(0, n)]);
      for (let t = 0; t < n; t++) expect(out[t]).toBeCloseTo((bases[t] ?? NaN) ** (exponents[t] ?? NaN), 12);
    };
    say([1.02, 1.05, 2], [1, 2, 3]);
    say([1.02, 1.05, 2], [1, 2, 3]);
    say([1.02, 1.05, 2], [2, 2, 0.5]);
    say([1.03, 1.05, 2], [2, 2, 0.5]);
    say([1.03, 1.05, 3], [2, 2, 0.5]);
    // Exponents 64 twelfths apart fall into one place.
    say([1.03, 1.05, 3], [2 + 64 / 12, 2, 0.5]);
    say([1.03, 1.05, 3], [2, 2, 0.5]);
    say([1.04, 1.06, 4], [2, 2], 2);
    say([1.04, 1.06, 4], [-1.5, -2.25, 0]);
    base.fill(NaN);
    run(3);
    expect([...out]).toEqual([NaN, NaN, NaN]);
  });
});

describe('a look-up in doubles', () => {
  const keys = Float64Array.of(1, 2, 4, 8);
  it.each([
    [0.5, -1],
    [1, 0],
    [1.9, 0],
    [2, 1],
    [3, 1],
    [4, 2],
    [8, 3],
    [99, 3],
  ])('the last key not above %d is number %d', (wanted, expected) =>
    expect(slow.stepOf(keys, wanted)).toBe(expected),
  );
  it('finds nothing among no keys, and nothing for no key', () => {
    expect([slow.stepOf(new Float64Array(0), 1), slow.stepOf(keys, NaN)]).toEqual([-1, -1]);
  });
  it.each([
    [false, [NaN, 10, 20, 30, NaN, NaN]],
    [true, [NaN, 10, 20, 30, 30, NaN]],
  ])('by consecutive keys from 5, holding the last: %o', (hold, expected) => {
    const out = new Float64Array(7).fill(UNTOUCHED);
    const key = Float64Array.of(4, 5, 6.04, 6.98, 8, NaN, 5);
    slow.lookUpByIndex(out, key, 10, { values: Float64Array.of(10, 20, 30), first: 5, hold }, 6);
    expect([...out]).toEqual([...expected, UNTOUCHED]);
  });
});

describe('a run over operands', () => {
  const after = (run: (n: number) => void, out: Trials, n = 3) => {
    run(n);
    return [...out.slice(0, 4)];
  };
  const fresh = () => new Float64Array(4).fill(UNTOUCHED);
  const [one, two, four] = [trials(1), trials(2), trials(4)];

  it.each([
    [[2, 3], 5],
    [[one, 3], 4],
    [[one, two, 3], 6],
    [[one, two, four], 7],
    [[one, two, four, one, 2], 10],
    [[one, two, four, one, two], 10],
    [[one, two, four, one, two, four, one, two, 3], 20],
    [[], 0],
  ])('adds %#', (operands, expected) => {
    const out = fresh();
    expect(after(addAll(operands, out), out)).toEqual([expected, expected, expected, UNTOUCHED]);
  });
  it.each([
    [[2, 3], 6],
    [[one, 3], 3],
    [[two, four, 3], 24],
    [[two, four, two], 16],
    [[two, four, two, four, 0.5], 32],
    [[], 1],
  ])('multiplies %#', (operands, expected) => {
    const out = fresh();
    expect(after(multiplyAll(operands, out), out)).toEqual([expected, expected, expected, UNTOUCHED]);
  });
  it('passes an operand on, a constant or trials or none', () => {
    const out = fresh();
    expect(after(passOn([two], out), out)).toEqual([2, 2, 2, UNTOUCHED]);
    expect(after(passOn([5], out), out)).toEqual([5, 5, 5, UNTOUCHED]);
    expect(after(passOn([], out), out)).toEqual([NaN, NaN, NaN, UNTOUCHED]);
  });
  it('rounds a product of one or two arrays in one pass, and no other', () => {
    const out = fresh();
    const rounded = (operands: readonly (number | Trials)[]) => {
      const run = roundProduct(operands, out, 10);
      return after(run, out);
    };
    expect(rounded([two, 0.125, 3])).toEqual([0.8, 0.8, 0.8, UNTOUCHED]);
    expect(rounded([two, 0.125, four])).toEqual([1, 1, 1, UNTOUCHED]);
    expect(() => rounded([two, four, one])).toThrow('a product of 3 that vary is not rounded in one pass');
    expect(() => rounded([2, 3])).toThrow('a product of 0 that vary is not rounded in one pass');
  });
  it('writes a constant out, and an absent one as absent', () => {
    expect([...asTrials(3, 2)]).toEqual([3, 3]);
    expect([...asTrials(undefined, 2)]).toEqual([NaN, NaN]);
    expect(asTrials(one, 2)).toBe(one);
  });
  it('is the only one of a turn itself', () => {
    const done: string[] = [];
    const [a, b] = [() => void done.push('a'), () => void done.push('b')];
    expect(inTurn([a])).toBe(a);
    inTurn([a, b])(1);
    inTurn([])(1);
    expect(done).toEqual(['a', 'b']);
  });
});

describe('arrays that are lent', () => {
  it('are lent again once they are given back, the last one first', () => {
    const buffers = new Buffers(16);
    const [a, b] = [buffers.lend(1), buffers.lend(2)];
    expect([a.length, buffers.of(1) === a, buffers.of(3), buffers.bytes]).toEqual([16, true, undefined, 256]);
    buffers.giveBack(1);
    buffers.giveBack(2);
    expect([buffers.of(1), buffers.of(2)]).toEqual([undefined, undefined]);
    expect([buffers.lend(3) === b, buffers.lend(4) === a, buffers.bytes]).toEqual([true, true, 256]);
    buffers.lend(5);
    expect(buffers.bytes).toBe(384);
    expect(() => buffers.giveBack(9)).toThrow('Nothing is held under the key 9.');
  });
});
