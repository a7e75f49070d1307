import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { alternatives, benefitCase, readBenefitRules, type BenefitInput } from '../../../core/benefit';

const RULES = readBenefitRules(JSON.parse(readFileSync('templates/benefit.json', 'utf8')));
const INPUT: BenefitInput = {
  cost: 1_000_000_00,
  plateThickness: 8,
  uses: [
    {
      id: 'divers',
      title: 'Divers',
      visitsPerYear: { low: 100, likely: 200, high: 300 },
      valuePerVisit: { low: 10, likely: 20, high: 30 },
      basis: { basis: 'judgement', source: 'invented for the test' },
    },
  ],
  obligations: [],
  discountRate: 0,
  horizonYears: 50,
  firstBenefitYear: 1,
};

describe('a benefit case', () => {
  it('of no discount is visits times value times years, for each end', () => {
    const { life, discountRate, low, likely, high, findings } = benefitCase(INPUT, RULES);
    expect([life?.lowYears, discountRate, findings]).toEqual([20, 0, []]);
    expect(low).toMatchObject({ years: 20, benefitPerYear: 1_000_00, presentBenefit: 20_000_00 });
    expect(likely).toEqual({
      ...{ years: 50, benefitPerYear: 4_000_00, presentBenefit: 200_000_00, presentCost: 1_000_000_00 },
      ...{ annuity: 50, cost: 1_000_000_00, presentObligations: 0 },
      ...{ netPresentValue: -800_000_00, benefitCostRatio: 0.2, breakEvenVisits: 1000 },
    });
    expect(high).toMatchObject({ years: 50, presentBenefit: 450_000_00, breakEvenVisits: 667 });
  });
  it('goes no further than the plate lasts', () => {
    expect(benefitCase({ ...INPUT, horizonYears: 99 }, RULES).high?.years).toBe(67);
  });
  it('has no ratio without a cost and no break-even when a visit is worth nothing', () => {
    expect(benefitCase({ ...INPUT, cost: 0 }, RULES).likely).not.toHaveProperty('benefitCostRatio');
    const [use] = INPUT.uses;
    const free = use && { ...use, valuePerVisit: { low: 0, likely: 0, high: 0 } };
    expect(benefitCase({ ...INPUT, uses: free ? [free] : [] }, RULES).likely).not.toHaveProperty(
      'breakEvenVisits',
    );
  });

  const { cost: _cost, ...NO_COST } = INPUT;
  const { discountRate: _rate, ...NO_RATE } = INPUT;
  const { plateThickness: _plate, ...NO_PLATE } = INPUT;
  it.each<[string, BenefitInput, ...string[]]>([
    [
      'benefit/plate-missing',
      NO_PLATE,
      '/benefits/plateThickness',
      'no plate thickness is given',
      'service life and benefits are absent',
      'measure the plate (ultrasonic), or take it from the drawings',
    ],
    [
      'benefit/rate-missing',
      NO_RATE,
      '/benefits/discountRate',
      'no discount rate is given',
      'net present value, ratio and break-even visits are absent',
      'enter the rate your board uses, with its source',
    ],
    [
      'benefit/visits-missing',
      { ...INPUT, uses: [] },
      '/benefits/uses',
      'no visits and no value of a visit are given',
      'benefits are absent, which does not mean that there are none',
      'enter visits and value with their source, such as a travel cost study of your coast',
    ],
    [
      'benefit/cost-missing',
      NO_COST,
      '/benefits',
      'the cost is absent',
      'benefits cannot be compared with it',
      'clear the findings of the estimate',
    ],
  ])('%s leaves its figures absent and says so', (code, input, place, message, meaning, remedy) => {
    const made = benefitCase(input, RULES);
    expect(made.findings).toEqual([{ code, weight: 'notes', place, message, meaning, remedy }]);
    expect(made).not.toHaveProperty('likely');
    expect('life' in made).toBe(input.plateThickness !== undefined);
    expect('discountRate' in made).toBe(input.discountRate !== undefined);
  });
});

describe('what else could be done with the ship', () => {
  const figure = { value: '1000', unit: 'USD', basis: 'published' as const, source: 'Report', year: 2010 };
  const [first] = RULES.alternatives;
  const of = (change: object, factor: (year: number) => number | undefined = () => 2) =>
    alternatives({ ...RULES, alternatives: first ? [{ ...first, ...change }] : [] }, 500_000, factor)[0];

  it('is brought to the money of the estimate, with its range', () => {
    expect(of({ figure: { ...figure, low: '500', high: '1500' } })).toStrictEqual({
      ...{ id: first?.id, title: first?.title, priceYear: 2010, published: 100_000, today: 200_000 },
      ...{ estimateRatio: 2.5, low: 100_000, high: 300_000, ships: first?.ships, source: 'Report' },
    });
  });
  it('has no range where none is published', () => {
    expect(of({ figure })).not.toHaveProperty('low');
    expect(of({ figure })).not.toHaveProperty('high');
  });
  it('has no amount of today where the index does not reach, or no year is given', () => {
    expect(of({ figure }, () => undefined)).toStrictEqual({
      ...{ id: first?.id, title: first?.title, ships: first?.ships },
      ...{ priceYear: 2010, published: 100_000, source: 'Report' },
    });
    const { year: _year, ...undated } = figure;
    expect(of({ figure: undated })).not.toHaveProperty('priceYear');
    expect(of({ figure: undated })).not.toHaveProperty('today');
  });
  it('stands without a figure where nobody has published a cost', () => {
    expect(of({ figure: undefined, why: undefined })).toStrictEqual({
      ...{ id: first?.id, title: first?.title, source: 'no published cost' },
    });
    expect(of({ figure: undefined, why: 'asked, none known' })?.source).toBe('asked, none known');
  });
});
