import { shareOf } from '../../../core/cash-flow';
import {
  applyProgramIncome,
  centsOf,
  indirectSideBySide,
  modifiedTotalDirectCost,
  numberOf,
  pieceKind,
  procurementLimits,
  procurementMethod,
  ruleAt,
  type BaseItem,
} from '../../../core/funding';
import { RULES, usd } from '../../core/funding/plans';
import { checksOf, type OutsideCheck } from './check';

const NEW = '2026-11-01';
const OLD = '2024-09-30';
const items: BaseItem[] = [
  { id: 'labour', amount: usd(200_000) },
  { id: 'travel', amount: usd(5_000) },
  { id: 'partner', amount: usd(300_000), contractId: 'partner' },
  { id: 'crane', amount: usd(40_000), excluded: 'equipment' },
];
const contract: BaseItem[] = [
  { id: 'labour', amount: usd(200_000) },
  { id: 'travel', amount: usd(5_000) },
  { id: 'c', amount: usd(1_200_000), contractId: 'preparation' },
];
const dollars = (cents: number) => cents / 100;

function indirect(date: string): { base: number; amount: number } {
  const cap = centsOf(ruleAt(RULES, 'subaward-cap', date).figure);
  const rate = numberOf(ruleAt(RULES, 'de-minimis-rate', date).figure);
  const { base } = modifiedTotalDirectCost(items, { partner: 'subaward' }, cap);
  return { base: dollars(base), amount: dollars(shareOf(base, rate)) };
}
const three = indirectSideBySide(contract, 'preparation', {}, usd(50_000), 0.15);
const classed = (n: number, field: 'base' | 'indirect') => () => dollars(Number(three[n]?.[field]));
const method = (amount: number, date: string) => () =>
  procurementMethod(usd(amount), procurementLimits(RULES, date, {}));
const kind =
  (price: number, county = {}) =>
  () =>
    pieceKind(usd(price), RULES, NEW, county);
const income = (way: 'deduction' | 'addition' | 'cost sharing') =>
  applyProgramIncome(usd(800_000), usd(60_000), 0.75, way);

export const grantChecks: readonly OutsideCheck[] = [
  ...checksOf('2 CFR 200.1 and 200.414(f), modified total direct cost and the de minimis rate', [
    ['Base with a subaward of 300,000 and equipment of 40,000', 255_000, () => indirect(NEW).base],
    ['Indirect cost of it at 15 in 100', 38_250, () => indirect(NEW).amount],
    ['Base of the same before October 2024', 230_000, () => indirect(OLD).base],
    ['Indirect cost of it at 10 in 100', 23_000, () => indirect(OLD).amount],
    ['Base with a contract of 1,200,000 as service procurement', 1_405_000, classed(0, 'base')],
    ['Indirect cost with it as service procurement', 210_750, classed(0, 'indirect')],
    ['Base with it as subaward', 255_000, classed(1, 'base')],
    ['Indirect cost with it as subaward', 38_250, classed(1, 'indirect')],
    ['Base with it as capital', 205_000, classed(2, 'base')],
    ['Indirect cost with it as capital', 30_750, classed(2, 'indirect')],
  ]),
  ...checksOf('48 CFR 2.101 as adjusted from 1 October 2025; 2 CFR 200.320', [
    ['15,000 from October 2025', 'micro-purchase', method(15_000, '2025-10-01')],
    ['15,000.01', 'simplified acquisition', method(15_000.01, '2025-10-01')],
    ['350,000', 'simplified acquisition', method(350_000, '2025-10-01')],
    ['350,000.01', 'formal', method(350_000.01, '2025-10-01')],
    ['10,000 before', 'micro-purchase', method(10_000, '2025-09-30')],
    ['10,000.01 before', 'simplified acquisition', method(10_000.01, '2025-09-30')],
    ['250,000 before', 'simplified acquisition', method(250_000, '2025-09-30')],
    ['250,000.01 before', 'formal', method(250_000.01, '2025-09-30')],
  ]),
  ...checksOf('2 CFR 200.1, equipment and supplies', [
    ['A piece of 9,999', 'supply-purchase', kind(9_999)],
    ['A piece of 10,000', 'equipment-purchase', kind(10_000)],
    ['4,999 at a county level of 5,000', 'supply-purchase', kind(4_999, { equipment: usd(5_000) })],
    ['5,000 at a county level of 5,000', 'equipment-purchase', kind(5_000, { equipment: usd(5_000) })],
  ]),
  ...checksOf('2 CFR 200.307, program income of 60,000 on 800,000 at 75 in 100', [
    ['Deduction: federal share', 555_000, () => dollars(income('deduction').federal)],
    ['Deduction: match', 185_000, () => dollars(income('deduction').match)],
    ['Addition: federal share', 600_000, () => dollars(income('addition').federal)],
    ['Addition: what the project may spend', 860_000, () => dollars(income('addition').spending)],
    ['Cost sharing: federal share', 600_000, () => dollars(income('cost sharing').federal)],
    ['Cost sharing: match', 200_000, () => dollars(income('cost sharing').match)],
    ['Cost sharing: of it from scrap', 60_000, () => dollars(income('cost sharing').matchFromIncome)],
  ]),
];
