import { describe, expect, it } from 'vitest';
import type { EstimateInput, GenerationPlan } from '../../../core/estimate';
import { figure, item, priced, small } from './small';

type Share = GenerationPlan['shares'][number];
type Month = GenerationPlan['months'][number];

/** 200 m² with so many tonnes of each stream for one. */
const wash = (sludge: string, debris = '0') =>
  item('wash', {
    wastes: [
      { stream: 'sludge', perUnit: figure(sludge, 't/m2') },
      { stream: 'debris', perUnit: figure(debris, 't/m2') },
    ],
  });
const HAULS = [item('haul-sludge', { disposes: 'sludge' }), item('haul-debris', { disposes: 'debris' })];

describe('a haul', () => {
  const of = (sludge: string, debris: string, change: Partial<EstimateInput> = {}, hauls = HAULS) => {
    const { line, money } = priced([wash(sludge, debris), ...hauls], { input: small(change) });
    const { result, disposals } = money;
    return {
      containers: result.numbers(disposals.columns.containers),
      cost: ['haul-sludge', 'haul-debris'].map(id => line(id, 'disposal')),
    };
  };

  it('pays the gate by the tonne, and each container with manifest, call-out and its road', () => {
    // A container: 100 + 200 + 5 + 10 000 m × 0.01 = 405. Debris, 22 t: 22 × 50 + 3 × 405 + 30 = 2 345.
    expect(of('0', '0.11').cost).toEqual([0, 2345]);
    // Of 20 t two containers are full to the brim: 20 × 50 + 2 × 405 + 30.
    expect(of('0', '0.1').cost).toEqual([0, 1840]);
  });

  it('fills its containers by weight or volume, whichever is first, and pays the minimum charge at least', () => {
    // Sludge, 21 t at 0.5 t/m³: 42 m³ in 8 m³ are six, not three by weight; 1 680 + 2 430 is below 5 000; and 30.
    expect(of('0.105', '0.01')).toEqual({ containers: [6, 1], cost: [5030, 535] });
    // 40 t: 3 200 + 10 × 405 + 30. A gate price of 100: 800 more.
    expect(of('0.2', '0').cost).toEqual([7280, 0]);
    const overrides = new Map([['streams/sludge/unitPrice', figure('100', 'USD/t')]]);
    expect(of('0.2', '0', { overrides }).cost).toEqual([8080, 0]);
  });

  it('of nothing costs nothing, not even its profile and minimum', () => {
    expect(of('0', '0').cost).toEqual([0, 0]);
  });

  it('goes by the prices of another stream where it is priced as that', () => {
    // 2 t of debris as sludge: below the minimum, 5 000 + 30.
    const priced = [
      item('haul-sludge', { disposes: 'sludge' }),
      item('haul-debris', { disposes: 'debris', pricedAs: 'sludge' }),
    ];
    expect(of('0', '0.01', {}, priced).cost).toEqual([0, 5030]);
    const unknown = [item('haul-debris', { disposes: 'debris', pricedAs: 'gravel' })];
    expect(() => of('0', '0.01', {}, unknown)).toThrow(/gravel/);
  });

  it('escalates by the rate of disposal', () => {
    // 24 months at 0.21: 2 345 × 1.4641.
    const timing = { 'haul-debris': { months: '24', days: '1' } };
    expect(priced([wash('0', '0.11'), ...HAULS], { timing }).line('haul-debris', 'disposal')).toBe(3433.31);
  });
});

describe('the generator category of a month', () => {
  const JANUARY: Month = { month: '2027-01', category: 'small', pickUps: 1, pickedUp: ['sludge'] };
  const FEBRUARY: Month = { month: '2027-02', category: 'large', pickUps: 3, pickedUp: ['sludge'] };
  const part = (share: number, more: Partial<Share> = {}): Share => ({
    ...{ item: 'wash', stream: 'sludge', month: '2027-01', share, counted: share, acute: false },
    ...more,
  });
  const planOf = (months: readonly Month[], shares: readonly Share[]): GenerationPlan => ({
    ...{ months, shares },
    limits: { verySmall: figure('100', 'kg'), large: figure('1', 't'), acute: figure('1', 'kg') },
    fees: {
      ...{ verySmall: figure('100', 'USD'), small: figure('1000', 'USD'), large: figure('3000', 'USD') },
      pickUp: figure('200', 'USD/each'),
    },
  });
  /** The month of ten tonnes of sludge of which a part is made in January. */
  const january = (...shares: readonly Share[]) => {
    const plan = planOf([JANUARY], shares);
    const { generation, result } = priced([wash('0.05', '0.01'), ...HAULS], { plan }).money;
    if (generation === undefined) throw new Error('a month of hazardous waste');
    const { counted, large, small, cost } = generation.months.columns;
    return [counted, large, small, cost].map(column => result.number(column, 'm2027-01'));
  };

  it('is small above the limit of a very small one, and large from the limit of a large one on', () => {
    // Of ten tonnes: 100 kg, 101 kg, 999 kg and 1 t; the duties of each and one pick-up of 200.
    expect(january(part(0.01))).toEqual([0.1, 0, 0, 300]);
    expect(january(part(0.0101))).toEqual([0.101, 0, 1, 1200]);
    expect(january(part(0.0999))).toEqual([0.999, 0, 1, 1200]);
    expect(january(part(0.1))).toEqual([1, 1, 1, 3200]);
  });

  it('goes by what counts, and by more than a kilogram of acute waste', () => {
    expect(january(part(0.5, { counted: 0.005 }))).toEqual([0.05, 0, 0, 300]);
    // 1 kg, and 1.1 kg: no part of what is ordinary.
    expect(january(part(0.0001, { acute: true }))).toEqual([0.001, 0, 0, 300]);
    expect(january(part(0.00011, { acute: true }))).toEqual([0.0011, 1, 0, 3200]);
    expect(january(part(0.05, { counted: 0 }), part(0.005, { stream: 'debris' }))).toEqual([0.01, 0, 0, 300]);
  });

  it('is paid by the hauls of its streams, by their tonnes of the month, and asks for a container each pick-up', () => {
    const shares = [part(0.04), part(0.96, { month: '2027-02' })];
    const { line, money } = priced([wash('0.05', '0.01'), ...HAULS], {
      plan: planOf([JANUARY, FEBRUARY], shares),
    });
    // Ten tonnes in four containers, not three: 800 + 1 620 is below 5 000. And 30, 1 000 + 200 and 3 000 + 600.
    expect(money.result.numbers(money.disposals.columns.containers)).toEqual([4, 1]);
    expect([line('haul-sludge', 'disposal'), line('haul-debris', 'disposal')]).toEqual([9830, 535]);
  });

  it('is shared by two streams as they fill it', () => {
    // One tonne of sludge and a third of a tonne of debris: three quarters and one of 3 200.
    const shares = [part(0.1), part(1 / 6, { stream: 'debris', counted: 0 })];
    const { line } = priced([wash('0.05', '0.01'), ...HAULS], { plan: planOf([JANUARY], shares) });
    expect([line('haul-sludge', 'disposal'), line('haul-debris', 'disposal')]).toEqual([7430, 1335]);
  });

  it('is no part of the estimate where nothing that counts is made', () => {
    const { money } = priced([wash('0.05'), ...HAULS], { plan: planOf([JANUARY], []) });
    expect(money.generation).toBeUndefined();
  });
});
