import { describe, expect, test } from 'vitest';
import { checkLines, sumCents, type Reconciliation } from '../../../core/cash-flow';
import {
  benefitView,
  bidLeaks,
  bidView,
  bookBasis,
  evaluate,
  fundingJson,
  grantView,
  lineQuantity,
  reviewRows,
  type Evaluation,
  type GrantView,
} from '../../../core/evaluation';
import { formTotal } from '../../../core/funding';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const OPTIONS = { today: '2026-11-24', seed: 1, schedules: 20, upright: false };

type Funding = NonNullable<Project['funding']>;

const DEMO = demoProject();
const SCENARIOS = DEMO.scenarios.map(scenario => evaluated(DEMO, scenario.id));
const [FIRST] = SCENARIOS;

function first(): Evaluation {
  if (FIRST === undefined) throw new Error('the demo has no scenario');
  return FIRST;
}

/** The same evaluation under another document: the estimate is not worked out anew, only the books are. */
function under(change: (project: Project) => Project): Evaluation {
  return { ...first(), project: change(first().project) };
}

function withFunding(change: (funding: Funding) => Funding): Evaluation {
  return under(project => ({ ...project, funding: change(fundingOf(project)) }));
}

function fundingOf({ funding }: Project): Funding {
  if (funding === undefined) throw new Error('the demo has no funding section');
  return funding;
}

function made(view: GrantView) {
  const { book, cash, input } = view;
  if (book === undefined || cash === undefined || input === undefined)
    throw new Error(JSON.stringify(view.findings.slice(0, 5)));
  return { book, cash, input };
}

function bidOf(evaluation: Evaluation) {
  const view = bidView(evaluation);
  const { schedule, sheet, internal } = view;
  if (!schedule || !sheet || !internal) throw new Error(JSON.stringify(view.findings.slice(0, 5)));
  return { view, schedule, sheet, internal };
}

const leftOver = ({ from, steps, to }: Reconciliation) =>
  from.amount + sumCents(steps.map(step => step.amount)) - to.amount;

describe('the workings of a line', () => {
  test('no quantity stands without saying what it is of', () => {
    const workings = (bookBasis(first()).basis?.lines ?? []).flatMap(line => line.workings ?? []);
    expect(workings.length).toBeGreaterThan(50);
    expect(workings.filter(words => /^[\d.,]+(, |$)/.test(words))).toEqual([]);
    expect(workings).toContainEqual(expect.stringMatching(/^size of the project against .*: [\d.]+ times/));
    expect(workings).toContainEqual(expect.stringMatching(/^[\d,]+ sq ft, [\d,.]+ h of work$/));
  });
});

describe('the quantity of a line', () => {
  // A metre is 1 / 0.3048 ft, so 600 m2 are 6,458.3 sq ft; a tonne is 0.98421 long tons; a gallon stays one.
  test.each([
    [600, 'm2', '6,458 sq ft'],
    [12, 't', '11.8 long tons'],
    [39_123, 'gal', '39,123 gal'],
    [5, 'year', '5 years'],
    [1, 'year', '1 year'],
    [7, 'month', '7 months'],
    [1.5, 'work-day', '1.5 work days'],
    [4, 'each', '4'],
    [0.977, '1', '0.977 times'],
  ])('of %s %s is told as %s', (quantity, unit, said) => {
    expect(lineQuantity(quantity, unit)).toBe(said);
  });

  test('stands in no narrative in square metres, in metres, or with a unit in its short form', () => {
    const view = grantView(first());
    const said = (view.book?.awards ?? []).flatMap(award => award.narrative.map(({ text }) => text));
    expect(said.length).toBeGreaterThan(50);
    const short = /: [\d,.]+ (m|m2|m3|t|kg|km|each|work-day)[,;]/;
    expect(said.filter(text => short.test(text))).toEqual([]);
    expect(said).toContainEqual(expect.stringMatching(/: [\d,]+ sq ft, [\d,.]+ h of work;/));
    expect(said).toContainEqual(expect.stringMatching(/: \d+ (years|months|work days)[,;]/));
  });
});

