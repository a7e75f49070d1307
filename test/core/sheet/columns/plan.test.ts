import { describe, expect, it } from 'vitest';
import * as op from '../../../../core/sheet';
import { Sheet, columns, evaluateSheet, type Step } from '../../../../core/sheet';
import { give } from '../example';

const BATCH = 4;
const named = (of: readonly string[]) => ({
  heading: 'Lines',
  of,
  key: (r: string) => r,
  title: (r: string) => `Line ${r}`,
});

/** Single values x, y, zero, one; lines with an hours and a rate column; a step made from them, placed as `b/f`. */
function planOf(
  make: (s: ReturnType<typeof stage>) => Step<op.SheetUnit>,
  vary: Record<string, readonly number[]>,
  keep = ['b/f'],
) {
  const s = stage();
  s.b.place('f', 'F', make(s));
  const inputs = new Map(
    Object.entries(vary).map(([id, values]) => [
      id,
      Float64Array.from({ length: BATCH }, (_, i) => values[i % values.length] ?? NaN),
    ]),
  );
  return columns(evaluateSheet(s.sheet), { inputs, keep, batch: BATCH });
}

function stage() {
  const sheet = new Sheet('s');
  const b = sheet.block('b', 'Block');
  const given = (key: string, value: string | undefined) =>
    b.given(key, key, '1', value === undefined ? undefined : give(value, '1'));
  const singles = {
    x: given('x', '3'),
    y: given('y', '5'),
    zero: given('zero', '0'),
    one: given('one', '1'),
    gone: given('gone', undefined),
  };
  const usd = b.given('usd', 'usd', 'USD', give('10', 'USD'));
  const { columns: lines } = sheet.table('t', named(['a', 'c']), t => {
    const hours = t.field('hours', 'Hours', '1', () => give('2', '1'));
    return { hours, twice: t.place('twice', 'Twice', op.sum(hours, singles.x, singles.x)) };
  });
  return { sheet, b, ...singles, usd, ...lines };
}

/** The first three trials of `b/f`. */
const runOf = (...args: Parameters<typeof planOf>) => {
  const plan = planOf(...args);
  plan.run(3);
  return [...(plan.kept.get('b/f') ?? [])].slice(0, 3);
};

describe('what is worked out anew in every trial', () => {
  it.each<[string, number, number, Parameters<typeof planOf>[0]]>([
    ['one sum', 1, 1, s => op.sum(s.x, s.y)],
    ['nothing of what does not vary', 0, 0, s => op.sum(s.y, s.one)],
    ['nothing of a product with one', 0, 0, s => op.scaled(s.x, s.one)],
    ['nothing of a sum with nothing', 0, 0, s => op.sum(s.x, s.zero)],
    ['nothing of a quotient by one', 0, 0, s => op.over(s.x, s.one)],
    ['nothing of a difference less nothing', 0, 0, s => op.difference(s.x, s.zero)],
    ['nothing of a branch that stands', 0, 0, s => op.when(s.one, s.x, s.y)],
    ['nothing of the other branch that stands', 0, 0, s => op.when(s.zero, s.y, s.x)],
    ['nothing of a quote that is not there', 0, 0, s => op.quoted(s.gone, s.x)],
    ['nothing of a computed figure behind a quote', 0, 0, s => op.quoted(s.y, s.x)],
    ['a rounding and the product under it in one', 2, 1, s => op.rounded(op.scaled(s.x, s.y), 1)],
    ['of a product of two that vary too', 2, 1, s => op.rounded(op.scaled(s.x, s.x), 1)],
    ['of a product of two that vary and a constant', 2, 1, s => op.rounded(op.scaled(s.x, s.x, s.y), 1)],
    ['a rounding behind a product of three that vary', 2, 2, s => op.rounded(op.scaled(s.x, s.x, s.x), 1)],
    ['a rounding behind a sum', 2, 2, s => op.rounded(op.sum(s.x, s.y), 1)],
    ['the rows of a column once where they have the same operands', 2, 2, s => op.total(s.twice)],
  ])('%s: %d steps, %d arrays', (_what, steps, arrays, make) => {
    const plan = planOf(make, { 'b/x': [3] });
    expect([plan.liveSteps, plan.bytes / (BATCH * Float64Array.BYTES_PER_ELEMENT)]).toEqual([steps, arrays]);
    plan.run(BATCH);
    const exact = planOf(make, {});
    exact.run(BATCH);
    expect([...(plan.kept.get('b/f') ?? [])]).toEqual([...(exact.kept.get('b/f') ?? [])]);
  });

  it('a product is worked out by itself where it is used twice or wanted', () => {
    const twice = (s: ReturnType<typeof stage>) => {
      const product = s.b.place('p', 'P', op.scaled(s.x, s.y));
      return op.sum(op.rounded(product, 1), product);
    };
    const plan = planOf(twice, { 'b/x': [0.25, 0.5, 1] });
    plan.run(3);
    expect([...(plan.kept.get('b/f') ?? [])].slice(0, 3)).toEqual([1.3 + 1.25, 2.5 + 2.5, 10]);
    const wanted = planOf(
      s => op.rounded(s.b.place('p', 'P', op.scaled(s.x, s.y)), 1),
      { 'b/x': [0.25, 0.5, 1] },
      ['b/f', 'b/p'],
    );
    wanted.run(3);
    expect([...(wanted.kept.get('b/p') ?? [])].slice(0, 3)).toEqual([1.25, 2.5, 5]);
    expect([...(wanted.kept.get('b/f') ?? [])].slice(0, 3)).toEqual([1.3, 2.5, 5]);
  });

  it('rows that vary apart are worked out apart', () => {
    expect(runOf(s => op.total(s.hours), { 't/a/hours': [1, 2, 3], 't/c/hours': [10, 20, 30] })).toEqual([
      11, 22, 33,
    ]);
    expect(runOf(s => op.total(s.twice), { 't/a/hours': [1, 2, 3] })).toEqual([15, 16, 17]);
    expect(runOf(s => op.total(s.twice), { 'b/x': [1, 2, 3] })).toEqual([8, 12, 16]);
  });

  it('what is kept is told whether it varies, and stands where it does not', () => {
    const plan = planOf(s => op.sum(s.x, s.y), { 'b/x': [1, 2, 3] }, ['b/f', 'b/y', 'b/x']);
    plan.run(3);
    expect([...plan.varies].sort()).toEqual(['b/f', 'b/x']);
    expect([...(plan.kept.get('b/y') ?? [])]).toEqual([5, 5, 5, 5]);
    expect([...(plan.kept.get('b/x') ?? [])].slice(0, 3)).toEqual([1, 2, 3]);
    expect(plan.liveSteps).toBe(1);
  });

  it('what nobody wants is not worked out', () => {
    const plan = planOf(s => op.sum(s.x, s.y), { 'b/x': [1] }, []);
    expect([plan.liveSteps, plan.bytes, plan.kept.size, plan.varies.size]).toEqual([0, 0, 0, 0]);
  });

  it('arrays are lent again to later steps', () => {
    const chain = (s: ReturnType<typeof stage>) => {
      let step = op.sum(s.x, s.y);
      for (let i = 0; i < 8; i++) step = op.sum(step, s.y);
      return step;
    };
    const plan = planOf(chain, { 'b/x': [1, 2, 3] });
    plan.run(3);
    expect([...(plan.kept.get('b/f') ?? [])].slice(0, 3)).toEqual([46, 47, 48]);
    expect(plan.liveSteps).toBe(9);
    expect(plan.bytes).toBe(2 * BATCH * Float64Array.BYTES_PER_ELEMENT);
  });

  it('absent trials stay absent, and make absent what depends on them', () => {
    expect(runOf(s => op.sum(s.x, s.y), { 'b/x': [1, NaN, 3] })).toEqual([6, NaN, 8]);
    expect(runOf(s => op.scaled(s.x, s.zero), { 'b/x': [1, NaN, 3] })).toEqual([0, NaN, 0]);
    expect(runOf(s => op.scaled(s.zero, s.x, s.y), { 'b/x': [1, NaN, 3] })).toEqual([0, NaN, 0]);
    expect(runOf(s => op.quoted(s.x, s.y), { 'b/x': [1, NaN, 3] })).toEqual([1, 5, 3]);
    expect(runOf(s => op.sum(s.x, s.gone), { 'b/x': [1, 2, 3] })).toEqual([NaN, NaN, NaN]);
    expect(runOf(s => op.scaled(s.x, s.zero, s.gone), { 'b/x': [1, 2, 3] })).toEqual([NaN, NaN, NaN]);
    expect(runOf(s => op.when(s.gone, s.x, s.y), { 'b/x': [1, 2, 3] })).toEqual([NaN, NaN, NaN]);
  });
});

