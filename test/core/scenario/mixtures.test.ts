import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import { differenceBridge, GROUP_TITLES } from '../../../core/scenario';
import { mixedTotal } from '../../../core/scenario/hybrid';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
/** The same project priced half a year later and with another profit: nothing but its prices differ. */
const dearer = {
  ...project,
  rates: {
    ...project.rates,
    priceDate: '2027-05-01',
    overrides: [
      {
        at: 'markUps/profit/share',
        figure: { value: '0.2', unit: '1', basis: 'judgement' as const, source: 'Tried in a test' },
      },
    ],
  },
};
const a = evaluated(project, 'fishing-reef');
const b = evaluated(project, 'diver-access-early');
const totalOf = (one: Evaluation) => {
  const { money } = estimated(one);
  return money.result.money(money.sums.total)?.cents;
};

describe('a mixture of two scenarios', () => {
  const parts = [estimated(a), estimated(evaluated(dearer, 'diver-access-early'))] as const;
  const [own, other] = parts;

  test('with the prices of the other is the estimate at those prices, to the cent', () => {
    expect(mixedTotal(parts, group => (group === 'price' ? other : own))).toBe(
      totalOf(evaluated(dearer, 'fishing-reef')),
    );
    expect(mixedTotal(parts, group => (group === 'price' ? own : other))).toBe(totalOf(b));
  });

  test('without a quote is priced by the rates alone', () => {
    const { quoted: _, ...unquoted } = own;
    const { quoted: __, ...base } = estimated(evaluated({ ...project, quotes: [] }, 'fishing-reef'));
    expect(mixedTotal([unquoted, unquoted], () => unquoted)).toBe(mixedTotal([base, base], () => base));
  });
});

describe('a bridge where a mixture says less', () => {
  const parts = estimated(a);
  /** The first scenario with other parts of its estimate. */
  const changed = (change: Partial<typeof parts>): Evaluation => ({
    ...a,
    scenario: { ...a.scenario, id: 'o' },
    estimate: { ...parts, ...change },
  });
  const priced = evaluated(dearer, 'fishing-reef');
  const { money } = estimated(priced);
  const difference = (totalOf(priced) ?? Number.NaN) - (totalOf(a) ?? Number.NaN);
  const all = [{ key: 'all', title: 'All differences', amount: { cents: difference } }];

  test('has one step for all where the totals differ and no group does', () => {
    const bridge = differenceBridge(a, changed({ money }));
    expect(bridge?.steps).toMatchObject(all);
    expect(bridge?.steps).toHaveLength(1);
  });

  test('has one step for all where a mixture has no total, and none where nothing separates them', () => {
    // A profit in metres cannot be read.
    const wrong = { value: '1', unit: 'm', basis: 'judgement', source: 'Tried in a test' } as const;
    const overrides = new Map([['markUps/profit/share', wrong]]);
    const input = { ...parts.input, presence: new Map(), overrides };
    expect(differenceBridge(a, changed({ input, money }))?.steps).toMatchObject(all);
    expect(differenceBridge(a, changed({ input }))?.steps).toEqual([]);
  });

  test('ends on the totals that are shown, whatever a mixture would come to', () => {
    const from = changed({ money });
    const bridge = differenceBridge(from, evaluated(dearer, 'diver-access'));
    expect(bridge?.steps.length).toBeGreaterThan(1);
    const sum = bridge?.steps.reduce((cents, { amount }) => cents + amount.cents, 0);
    expect(sum).toBe(bridge?.total.cents);
    expect(sum).toBe(
      (totalOf(evaluated(dearer, 'diver-access')) ?? Number.NaN) - (totalOf(priced) ?? Number.NaN),
    );
  });

  test('is none where one of the two has an estimate without money', () => {
    const { money: _, ...unpriced } = parts;
    const without: Evaluation = { ...a, estimate: unpriced };
    expect([differenceBridge(a, without), differenceBridge(without, a)]).toEqual([undefined, undefined]);
  });

  test('names the groups as a reader meets them', () => {
    const bridge = differenceBridge(a, evaluated(dearer, 'diver-access-early'));
    expect(bridge?.steps.map(({ key, title }) => [key, title])).toEqual(Object.entries(GROUP_TITLES));
    expect(Object.values(GROUP_TITLES)).toEqual([
      'Work that only one of them has',
      'Quantities, crews and ways of working',
      'How long things take and when',
      'Rates and price date',
    ]);
  });
});