describe('the lines of the books', () => {
  test.each(SCENARIOS)(
    '$scenario.id: elements and months add up to the total of the estimate',
    evaluation => {
      const { basis, findings } = bookBasis(evaluation);
      expect(findings).toEqual([]);
      expect(checkLines(basis?.lines ?? [])).toEqual([]);
      expect(sumCents((basis?.lines ?? []).map(line => line.total))).toBe(basis?.summary.total?.cents);
    },
  );

  test('money is spent on the days the schedule has', () => {
    const { basis } = bookBasis(first());
    for (const { start, finish, id } of basis?.parts.schedule.activities ?? []) {
      const months = basis?.lines.find(line => line.id === id)?.months ?? [];
      expect(months.every(({ month }) => month >= start.slice(0, 7) && month <= finish.slice(0, 7))).toBe(
        true,
      );
    }
  });

  test('every line says where its figures come from', () => {
    const { basis } = bookBasis(first());
    const spent = (basis?.lines ?? []).filter(line => line.total !== 0);
    expect(spent.filter(line => line.source.length < 3 || line.source === 'the rate book')).toEqual([]);
  });

  test('no book is made while a line is absent', () => {
    const evaluation = evaluated({
      ...DEMO,
      rates: { ...DEMO.rates, wages: [] },
      vessel: { ...DEMO.vessel, length: { ...DEMO.vessel.length, unit: 't' } },
    });
    expect(grantView(evaluation).book).toBeUndefined();
    expect(bidView(evaluation).sheet).toBeUndefined();
    expect(grantView(evaluation).findings.some(finding => finding.weight === 'blocks')).toBe(true);
  });
});

