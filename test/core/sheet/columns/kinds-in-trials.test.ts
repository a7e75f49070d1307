import { describe, expect, it } from 'vitest';
import * as op from '../../../../core/sheet';
import { Sheet, columns, evaluateSheet, type SheetUnit, type Step } from '../../../../core/sheet';
import { give } from '../example';

/** Six trials of each given: plain, at ties, below nothing, nothing, absent, large. */
const TRIALS: Readonly<Record<string, readonly (string | undefined)[]>> = {
  'b/a': ['12.345', '0.125', '-7.5', '0', undefined, '99999.5'],
  'b/c': ['3', '0.125', '2', '5', '4', '0.333'],
  'b/p': ['0.25', '1', '0.5', '1.5', '0', undefined],
  'b/q': ['0.5', '1', '0.75', '2', '1', '0.9'],
  'b/flag': ['1', '0', '1', undefined, '0', '2'],
  'b/month': ['1', '2', '3', '4', '5', '2.04'],
  'b/boxes': ['0', '5', '7', '10', '11', '-1'],
  'r/x/part': ['1', '2', undefined, '4', '5', '6'],
  'r/y/part': ['10', '20', '30', '40', undefined, '60'],
  'r/x/when': ['1', '2', '3', undefined, '1', '4'],
};
const COUNT = 6;
type Values = (id: string) => string | undefined;

function stage(valueOf: Values) {
  const sheet = new Sheet('s');
  const b = sheet.block('b', 'B');
  const given = <U extends '1' | 'USD' | 'month' | 'each'>(id: string, unit: U) => {
    const value = valueOf(`b/${id}`);
    return b.given(id, id, unit, value === undefined ? undefined : give(value, unit));
  };
  const entry = (key: string, value: string) => ({ key, title: key, given: give(value, '1') });
  const byMonth = sheet.lookUpTable('m', {
    title: 'M',
    keyUnit: 'month',
    unit: '1',
    entries: [entry('1', '1.1'), entry('2', '1.2'), entry('3', '1.3')],
  });
  const gaps = sheet.lookUpTable('g', {
    title: 'G',
    keyUnit: 'month',
    unit: '1',
    entries: [entry('1', '7'), entry('3', '8'), entry('4', '9')],
  });
  const tariff = sheet.lookUpTable('f', {
    title: 'F',
    keyUnit: 'each',
    unit: '1',
    entries: [entry('0', '3'), entry('5', '4'), entry('10', '5')],
  });
  const rows = { heading: 'R', of: ['x', 'y'], key: (r: string) => r, title: (r: string) => r };
  const { columns: lines } = sheet.table('r', rows, t => {
    const cell = (r: string, key: string, fallback: string) =>
      `r/${r}/${key}` in TRIALS ? valueOf(`r/${r}/${key}`) : fallback;
    const part = t.field('part', 'Part', '1', r => give(cell(r, 'part', '1'), '1'));
    const when = t.field('when', 'When', 'month', r => give(cell(r, 'when', '2'), 'month'));
    return {
      part,
      when,
      sofar: t.place('sofar', 'So far', op.runningThrough(part)),
      before: t.place('before', 'Before', op.runningBefore(part)),
    };
  });
  return {
    ...{ sheet, b, byMonth, gaps, tariff, ...lines },
    ...{
      a: given('a', 'USD'),
      c: given('c', 'USD'),
      p: given('p', '1'),
      q: given('q', '1'),
      flag: given('flag', '1'),
    },
    ...{ month: given('month', 'month'), boxes: given('boxes', 'each') },
  };
}

