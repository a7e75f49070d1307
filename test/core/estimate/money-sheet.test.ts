import { describe, expect, it } from 'vitest';
import { monthsFrom } from '../../../core/estimate';
import { figure, indices, item, priced, small } from './small';

const given = (value: string) => ({ value, unit: '1', basis: 'published', source: 'A test' }) as const;
const overrides = (at: string, value: string, unit: string) => new Map([[at, figure(value, unit)]]);
const hire = (equipment: string, count: string, by: string) => ({
  equipment,
  count: figure(count, '1'),
  by,
});

/** 100 hours of the gang, two cranes, and 3, 4 and 1 dollars for each of 200 m², the latter two with a fixed part. */
const full = {
  ...{ hoursPerUnit: figure('0.5', 'h/m2'), crew: 'gang', equipment: [hire('crane', '2', 'work-day')] },
  ...{ materialPerUnit: figure('3', 'USD/m2'), subcontractPerUnit: figure('4', 'USD/m2') },
  ...{ subcontractFixed: figure('50', 'USD'), feePerUnit: figure('1', 'USD/m2') },
  feeFixed: figure('25', 'USD'),
};
const ELEMENTS = ['labour', 'equipment', 'material', 'disposal', 'subcontract', 'fee', 'direct'] as const;

describe('the rate of a crew', () => {
  // A hand: 20 × (1 + 0.5) + 3 = 33; a diver: 40 × (1 + 0.5 + 0.1) + 3 = 67; three and one: 166 ÷ 4 = 41.50.
  const rate = (crew: string, change = {}) => {
    const { money } = priced([item('scrape')], { input: small(change) });
    return money.result.number(money.crewRates.columns.rate, crew);
  };

  it('is the mean of its people, each with burdens, longshore premium, tools and gear', () => {
    expect(rate('gang')).toBe(41.5);
  });

  it('of public staff is the wage with their burden alone, without tools, gear and overtime', () => {
    // 20 × 1.25.
    expect([rate('staff'), rate('staff', { overtimeShare: given('0.2') })]).toEqual([25, 25]);
  });

  it('grows by the premium on the share of hours at overtime', () => {
    // 1 + 0.5 × 0.2 = 1.1: a hand 20 × 1.6 + 3 = 35, a diver 40 × 1.7 + 3 = 71; 176 ÷ 4.
    expect(rate('gang', { overtimeShare: given('0.2') })).toBe(44);
  });

  it('follows a wage and a burden that were set', () => {
    // A hand at 30: 48; (3 × 48 + 67) ÷ 4 = 52.75. Fringe of 0.6: 35 and 71; 44.
    expect(rate('gang', { overrides: overrides('trades/hand/wage', '30', 'USD/h') })).toBe(52.75);
    expect(rate('gang', { overrides: overrides('burdens/fringeAndPayroll', '0.6', '1') })).toBe(44);
    expect(rate('gang', { overrides: overrides('burdens/smallTools', '5', 'USD/h') })).toBe(45.5);
  });
});