describe('the grant budget of the demo', () => {
  test.each(SCENARIOS)('$scenario.id: every reconciliation closes to the cent', evaluation => {
    const { book, cash } = made(grantView(evaluation));
    expect(leftOver(book.reconciliation)).toBe(0);
    expect(leftOver(cash.cash.reconciliation)).toBe(0);
    const { schedule } = bidOf(evaluation);
    expect(leftOver(schedule.reconciliation)).toBe(0);
    expect(book.reconciliation.from.amount).toBe(estimatedTotal(evaluation));
    expect(schedule.reconciliation.from.amount).toBe(estimatedTotal(evaluation));
  });

  test.each(SCENARIOS)('$scenario.id: form, lines and narrative tie out row by row', evaluation => {
    const { book } = made(grantView(evaluation));
    const rows = book.awards.flatMap(award => award.tieOut);
    expect(rows.length).toBeGreaterThan(3);
    expect(rows.filter(row => row.formDifference !== 0 || row.narrativeDifference !== 0)).toEqual([]);
  });

  test('federal and match add up to the form, at 75 and 25 per cent', () => {
    const { book } = made(grantView(first()));
    const total = sumCents(book.awards.map(award => formTotal(award.form)));
    expect(book.federal + book.match).toBe(total);
    expect(book.federal).toBe(Math.round(total * 0.75));
  });

  test('cost after the award period is the money of the months after it, and no more', () => {
    const evaluation = withFunding(funding => ({
      ...funding,
      sources: funding.sources.map(source =>
        source.period ? { ...source, period: { start: '2027-01-01', finish: '2028-03-31' } } : source,
      ),
    }));
    const { book, input } = made(grantView(evaluation));
    const contract = input.lines.filter(line => line.contract);
    const after = sumCents(
      contract.flatMap(line =>
        line.months.flatMap(({ month, amount }) => (month > '2028-03' ? [amount] : [])),
      ),
    );
    const rows = book.awards.flatMap(award => award.rows).filter(row => row.kind === 'contract');
    expect(after).toBeGreaterThan(0);
    expect(sumCents(rows.map(row => row.after))).toBe(after);
    expect(leftOver(book.reconciliation)).toBe(0);
  });

  test('another start of the fiscal year, or a longer lag, moves the gap and no total', () => {
    const plain = made(grantView(first()));
    const moved = made(grantView(withFunding(funding => ({ ...funding, fiscalYearStart: 7 }))));
    const late = made(
      grantView(
        withFunding(funding => ({
          ...funding,
          sources: funding.sources.map(source =>
            source.mode === 'reimbursement' ? { ...source, lagMonths: 6 } : source,
          ),
        })),
      ),
    );
    const years = (view: typeof plain) => view.cash.fiscalYears.map(year => year.amount);
    expect(years(moved)).not.toEqual(years(plain));
    expect(sumCents(years(moved))).toBe(sumCents(years(plain)));
    expect(sumCents(years(plain))).toBe(plain.cash.cash.view.totalPaid);
    expect(late.cash.cash.view.peak?.amount).toBeGreaterThan(plain.cash.cash.view.peak?.amount ?? 0);
    for (const view of [moved, late]) {
      expect([view.book.federal, view.book.match]).toEqual([plain.book.federal, plain.book.match]);
      expect(view.cash.cash.view.totalPaid).toBe(plain.cash.cash.view.totalPaid);
      expect(view.cash.cash.view.totalReceived).toBe(plain.cash.cash.view.totalReceived);
    }
  });

  test('obligations after the sinking stand in the cash view and touch no grant total', () => {
    const plain = made(grantView(first()));
    const costly = made(
      grantView(
        under(project => ({
          ...project,
          benefits: {
            uses: [],
            horizonYears: 30,
            firstBenefitYear: 1,
            obligations: [
              {
                id: 'buoys',
                title: 'Buoys',
                party: 'permit holder',
                costPerYear: { value: '90000', unit: 'USD/year', basis: 'judgement', source: 'made up' },
                firstYear: 1,
                years: 10,
              },
            ],
          },
        })),
      ),
    );
    expect(sumCents(costly.cash.obligations.map(month => month.amount))).toBe(900_000_00);
    expect(plain.cash.obligations.length).toBeGreaterThan(0);
    expect(costly.book.federal).toBe(plain.book.federal);
    expect(costly.cash.cash.view.totalPaid).toBe(plain.cash.cash.view.totalPaid);
  });

  test('without a class of the big contract there is no budget, and the three results stand side by side', () => {
    const view = grantView(
      withFunding(funding => ({
        ...funding,
        contracts: funding.contracts.map(({ class: _class, ...contract }) => contract),
      })),
    );
    expect(view.book).toBeUndefined();
    expect(view.findings.map(finding => finding.code)).toContain('funding/contract-class');
    const results = view.contracts.find(contract => contract.contractId === 'preparation')?.results ?? [];
    expect(results.map(result => result.contractClass)).toEqual([
      'service procurement',
      'subaward',
      'capital',
    ]);
    // 2 CFR 200.1: a subaward is in the base up to 50,000, a service procurement whole, a capital cost not at all.
    expect((results[1]?.base ?? 0) - (results[2]?.base ?? 0)).toBeLessThanOrEqual(2 * 50_000_00);
  });

  test('rent, travel and the price of one piece come from the document to the form', () => {
    const owned =
      bookBasis(first()).basis?.lines.filter(line => !line.contract && line.inKind !== true) ?? [];
    const [rented, travelled] = owned.filter(line => line.total > 0);
    const bought = owned.find(line => line.amounts.material + line.amounts.equipment > 0);
    if (rented === undefined || travelled === undefined || bought === undefined)
      throw new Error('the demo has own cost');
    const kinds = (facts: Funding['lineFacts'], id: string) => {
      const evaluation = withFunding(funding => ({ ...funding, lineFacts: facts }));
      const { book } = made(grantView(evaluation));
      return book.awards.flatMap(award => award.rows.flatMap(row => (row.lineId === id ? [row.kind] : [])));
    };
    expect(kinds([{ item: rented.id, rent: true }], rented.id)).toEqual(['rent']);
    expect(kinds([{ item: travelled.id, travel: true }], travelled.id)).toEqual(['travel']);
    const price = (value: string) => ({
      value,
      unit: 'USD',
      basis: 'quoted' as const,
      source: 'made up for the test',
    });
    expect(kinds([{ item: bought.id, unitPrice: price('10000') }], bought.id)).toContain(
      'equipment-purchase',
    );
    expect(kinds([{ item: bought.id, unitPrice: price('9999.99') }], bought.id)).toContain('supply-purchase');
  });

  test('while the contingency waits for its simulation there is no budget, and the contracts are told all the same', () => {
    const contingency = { policy: 'confidence' as const, confidence: '0.8' };
    const view = grantView(evaluated({ ...DEMO, contingency }));
    expect([view.book, view.cash]).toEqual([undefined, undefined]);
    expect(view.findings).toContainEqual(
      expect.objectContaining({ code: 'funding/contingency-absent', place: '/contingency/confidence' }),
    );
    expect(view.contracts[0]?.results).toHaveLength(3);
    const simulated = { confidence: 0.8, amount: 1_000_000, planTotal: 5_000_000, trials: 100, seed: 1 };
    const set = evaluate({ ...DEMO, contingency }, { ...OPTIONS, simulated });
    const { input } = made(grantView(set));
    // A fifth of the plan, as that simulation has it.
    expect(input.contingency?.amount).toBe(Math.round(estimatedTotal(set) * 0.2));
  });

  test('without a funding section there is a finding with its remedy, and no figure', () => {
    const evaluation = under(({ funding: _funding, ...project }) => project);
    const json = fundingJson(evaluation, grantView(evaluation));
    expect(json).not.toHaveProperty('federal');
    expect(grantView(evaluation).findings).toMatchObject([
      { code: 'funding/section-missing', weight: 'blocks' },
    ]);
  });

  test('a date that does not exist or an amount in a wrong unit withholds the budget and leaves the estimate', () => {
    const faults: ((funding: Funding) => Funding)[] = [
      funding => ({ ...funding, awardDate: '2026-02-30' }),
      funding => ({
        ...funding,
        sources: funding.sources.map(source =>
          source.share ? { ...source, share: { ...source.share, unit: 'USD' } } : source,
        ),
      }),
      funding => ({ ...funding, notAllowable: [{ item: 'no-such-item', reason: 'made up' }] }),
    ];
    for (const fault of faults) {
      const evaluation = evaluated({ ...DEMO, funding: fault(fundingOf(DEMO)) });
      const view = grantView(evaluation);
      expect(view.book).toBeUndefined();
      expect(view.findings.some(finding => finding.place.startsWith('/funding/'))).toBe(true);
      expect(estimatedTotal(evaluation)).toBe(estimatedTotal(first()));
    }
  });

  test('the printed money has at most two decimals, and the forms are there by source', () => {
    const json = fundingJson(first(), grantView(first()));
    expect(Object.keys(json['forms'] as object)).toEqual(['sport-fish-grant']);
    const text = JSON.stringify({
      federal: json['federal'],
      cash: json['cash'],
      reconciliation: json['reconciliation'],
    });
    expect(text.match(/\d\.\d{3,}/g)).toBeNull();
  });
});