type Make = (s: ReturnType<typeof stage>) => Step<SheetUnit>;
const FORMS: Readonly<Record<string, Make>> = {
  sum: s => op.sum(s.a, s.c, s.a),
  difference: s => op.difference(s.a, s.c),
  'a difference from a constant': s => op.difference(op.unity('USD'), s.c),
  product: s => op.scaled(s.a, s.p, s.q),
  quotient: s => op.over(s.a, s.p),
  'a quotient by a constant': s => op.over(s.a, op.sum(op.unity('1'), op.unity('1'))),
  'a quotient by nothing': s => op.over(s.a, op.none('1')),
  'a quotient of a constant': s => op.over(op.unity('USD'), s.p),
  power: s => op.power(s.q, s.p),
  'a power of a constant': s => op.power(op.sum(op.unity('1'), op.unity('1')), s.p),
  'a power to a constant': s => op.power(s.q, op.unity('1')),
  rounded: s => op.rounded(s.a, 1),
  dollars: s => op.dollars(op.scaled(s.a, s.q)),
  'whole up': s => op.wholeUp(op.over(s.a, s.q), 6),
  'at least': s => op.atLeast(s.a, s.c, 2),
  'at least a constant': s => op.atLeast(s.a, op.unity('USD'), 2),
  minimum: s => op.minimum(s.a, s.c, op.unity('USD')),
  maximum: s => op.maximum(s.a, s.c, op.unity('USD')),
  when: s => op.when(s.flag, s.a, s.c),
  quoted: s => op.quoted(s.a, s.c),
  'a quote before a sum': s => op.quoted(s.a, op.sum(s.c, s.c)),
  'three quotes': s => op.quoted(s.a, s.a, s.c),
  'grossed up': s => op.grossedUp(s.c, s.p, 2),
  share: s => op.share(s.a, s.p, s.q, 3),
  total: s => op.total(s.part),
  'known so far': s => op.knownSoFar(s.part),
  'count of known': s => op.countKnown(s.part),
  'a running total': s => op.total(s.sofar),
  'a running total before': s => op.total(s.before),
  'a look-up by consecutive keys': s => op.lookUp(s.byMonth, s.month, 0, 'absent'),
  'a look-up that holds the last': s => op.lookUp(s.byMonth, s.month, 0, 'hold the last'),
  'a look-up by keys with gaps': s => op.lookUp(s.gaps, s.month, 0, 'absent'),
  'a look-up with gaps that holds the last': s => op.lookUp(s.gaps, s.month, 0, 'hold the last'),
  'a look-up to a decimal': s => op.lookUp(s.byMonth, s.month, 1, 'absent'),
  'a step look-up': s => op.stepLookUp(s.tariff, s.boxes, 0, 'absent'),
  'a step look-up that holds the last': s => op.stepLookUp(s.tariff, s.boxes, 0, 'hold the last'),
};

/** A step placed by itself, or in a table where it needs one. */
function place(s: ReturnType<typeof stage>, make: Make): string {
  s.b.place('z', 'Z', make(s));
  return 'b/z';
}

/** All trials of a step in columns. */
function inColumns(make: (s: ReturnType<typeof stage>) => string): number[] {
  const s = stage(id => TRIALS[id]?.[0]);
  const id = make(s);
  const inputs = new Map(
    Object.entries(TRIALS).map(([key, values]) => [
      key,
      Float64Array.from(values, value => (value === undefined ? NaN : Number(value))),
    ]),
  );
  const plan = columns(evaluateSheet(s.sheet), { inputs, keep: [id], batch: COUNT });
  plan.run(COUNT);
  return [...(plan.kept.get(id) ?? [])];
}

/** The same, each trial by an exact evaluation of its own. */
function exactly(make: (s: ReturnType<typeof stage>) => string): number[] {
  return Array.from({ length: COUNT }, (_, trial) => {
    const s = stage(id => TRIALS[id]?.[trial]);
    const id = make(s);
    return evaluateSheet(s.sheet).figure(id).number ?? NaN;
  });
}

const near = (values: readonly number[]) => values.map(value => Number(value.toPrecision(12)) + 0);

describe('a step over trials gives what the exact evaluation gives of each', () => {
  it.each(Object.entries(FORMS))('%s', (_name, make) => {
    const placed = (s: ReturnType<typeof stage>) => place(s, make);
    expect(near(inColumns(placed))).toEqual(near(exactly(placed)));
  });
  it.each([
    ['a total by months', (s: ReturnType<typeof stage>) => s.part],
    ['a total by months of a running total', (s: ReturnType<typeof stage>) => s.sofar],
  ])('%s', (_name, column) => {
    const placed = (s: ReturnType<typeof stage>) => {
      const rows = { heading: 'M', of: ['m1', 'm2'], key: (r: string) => r, title: (r: string) => r };
      s.sheet.table('w', rows, t => {
        const month = t.field('month', 'Month', 'month', r => give(r.slice(1), 'month'));
        return t.place('spent', 'Spent', op.totalWhere(column(s), s.when, month));
      });
      return 'w/m2/spent';
    };
    expect(near(inColumns(placed))).toEqual(near(exactly(placed)));
  });
  it('knows absent trials from present ones, or the comparison would say nothing', () => {
    const all = Object.values(FORMS).flatMap(make => exactly(s => place(s, make)));
    expect(all.filter(Number.isNaN).length).toBeGreaterThan(20);
    expect(new Set(all).size).toBeGreaterThan(60);
  });
});
