import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  alternatives,
  annuityFactor,
  benefitCase,
  obligationsByMonth,
  obligationsByYear,
  corrosionOf,
  presentValueFactor,
  presentValueOfObligations,
  readBenefitRules,
  serviceLife,
  usualObligations,
  type BenefitInput,
  type Obligation,
} from '../../../core/benefit';
import { totalOfMonths } from '../../../core/cash-flow';

const RULES = readBenefitRules(JSON.parse(readFileSync('templates/benefit.json', 'utf8')));
const usd = (amount: number): number => Math.round(amount * 100);

describe('service life', () => {
  // thickness over 2 × 0.06 mm a year (Melchers 2021) and over 0.4 mm a year (Glover 2024)
  it.each([
    [8, 20, 67],
    [5, 13, 42],
  ])('plate of %d mm lasts a band of %d to %d years', (thickness, lowYears, highYears) => {
    expect(serviceLife(thickness, RULES)).toMatchObject({ lowYears, highYears, fastest: 0.4, slowest: 0.12 });
  });
  it('a rate that is not in the file is a fault', () => {
    expect(() => corrosionOf({ ...RULES, corrosion: [] }, 'slow')).toThrow('no corrosion rate');
  });
});

describe('discounting', () => {
  // compound interest table at 7 per cent: P/F(10) = 0.5083, P/A(10) = 7.024
  // (Newnan, Eschenbach, Lavelle, Engineering Economic Analysis, appendix)
  it('agrees with the compound interest tables', () => {
    expect(presentValueFactor(0.07, 10)).toBeCloseTo(0.5083, 4);
    expect(annuityFactor(0.07, 1, 10)).toBeCloseTo(7.024, 3);
    expect(annuityFactor(0, 3, 5)).toBe(3);
  });
});

const BUOY: Obligation = {
  id: 'buoy',
  title: 'Buoys',
  party: 'permit holder',
  costPerYear: usd(1000),
  firstYear: 1,
  years: 3,
  basis: { basis: 'judgement', source: 'invented for the test' },
};
const SURVEY: Obligation = { ...BUOY, id: 'survey', costPerYear: usd(500), firstYear: 2, years: 1 };

describe('obligations after the sinking', () => {
  it('fall in their years and months, and add up', () => {
    expect(obligationsByYear([BUOY, SURVEY]).map(one => one.amount)).toEqual([1000, 1500, 1000].map(usd));
    const months = obligationsByMonth([BUOY, SURVEY], '2027-12');
    expect([months[0]?.month, months.at(-1)?.month, months.length]).toEqual(['2028-01', '2030-12', 36]);
    expect(totalOfMonths(months)).toBe(usd(3500));
    expect(obligationsByYear([])).toEqual([]);
  });
  it('are worth less today the later they fall', () => {
    // 1000 / 1.1 + 1500 / 1.21 = 909.0909 + 1239.6694
    expect(presentValueOfObligations([BUOY, SURVEY], 0.1, 2)).toBe(usd(2148.76));
  });
  it('the usual ones name a party, a cost and a source', () => {
    const usual = usualObligations(RULES);
    expect(usual.map(one => one.party)).toEqual(['permit holder', 'permit holder', 'permit holder']);
    expect(usual[0]).toMatchObject({ costPerYear: usd(7500), basis: { basis: 'published', year: 2003 } });
  });
});

const INPUT: BenefitInput = {
  cost: usd(1_000_000),
  plateThickness: 8,
  uses: [
    {
      id: 'dive',
      title: 'Diving',
      visitsPerYear: { low: 500, likely: 1000, high: 2000 },
      valuePerVisit: { low: 50, likely: 100, high: 200 },
      basis: { basis: 'judgement', source: 'invented for the test' },
    },
  ],
  obligations: [],
  discountRate: 0.07,
  horizonYears: 30,
  firstBenefitYear: 1,
};