describe('who keeps the scrap', () => {
  const kept = (keeper: string) => {
    const evaluation = evaluated({ ...DEMO, options: { ...DEMO.options, 'scrap-keeper': keeper } });
    return { ...made(grantView(evaluation)), price: bidOf(evaluation).schedule.baseBid };
  };

  test('the contractor: a lower contract price and no program income; the owner: income and no lower price', () => {
    const contractor = kept('contractor');
    const owner = kept('owner');
    const scrap = contractor.input.scrap;
    expect(scrap?.amount).toBeGreaterThan(0);
    expect(contractor.book.programIncome).toBe(0);
    expect(contractor.input.lines.some(line => line.scrapCredit)).toBe(true);
    expect(owner.input.lines.some(line => line.scrapCredit)).toBe(false);
    expect(owner.book.programIncome).toBe(scrap?.amount);
    expect(owner.price - contractor.price).toBeGreaterThanOrEqual(scrap?.amount ?? 0);
  });

  test('the federal request is lowered once: by the federal share of the income under deduction', () => {
    const { book } = kept('owner');
    const allowable = sumCents(book.awards.flatMap(award => award.rows.map(row => row.allowable)));
    expect(book.federal).toBe(Math.round((allowable - book.programIncome) * 0.75));
  });
});

describe('the bid of the demo', () => {
  test.each(SCENARIOS)(
    '$scenario.id: every contract line is in one item, and the base bid is the contract price',
    evaluation => {
      const { schedule } = bidOf(evaluation);
      const { basis } = bookBasis(evaluation);
      const { contractCost, markUps } = basis?.summary ?? {};
      expect(schedule.findings).toEqual([]);
      expect(schedule.baseBid).toBe((contractCost?.cents ?? 0) + (markUps?.cents ?? 0));
    },
  );

  test('a project without bid items is bid by the headings of the library', () => {
    const { schedule } = bidOf(under(({ bid: _bid, ...project }) => project));
    expect(schedule.findings).toEqual([]);
    expect(schedule.baseBid).toBe(bidOf(first()).schedule.baseBid);
  });

  test('nothing of the internal sheet is on the bid sheet, and a planted amount or wage would be found', () => {
    const { view, sheet, internal } = bidOf(first());
    const rows = [...sheet.items, ...sheet.alternates];
    const cells = rows.flatMap(row =>
      Object.entries(row).map(([key, value]: [string, string | number]) =>
        key === 'amount' ? Number(value) / 100 : value,
      ),
    );
    expect(bidLeaks([...cells, sheet.baseBid / 100], view)).toEqual([]);
    const line = internal.items.flatMap(item => item.lines).find(one => one.facts.length > 1);
    const secret = line?.facts.find(fact => fact.title === 'Crew rate')?.value ?? '';
    expect(bidLeaks([`rate ${secret}`], view)).not.toEqual([]);
    expect(bidLeaks([(line?.amounts.labour ?? 0) / 100], view)).not.toEqual([]);
  });

  test('the internal sheet holds the whole build-up: direct cost and mark-ups are the price', () => {
    const { internal, sheet } = bidOf(first());
    const built = internal.buildUp;
    expect((built?.direct ?? 0) + sumCents((built?.markUps ?? []).map(one => one.amount))).toBe(built?.price);
    expect(built?.price).toBe(sheet.baseBid);
  });
});