describe('a line', () => {
  it('has each element once: labour, equipment and subcontract at the location, material and fee not', () => {
    // 100 h × 41.50 × 1.1; (2 × 10 × 100 + 500) × 1.1; 200 × 3; (200 × 4 + 50) × 1.1; 200 × 1 + 25.
    const { line } = priced([item('scrape', full)]);
    expect(ELEMENTS.map(element => line('scrape', element))).toEqual([4565, 2750, 600, 0, 935, 225, 9075]);
  });

  it('of contract work bears overhead, profit on that too, and bond on the price with the bond itself', () => {
    // 9 075 × 0.1 = 907.50; 9 982.50 × 0.05 = 499.13; 10 481.63 ÷ 0.98 = 10 695.54, of it 0.02 = 213.91.
    const { line, sum, stage } = priced([item('scrape', full), item('desk', { ...full, contract: false })]);
    expect([line('scrape', 'markUp'), line('scrape', 'total')]).toEqual([1620.54, 10695.54]);
    // The owner's own work bears nothing; the crane has been brought already: 2 × 10 × 100 × 1.1 = 2 200.
    expect([line('desk', 'markUp'), line('desk', 'total')]).toEqual([0, 8525]);
    // 10 695.54 + 8 525, and a tenth of it on top.
    expect(sum('total')).toBe(19220.54);
    expect([sum('contingency'), sum('budget')]).toEqual([1922.05, 21142.59]);
    expect([sum('direct'), sum('contractCost'), sum('ownerCost')]).toEqual([17600, 9075, 8525]);
    // What is known so far leaves bond and tax out: 19 220.54 − 213.91.
    expect([sum('markUps'), sum('knownSoFar')]).toEqual([1620.54, 19006.63]);
    expect([stage('clean-up'), stage('tow')]).toEqual([19220.54, 0]);
  });

  it('without an amount leaves what is known of the others, and the own lines of the owner whole', () => {
    const absent = { ...full, feePerUnit: undefined, materialPerUnit: figure('3', 'USD/t') };
    const lines = [item('scrape', absent), item('second', full), item('desk', { ...full, contract: false })];
    const { money, line, sum } = priced(lines);
    expect(money.result.money(money.sums.total)).toBeUndefined();
    // The crane was brought by the first line: 8 525 of the second, 852.50, (9 377.50 × 0.05 =) 468.88; 8 525 of the owner.
    expect(sum('knownSoFar')).toBe(18371.38);
    expect([line('desk', 'total'), line('second', 'direct')]).toEqual([8525, 8525]);
    expect(line('second', 'total')).toBeUndefined();
  });

  it('shares bond over contract lines to the cent, in their order', () => {
    // Three lines of 100 with 10 and 5.50 on them: 346.50 ÷ 0.98 = 353.57, of it 7.07, a third of it 2.357:
    // rounded through each line 2.36, 4.71, 7.07.
    const ids = ['one', 'two', 'three'];
    const { line } = priced(ids.map(id => item(id, { feeFixed: figure('100', 'USD') })));
    expect(ids.map(id => line(id, 'markUp'))).toEqual([17.86, 17.85, 17.86]);
  });

  it('that a quote covers by a part keeps the rest of each element, and has the amount in subcontract', () => {
    const quote = { covered: '0.4', amount: '1000', source: 'A yard', place: '/quotes/0' };
    const { line, money } = priced([item('scrape', full)], { quotes: { scrape: quote } });
    // 0.6 of each; 935 × 0.6 + 1 000; what was worked out stays 9 075.
    expect(ELEMENTS.map(element => line('scrape', element))).toEqual([2739, 1650, 360, 0, 1561, 135, 6445]);
    expect(money.result.number(money.lines.columns.computed, 'scrape')).toBe(9075);
  });

  it('follows prices that were set for it, and a location', () => {
    const at = (where: string, value: string, unit: string) =>
      priced([item('scrape', full)], { input: small({ overrides: overrides(where, value, unit) }) }).line;
    expect(at('work/clean-up/scrape/materialPerUnit', '5', 'USD/m2')('scrape', 'material')).toBe(1000);
    expect(at('work/clean-up/scrape/feeFixed', '30', 'USD')('scrape', 'fee')).toBe(230);
    expect(at('locationFactor', '1', '1')('scrape', 'labour')).toBe(4150);
    expect(at('markUps/overhead/share', '0.2', '1')('scrape', 'markUp')).toBeCloseTo(
      // 1 815 + 544.50 = 2 359.50; 11 434.50 ÷ 0.98 × 0.02 = 233.36.
      2592.86,
      2,
    );
  });

  it('lasts as long as its span: quantity, hours and what is hired by the day are for all of it', () => {
    // 2 a day for 30 days; 4 h a day: 120 h × 25 × 1.1; a crane for 30 days.
    const span = { from: ['clean-up'], to: ['clean-up'], unit: 'day' };
    const watch = item('watch', {
      ...{ span, factor: figure('0.01', '1'), hoursPerUnit: figure('2', 'h/day'), crew: 'staff' },
      ...{ equipment: [hire('crane', '1', 'work-day')], materialPerUnit: figure('7', 'USD/day') },
    });
    const timing = { watch: { span: '30', months: '0', days: '30' } };
    const { line, money } = priced([watch], { timing });
    expect(money.result.number(money.lines.columns.quantity, 'watch')).toBe(60);
    expect(money.result.number(money.lines.columns.hours, 'watch')).toBe(120);
    expect([line('watch', 'labour'), line('watch', 'equipment'), line('watch', 'material')]).toEqual([
      3300, 3850, 420,
    ]);
    // How long it lasts is not known: it has no money, and nothing stands in for it.
    expect(priced([watch]).line('watch', 'total')).toBeUndefined();
    expect(priced([watch]).sum('total')).toBeUndefined();
  });
});

