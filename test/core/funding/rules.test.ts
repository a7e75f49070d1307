import { describe, expect, it } from 'vitest';
import {
  applyProgramIncome,
  checkContingency,
  indirectSideBySide,
  modifiedTotalDirectCost,
  netIncome,
  numberOf,
  centsOf,
  pieceKind,
  procurementLimits,
  procurementMethod,
  ruleAt,
  termOf,
  type BaseItem,
} from '../../../core/funding';
import { shareOf } from '../../../core/cash-flow';
import { RULES, usd } from './plans';

const NEW = '2026-11-01';
const OLD = '2024-09-30';

function indirect(
  items: readonly BaseItem[],
  classes: Parameters<typeof modifiedTotalDirectCost>[1],
  date: string,
) {
  const cap = centsOf(ruleAt(RULES, 'subaward-cap', date).figure);
  const rate = numberOf(ruleAt(RULES, 'de-minimis-rate', date).figure);
  const { base } = modifiedTotalDirectCost(items, classes, cap);
  return [base, shareOf(base, rate)];
}

// 2 CFR 200.1 (modified total direct cost) and 200.414(f) (de minimis rate), before and from 1 October 2024.
describe('indirect cost on modified total direct cost', () => {
  const labour = { id: 'labour', amount: usd(200_000) };
  const travel = { id: 'travel', amount: usd(5_000) };

  it('counts the first 50,000 of a subaward and no equipment: 255,000 at 15 in 100 is 38,250', () => {
    const items: BaseItem[] = [
      labour,
      travel,
      { id: 'partner', amount: usd(300_000), contractId: 'partner' },
      { id: 'crane', amount: usd(40_000), excluded: 'equipment' },
    ];
    expect(indirect(items, { partner: 'subaward' }, NEW)).toEqual([usd(255_000), usd(38_250)]);
    expect(indirect(items, { partner: 'subaward' }, OLD)).toEqual([usd(230_000), usd(23_000)]);
  });

  it.each([
    ['2024-10-01', 255_000, 38_250],
    ['2024-09-30', 230_000, 23_000],
  ])(
    'the new cap and rate hold for an award of 1 October 2024 and not of the day before: %s',
    (date, base, cost) => {
      const items: BaseItem[] = [
        labour,
        travel,
        { id: 'partner', amount: usd(300_000), contractId: 'partner' },
        { id: 'crane', amount: usd(40_000), excluded: 'equipment' },
      ];
      expect(indirect(items, { partner: 'subaward' }, date)).toEqual([usd(base), usd(cost)]);
    },
  );

  it('shows the three results of a preparation contract of 1,200,000 side by side', () => {
    const items: BaseItem[] = [
      labour,
      travel,
      { id: 'c', amount: usd(1_200_000), contractId: 'preparation' },
    ];
    expect(indirectSideBySide(items, 'preparation', {}, usd(50_000), 0.15)).toEqual([
      { contractClass: 'service procurement', base: usd(1_405_000), indirect: usd(210_750) },
      { contractClass: 'subaward', base: usd(255_000), indirect: usd(38_250) },
      { contractClass: 'capital', base: usd(205_000), indirect: usd(30_750) },
    ]);
  });

  it('has no default class: a contract without one is named and gives nothing to the base', () => {
    const items: BaseItem[] = [labour, { id: 'c', amount: usd(1_200_000), contractId: 'preparation' }];
    expect(modifiedTotalDirectCost(items, {}, usd(50_000))).toMatchObject({
      base: usd(200_000),
      unclassed: ['preparation'],
    });
  });

  it('gives each of many contracts the three bases that the whole sum gives', () => {
    const items: BaseItem[] = Array.from({ length: 400 }, (_, i) => ({
      id: `line-${i}`,
      amount: usd(((i * 7919) % 90_000) - 2_000),
      ...(i % 5 === 0 ? {} : { contractId: `contract-${i % 60}` }),
    }));
    const classes = { 'contract-1': 'subaward', 'contract-2': 'capital' } as const;
    const ids = [...new Set(items.flatMap(({ contractId }) => contractId ?? []))];
    expect(ids.length).toBe(48);
    for (const id of ids)
      for (const { contractClass, base } of indirectSideBySide(items, id, classes, usd(50_000), 0.15)) {
        const tried = { ...Object.fromEntries(ids.map(one => [one, contractClass])), ...classes };
        const whole = modifiedTotalDirectCost(items, { ...tried, [id]: contractClass }, usd(50_000));
        expect(base).toBe(whole.base);
      }
  });

  it('counts the cap once for a subaward of several lines, and all of a smaller one', () => {
    const two: BaseItem[] = [
      { id: 'a', amount: usd(40_000), contractId: 's' },
      { id: 'b', amount: usd(60_000), contractId: 's' },
    ];
    expect(modifiedTotalDirectCost(two, { s: 'subaward' }, usd(50_000))).toEqual({
      base: usd(50_000),
      parts: [
        { id: 'a', inBase: usd(20_000) },
        { id: 'b', inBase: usd(30_000) },
      ],
      unclassed: [],
    });
    expect(modifiedTotalDirectCost(two.slice(0, 1), { s: 'subaward' }, usd(50_000)).base).toBe(usd(40_000));
  });
});