describe('benefits and life', () => {
  test('the band of life is plate thickness over published corrosion', () => {
    // 0.4 mm a year (Glover 2024) and twice 0.06 mm a year and face (Melchers 2021) on 11 mm of plate.
    expect(benefitView(first()).case?.life).toMatchObject({ lowYears: 28, highYears: 92 });
    expect(benefitView(first()).case?.likely?.benefitCostRatio).toBeGreaterThan(0);
  });

  test('figures are absent, not zero, without their inputs', () => {
    const view = benefitView(under(({ benefits: _benefits, ...project }) => project));
    expect(view.case?.life).toBeUndefined();
    expect(view.case?.likely).toBeUndefined();
    expect(view.findings.map(finding => finding.code)).toEqual([
      'benefit/plate-missing',
      'benefit/rate-missing',
      'benefit/visits-missing',
    ]);
  });

  test('removal if the ship moves is named, and has no amount that nobody gave', () => {
    const [removal] = benefitView(first()).obligations?.contingent ?? [];
    expect(removal).toMatchObject({ id: 'removal' });
    expect(removal).not.toHaveProperty('amount');
  });
});

describe('the quality review of the demo', () => {
  test('every practice is answered once, with evidence and a remedy', () => {
    const rows = reviewRows(first());
    expect(new Set(rows.map(row => row.practiceId)).size).toBe(rows.length);
    expect(rows.length).toBeGreaterThan(25);
    expect(rows.filter(row => row.evidence.length === 0 || row.remedy === '')).toEqual([]);
  });

  test('what was done is met, and what was not done is told', () => {
    const standing = (rows: ReturnType<typeof reviewRows>, id: string) =>
      rows.find(row => row.practiceId === id)?.standing;
    const rows = reviewRows(first());
    expect(standing(rows, 'arithmetic')).toBe('met');
    expect(standing(rows, 'activities')).toBe('met');
    expect(standing(rows, 'uncertainty')).toBe('not met');
    expect(standing(rows, 'contingency-growth')).toBe('met');
    const share = { value: '0.1', unit: '1', basis: 'judgement' as const, source: 'made up for the test' };
    const low = evaluated({ ...DEMO, contingency: { policy: 'percentage', share } });
    expect(standing(reviewRows(low), 'contingency-growth')).not.toBe('met');
  });
});

function estimatedTotal(evaluation: Evaluation): number {
  const { money } = estimated(evaluation);
  return money.result.money(money.sums.total)?.cents ?? Number.NaN;
}