describe('the benefit case', () => {
  it('discounts benefit over the life, low case over its low end', () => {
    const result = benefitCase(INPUT, RULES);
    // P/A(7 per cent, 30) = 12.409 and P/A(7 per cent, 20) = 10.594, same tables
    expect(result.likely?.presentBenefit).toBe(Math.round(10_000_000 * annuityFactor(0.07, 1, 30)));
    expect((result.likely?.presentBenefit ?? 0) / 1e7).toBeCloseTo(12.409, 3);
    expect(result.likely?.benefitCostRatio).toBeCloseTo(1.2409, 4);
    expect((result.low?.presentBenefit ?? 0) / 2_500_000).toBeCloseTo(10.594, 3);
    expect(result.low?.years).toBe(20);
    expect(result.low?.netPresentValue).toBeLessThan(0);
    expect(result.findings).toEqual([]);
  });

  it('at the break-even visits the ratio is one', () => {
    const visits = benefitCase(INPUT, RULES).likely?.breakEvenVisits ?? 0;
    const at = { low: visits, likely: visits, high: visits };
    const uses = INPUT.uses.map(use => ({ ...use, visitsPerYear: at }));
    expect(benefitCase({ ...INPUT, uses }, RULES).likely?.benefitCostRatio).toBeCloseTo(1, 2);
    // 1,000,000 / (100 × 12.409) = 805.9
    expect(visits).toBe(806);
  });

  it('obligations raise the cost', () => {
    const with_ = benefitCase({ ...INPUT, obligations: [BUOY] }, RULES).likely?.presentCost ?? 0;
    expect(with_).toBe(usd(1_000_000) + presentValueOfObligations([BUOY], 0.07, 30));
  });

  it.each(['cost', 'plateThickness', 'discountRate'] as const)(
    'without %s its figures are absent, not zero',
    missing => {
      const { [missing]: _gone, ...rest } = INPUT;
      const result = benefitCase(rest, RULES);
      expect([result.low, result.likely, result.high]).toEqual([undefined, undefined, undefined]);
      expect(result.findings).toHaveLength(1);
      expect('likely' in result).toBe(false);
    },
  );

  it('without visits its figures are absent, but the life stands', () => {
    const result = benefitCase({ ...INPUT, uses: [] }, RULES);
    expect([result.likely, result.life?.highYears, result.findings[0]?.code]).toEqual([
      undefined,
      67,
      'benefit/visits-missing',
    ]);
  });

  it('a visit worth nothing has no break-even, and no cost has no ratio', () => {
    const zero = { low: 0, likely: 0, high: 0 };
    const uses = INPUT.uses.map(use => ({ ...use, valuePerVisit: zero }));
    const result = benefitCase({ ...INPUT, uses, cost: 0 }, RULES).likely;
    expect([result?.breakEvenVisits, result?.benefitCostRatio]).toEqual([undefined, undefined]);
  });
});

describe('alternatives', () => {
  // RAND MR-1377: 0.5, 1.9 and 4.9 billion for 358 ships
  it('are the published programme costs per ship', () => {
    const [reef, recycle, storage] = alternatives(RULES, usd(2_800_000), () => 2);
    expect([0.5e9, 1.9e9, 4.9e9].map(total => Math.round(total / 358 / 10_000) / 100)).toEqual([
      1.4, 5.31, 13.69,
    ]);
    expect([reef?.published, recycle?.published, storage?.published]).toEqual(
      [1.4, 5.31, 13.69].map(m => usd(m * 1e6)),
    );
    expect(reef).toMatchObject({
      today: usd(2_800_000),
      estimateRatio: 1,
      priceYear: 2000,
      low: usd(2_520_000),
    });
    expect(recycle).not.toHaveProperty('low');
  });
  it('doing nothing stands among them without a figure: nobody has published one', () => {
    const nothing = alternatives(RULES, usd(1), () => 2).find(one => one.id === 'do-nothing');
    expect(Object.keys(nothing ?? {})).toEqual(['id', 'title', 'source']);
  });
  it('are absent in the money of the estimate when the index does not reach', () => {
    expect(alternatives(RULES, 1, () => undefined)[0]).not.toHaveProperty('today');
  });
});