// 48 CFR 2.101 as adjusted from 1 October 2025 (15,000 and 350,000; before: 10,000 and 250,000), 2 CFR 200.320.
describe('procurement thresholds by award date', () => {
  const method = (amount: number, date: string, county = {}) =>
    procurementMethod(usd(amount), procurementLimits(RULES, date, county));

  it.each([
    [15_000, '2025-10-01', 'micro-purchase'],
    [15_000.01, '2025-10-01', 'simplified acquisition'],
    [350_000, '2025-10-01', 'simplified acquisition'],
    [350_000.01, '2025-10-01', 'formal'],
    [10_000, '2025-09-30', 'micro-purchase'],
    [10_000.01, '2025-09-30', 'simplified acquisition'],
    [250_000, '2025-09-30', 'simplified acquisition'],
    [250_000.01, '2025-09-30', 'formal'],
  ])('%d in an award of %s is a %s', (amount, date, expected) => {
    expect(method(amount, date)).toBe(expected);
  });

  it("a county's lower limit governs, a higher one does not", () => {
    const limits = procurementLimits(RULES, '2026-01-01', {
      microPurchase: usd(5_000),
      simplified: usd(500_000),
    });
    expect(limits).toEqual({
      microPurchase: usd(5_000),
      microPurchaseBy: 'county',
      simplified: usd(350_000),
      simplifiedBy: 'federal',
    });
    expect(method(5_000.01, '2026-01-01', { microPurchase: usd(5_000) })).toBe('simplified acquisition');
  });
});

// 2 CFR 200.1, equipment: 10,000 or the recipient's lower level from 1 October 2024, 5,000 before.
describe('equipment or supply', () => {
  const kind = (price: number, date: string, county = {}) => pieceKind(usd(price), RULES, date, county);
  it.each([
    [9_999, NEW, {}, 'supply-purchase'],
    [10_000, NEW, {}, 'equipment-purchase'],
    [4_999, NEW, { equipment: usd(5_000) }, 'supply-purchase'],
    [5_000, NEW, { equipment: usd(5_000) }, 'equipment-purchase'],
    [4_999, OLD, {}, 'supply-purchase'],
    [5_000, OLD, {}, 'equipment-purchase'],
    [10_000, NEW, { equipment: usd(20_000) }, 'equipment-purchase'],
  ])('a piece of %d in an award of %s at county level %o is %s', (price, date, county, expected) => {
    expect(kind(price, date, county)).toBe(expected);
  });
});

// 2 CFR 200.307(e) and 50 CFR 80.123: deduction, addition, cost sharing.
describe('program income', () => {
  it('60,000 of scrap on 800,000 at 75 in 100 under deduction leaves 555,000 and 185,000', () => {
    const result = applyProgramIncome(usd(800_000), usd(60_000), 0.75, 'deduction');
    expect([result.federal, result.match, result.shared]).toEqual([usd(555_000), usd(185_000), usd(740_000)]);
  });
  it('under addition the grant stays at 600,000 and the project may spend 860,000', () => {
    const result = applyProgramIncome(usd(800_000), usd(60_000), 0.75, 'addition');
    expect([result.federal, result.spending]).toEqual([usd(600_000), usd(860_000)]);
  });
  it('under cost sharing 60,000 of the match of 200,000 is scrap and 140,000 cash', () => {
    const result = applyProgramIncome(usd(800_000), usd(60_000), 0.75, 'cost sharing');
    expect([result.federal, result.match, result.matchFromIncome, result.matchFromOthers]).toEqual([
      usd(600_000),
      usd(200_000),
      usd(60_000),
      usd(140_000),
    ]);
  });
  it('income beyond the match is unused and says so', () => {
    expect(applyProgramIncome(usd(100), usd(60), 0.75, 'cost sharing')).toMatchObject({
      matchFromIncome: usd(25),
      unused: usd(35),
    });
    expect(applyProgramIncome(usd(100), usd(160), 0.75, 'deduction')).toMatchObject({
      federal: 0,
      unused: usd(60),
    });
  });
  it('the cost of earning it comes off first, and never below nothing', () => {
    expect([netIncome(usd(60_000), usd(8_000)), netIncome(100, 200)]).toEqual([usd(52_000), 0]);
  });
});

describe('contingency on a grant', () => {
  const good = {
    amount: 100,
    isByAcceptedMethod: true,
    isDocumented: true,
    isAcceptedByAgency: true,
    isReserve: false,
  };
  // 2 CFR 200.433
  it('is borne only when estimated, documented, accepted and no reserve', () => {
    expect(checkContingency(good)).toEqual([]);
    expect(checkContingency({ ...good, amount: 0, isReserve: true })).toEqual([]);
    const bad = {
      ...good,
      isByAcceptedMethod: false,
      isDocumented: false,
      isAcceptedByAgency: false,
      isReserve: true,
    };
    expect(checkContingency(bad)).toHaveLength(4);
    expect(checkContingency(bad).every(found => found.rule === '2 CFR 200.433')).toBe(true);
  });
});

describe('the file of dated rules', () => {
  it('every figure has a basis, a source and a year', () => {
    for (const { figure } of [...RULES.rules, ...RULES.terms])
      expect([figure.source.length > 10, figure.year !== undefined]).toEqual([true, true]);
  });
  it('gives the rule of the award date and the usual terms', () => {
    expect(ruleAt(RULES, 'single-audit', '2024-10-01').figure.value).toBe('1000000');
    expect(ruleAt(RULES, 'single-audit', '2024-09-30').figure.value).toBe('750000');
    expect(termOf(RULES, 'retainage')).toBe(0.05);
    expect(() => ruleAt({ rules: [], terms: [] }, 'single-audit', NEW)).toThrow('no single-audit');
    expect(() => termOf({ rules: [], terms: [] }, 'retainage')).toThrow('no term');
  });
});