describe('equipment', () => {
  it('is hired by the day, the hour, the quantity or once, and brought by its first hire alone', () => {
    const hired = [hire('crane', '3', 'work-day'), hire('pump', '3', 'hour'), hire('blade', '3', 'unit')];
    const scrape = { ...full, equipment: hired };
    const { line } = priced([
      item('scrape', scrape),
      item('lift', { equipment: [hire('crane', '1', 'lump')] }),
    ]);
    // 3 × 10 × 100 + 500; 3 × 100 h × 10; 3 × 200 × 2: 7 700 × 1.1. Once: 100 × 1.1.
    expect([line('scrape', 'equipment'), line('lift', 'equipment')]).toEqual([8470, 110]);
  });
});

describe('scrap', () => {
  // 50 t × (200 × 0.8 − 40) = 6 000.
  const cut = item('cut', { ...full, scrap: { grade: 'steel', perUnit: figure('0.25', 't/m2') } });
  const of = (keeper: string) => {
    const input = small();
    const { line, sum } = priced([cut], {
      input: { ...input, options: { ...input.options, 'scrap-keeper': keeper } },
    });
    return [line('cut', 'disposal'), line('cut', 'direct'), sum('scrapCredit'), sum('scrapIncome')];
  };

  it('that the contractor keeps makes its line cheaper, and that the owner receives is no part of the estimate', () => {
    expect(of('contractor')).toEqual([-6000, 3075, 6000, 0]);
    expect(of('owner')).toEqual([0, 9075, 0, 6000]);
  });

  it('follows a market and a freight that were set', () => {
    // 50 t × (300 × 0.8 − 40) = 10 000; 50 t × (200 × 0.8 − 60) = 5 000.
    const at = (where: string) => {
      const input = small({
        overrides: overrides(`scrap/steel/${where}`, where === 'price' ? '300' : '60', 'USD/t'),
      });
      return priced([cut], { input }).sum('scrapCredit');
    };
    expect([at('price'), at('freightAndProcessing')]).toEqual([10000, 5000]);
  });
});

describe('the level of prices', () => {
  const fee = (year: number | undefined, change: object) => {
    const more = year === undefined ? { year: undefined } : { year };
    const { line } = priced([item('permit', { feeFixed: figure('1000', 'USD', more) })], {
      input: small(change),
    });
    return line('permit', 'fee');
  };
  const on = (priceDate: string) => ({ prices: { priceDate } });
  const published = (months: number) => {
    const { library } = small();
    return { library: { ...library, indices: indices(months) } };
  };

  it('brings a price from its year to the year of the price date by the index', () => {
    // 110 ÷ 100 and back; one without a year is of the year of the rate book.
    const held = { prices: { priceDate: '2029-01-15', fixedYear: 2025 } };
    expect([fee(2024, held), fee(2025, held), fee(undefined, held)]).toEqual([1100, 1000, 1000]);
    expect([fee(2024, on('2024-03-15')), fee(2025, on('2024-03-15'))]).toEqual([1000, 909.09]);
    // Years after the last of the index are taken at its last.
    expect(fee(2026, held)).toBe(1000);
  });

  it('past the middle of the months that are published grows by the yearly rate of other prices', () => {
    // December 2026 is 12 + 12 − 6.5 = 17.5 months on: 1.05^(17.5 ÷ 12) = 1.07374. In June 2025 nothing has grown.
    expect(fee(2025, on('2026-12-15'))).toBeCloseTo(1073.74, 2);
    expect(fee(2025, on('2025-06-15'))).toBe(1000);
    // Of six months published the middle is 3.5: June is 2.5 months on, 1.05^(2.5 ÷ 12) = 1.01022.
    expect(fee(2025, { ...on('2025-06-15'), ...published(6) })).toBeCloseTo(1010.22, 1);
  });

  it('counts months from the price date to the day of spending, none where prices are held', () => {
    expect(monthsFrom({ priceDate: '2025-07-15' }, '2027-02-01')).toBe(19);
    expect(monthsFrom({ priceDate: '2025-07-15', fixedYear: 2025 }, '2027-02-01')).toBe(0);
  });

  it('from there each class of prices escalates by its own rate for the months until it is spent', () => {
    // 24 months: 1.04² = 1.0816 on labour, 1.05² = 1.1025 on the rest; fuel 1.1² = 1.21.
    const timing = { scrape: { months: '24', days: '10' } };
    const { line } = priced([item('scrape', full)], { timing });
    expect(ELEMENTS.map(element => line('scrape', element))).toEqual([
      4937.5, 3031.88, 661.5, 0, 1030.84, 248.06, 9909.78,
    ]);
    const pumped = item('scrape', { ...full, equipment: [hire('pump', '1', 'hour')] });
    expect(priced([pumped], { timing }).line('scrape', 'equipment')).toBe(1331);
  });
});
