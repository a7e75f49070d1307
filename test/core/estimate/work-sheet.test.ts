import { describe, expect, it } from 'vitest';
import type { Adjustment, EstimateInput } from '../../../core/estimate';
import { drivers, figure, item, small, worked } from './small';

const withChange = (change: Adjustment, more: Partial<EstimateInput> = {}) =>
  small({ adjustments: new Map([[change.item, change]]), ...more });

describe('the quantity of an item', () => {
  const curve = {
    ...{ factor: figure('3', '1'), exponent: figure('2', '1'), reference: figure('100', 'm2') },
    fixed: figure('7.04', 'm2'),
  };

  it('is factor × reference × (driver ÷ reference)^exponent + fixed, to its decimals', () => {
    // 3 × 100 × (200 ÷ 100)² + 7.04 = 1 207.04.
    const { quantity } = worked([
      item('whole', curve),
      item('tenths', { ...curve, decimals: 1 }),
      item('hundredths', { ...curve, decimals: 2 }),
      item('plain'),
      item('coated', { driver: 'coats', decimals: 1 }),
    ]);
    expect(['whole', 'tenths', 'hundredths', 'plain', 'coated'].map(quantity)).toEqual([
      1207, 1207, 1207.04, 200, 22,
    ]);
  });

  it('is the planner’s where there is one, and absent where its unit does not measure the item', () => {
    const items = [item('paint')];
    const read = withChange({ item: 'paint', quantity: figure('12.5', 'm2') });
    const unread = withChange({ item: 'paint', quantity: figure('12.5', 'h') });
    expect([worked(items, read).quantity('paint'), worked(items, unread).quantity('paint')]).toEqual([
      12.5,
      undefined,
    ]);
  });

  it('is the tonnes of its stream where it hauls: what all items send there, each tonne for one × quantity', () => {
    // 200 × 0.05 + 22 × 0.5 = 21 t of sludge; 200 × 0.01 = 2 t of debris.
    const waste = (stream: string, perUnit: string, unit: string) => ({
      stream,
      perUnit: figure(perUnit, unit),
    });
    const { quantity, work } = worked([
      item('wash', { wastes: [waste('sludge', '0.05', 't/m2'), waste('debris', '0.01', 't/m2')] }),
      item('scrape', { driver: 'coats', wastes: [waste('sludge', '0.5', 't/m')] }),
      item('haul-sludge', { disposes: 'sludge' }),
      item('haul-debris', { disposes: 'debris' }),
    ]);
    expect(work.result.numbers(work.wastes.columns.tonnes)).toEqual([10, 2, 11]);
    expect([quantity('haul-sludge'), quantity('haul-debris')]).toEqual([21, 2]);
    expect(work.rows.map(({ own }) => own)).toEqual(['m2', 'm', 't', 't']);
  });

  it('yields scrap and takes weight off the ship, so much for one', () => {
    const { work } = worked([
      item('cut', {
        scrap: { grade: 'steel', perUnit: figure('0.25', 't/m2') },
        removes: { perUnit: figure('0.1', 't/m2'), heightOverDepth: figure('0.9', '1') },
      }),
      item('paint'),
    ]);
    const { result, scrap, removals } = work;
    expect(result.numbers(scrap.columns.tonnes)).toEqual([50]);
    expect(result.numbers(removals.columns.tonnes)).toEqual([20]);
    expect(result.numbers(removals.columns.height)).toEqual([0.9]);
  });

  it('scales from what was measured or from where the ship has a part of it', () => {
    // Deck measured: 300 m². A material that is there by half: 200 × 0.5 + 4 = 104 m².
    const [deck, coats] = drivers();
    if (deck === undefined || coats === undefined) throw new Error('two drivers');
    const { library } = small();
    const material = library.materials[0]?.id ?? '';
    const presence = { low: 0.25, likely: 0.5, high: 1, basis: 'surveyed', source: 'A test' } as const;
    const of = (input: EstimateInput) => worked([item('paint')], input).quantity('paint');
    const measured = new Map([
      ['deck', { value: '300', unit: '1', basis: 'surveyed', source: 'A test' } as const],
    ]);
    expect(of(small({ measured }))).toBe(300);
    const partly = [{ ...deck, material, fixed: figure('4', 'm2') }, coats];
    expect(
      of(small({ presence: new Map([[material, presence]]), library: { ...library, drivers: partly } })),
    ).toBe(104);
    expect(of(small({ presence: new Map(), library: { ...library, drivers: partly } }))).toBe(204);
  });
});