describe('a constant in place of the exact value', () => {
  const constantPlan = (constants: Record<string, number>, vary: Record<string, readonly number[]> = {}) => {
    const s = stage();
    const doubled = s.b.place('d', 'D', op.sum(s.y, s.y));
    s.b.place('f', 'F', op.scaled(op.sum(doubled, s.x), s.one));
    const inputs = new Map(
      Object.entries(vary).map(([id, values]) => [
        id,
        Float64Array.from({ length: BATCH }, (_, i) => values[i] ?? NaN),
      ]),
    );
    const plan = columns(evaluateSheet(s.sheet), {
      inputs,
      constants: new Map(Object.entries(constants)),
      keep: ['b/f', 'b/d'],
      batch: BATCH,
    });
    plan.run(2);
    return ['b/f', 'b/d'].map(id => [...(plan.kept.get(id) ?? [])].slice(0, 2));
  };
  it('is carried through all that rests on it', () => {
    expect(constantPlan({})).toEqual([
      [13, 13],
      [10, 10],
    ]);
    expect(constantPlan({ 'b/y': 7 })).toEqual([
      [17, 17],
      [14, 14],
    ]);
    expect(constantPlan({ 'b/y': 7 }, { 'b/x': [1, 2] })).toEqual([
      [15, 16],
      [14, 14],
    ]);
    expect(constantPlan({ 'b/one': 2 }, { 'b/x': [1, 2] })).toEqual([
      [22, 24],
      [10, 10],
    ]);
  });
});

describe('columns are refused', () => {
  it.each<[string, () => unknown]>([
    [
      'b/x has fewer values than a batch',
      () =>
        columns(evaluateSheet(stage().sheet), {
          inputs: new Map([['b/x', new Float64Array(3)]]),
          keep: [],
          batch: 4,
        }),
    ],
    [
      'b/nowhere is not a given of the sheet: it cannot vary',
      () => planOf(s => op.sum(s.x), { 'b/nowhere': [1] }),
    ],
    [
      't/a/twice is not a given of the sheet: it cannot vary',
      () => planOf(s => op.sum(s.x), { 't/a/twice': [1] }),
    ],
    ['there is no figure b/none', () => planOf(s => op.sum(s.x), {}, ['b/none'])],
    [`${BATCH + 1} trials do not fit a batch of ${BATCH}`, () => planOf(s => op.sum(s.x), {}).run(BATCH + 1)],
  ])('%s', (words, act) => expect(act).toThrow(words));
});