describe('hours and crews', () => {
  // 0.5 h/m² × 200 m² × 1.25 × 1.5 + 8 h = 195.5 h.
  const hard = {
    ...{ hoursPerUnit: figure('0.5', 'h/m2'), setupHours: figure('8', 'h'), crew: 'gang' },
    ...{ conditions: ['tight', 'hot'], hoursPerCrew: figure('80', 'h'), crewsAtOnce: figure('4', '1') },
  };
  const of = (more: object, input?: EstimateInput) => {
    const { hours, crews, days } = worked([item('scrape', { ...hard, ...more })], input);
    return [hours('scrape'), crews('scrape'), days('scrape')];
  };

  it('are hours for one under every condition of the item and those to set up, with a crew for each so many', () => {
    // 195.5 ÷ 80 = 2.4: three crews of four at eight hours are 96 hours a day: three days.
    expect(of({})).toEqual([195.5, 3, 3]);
    // Of two at most: 64 hours a day, four days. All four at once: 128 hours a day, two days.
    expect(of({ crewsAtOnce: figure('2', '1') })).toEqual([195.5, 2, 4]);
    expect(of({ hoursPerCrew: undefined })).toEqual([195.5, 4, 2]);
    // One condition: 0.5 × 200 × 1.25 + 8 = 133 h, two crews, three days. None: 108 h.
    expect(of({ conditions: ['tight'] })).toEqual([133, 2, 3]);
    expect(of({ conditions: [] })[0]).toBe(108);
    // Without a crew nobody is in anybody's way, and the hours are one person's: 195.5 ÷ 8 = 24.4 days.
    expect(of({ crew: undefined })).toEqual([195.5, 0, 25]);
    // At least one crew, also where there is nothing to do.
    expect(of({ hoursPerUnit: undefined, setupHours: undefined })).toEqual([0, 1, 0]);
  });

  it('with more crews than usual take longer by the loss of crowding, with fewer do not', () => {
    const planned = (crews: string) => of({}, withChange({ item: 'scrape', crews: figure(crews, '1') }));
    // Six for three: 1 + 0.2 × (6 ÷ 3 − 1) = 1.2; 195.5 × 1.2 = 234.6 h in 192 a day: two days.
    expect(planned('6')).toEqual([234.6, 6, 2]);
    // One: 195.5 h in 32 a day: seven days.
    expect(planned('1')).toEqual([195.5, 1, 7]);
  });

  it('follow the planner’s hours for one and crews at most', () => {
    // 1 × 200 × 1.875 + 8 = 383 h: five crews, of which there are at most four, or two.
    expect(of({}, withChange({ item: 'scrape', hoursPerUnit: figure('1', 'h/m2') })).slice(0, 2)).toEqual([
      383, 4,
    ]);
    expect(of({}, withChange({ item: 'scrape', crewsAtOnce: figure('2', '1') })).slice(0, 2)).toEqual([
      195.5, 2,
    ]);
  });

  it('grow under long shifts for work by the shift alone: not in the office, not by the day of a span', () => {
    const long = { value: '1.2', unit: '1', basis: 'published', source: 'A test' } as const;
    const first = (more: object) => of(more, small({ shiftFactor: long }))[0];
    const span = { from: ['clean-up'], to: ['clean-up'], unit: 'day' };
    // 195.5 × 1.2 = 234.6.
    expect(first({})).toBe(234.6);
    expect([first({ calendar: 'office' }), first({ crew: undefined })]).toEqual([195.5, 195.5]);
    expect(first({ span, hoursPerUnit: figure('0.5', 'h/day') })).toBe(195.5);
  });

  it('at a rate in a unit that does not measure the item are absent', () => {
    expect(of({ hoursPerUnit: figure('0.5', 'h/t') })).toEqual([undefined, undefined, undefined]);
  });
});

describe('the days of an item', () => {
  const gang = { hoursPerUnit: figure('0.5', 'h/m2'), crew: 'gang' };
  const of = (more: object, input?: EstimateInput) =>
    worked([item('wait', { ...gang, ...more })], input).days('wait');

  it('are its hours over people and shift, whole; a shift of ten hours takes fewer', () => {
    // 100 h ÷ (4 × 8) = 3.1; ÷ (4 × 10) = 2.5.
    expect(of({})).toBe(4);
    const ten = { value: '10', unit: 'h/work-day', basis: 'published', source: 'A test' } as const;
    expect(of({}, small({ shiftHours: ten }))).toBe(3);
  });

  it('are those given, or so many for one of a driver where that takes longer than the hours', () => {
    expect(of({ duration: figure('2', 'work-day') })).toBe(2);
    // 0.041 × 200 = 8.2; 0.011 × 200 = 2.2, less than the hours take.
    const perUnit = (value: string) => ({ driver: 'deck', perUnit: figure(value, 'work-day/m2') });
    expect(of({ duration: perUnit('0.041') })).toBe(9);
    expect(of({ duration: perUnit('0.011') })).toBe(4);
    const planner = withChange({ item: 'wait', duration: figure('30', 'day') });
    expect([of({}, planner), of({ duration: figure('2', 'work-day') }, planner)]).toEqual([30, 30]);
  });
});
