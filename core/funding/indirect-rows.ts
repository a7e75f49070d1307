import { known, lowerFirst, type Finding } from '../base';
import { allocateOver, dollars, gatherMonths, shareOf, spreadLike, sumCents, type Cents } from '../cash-flow';
import type { BudgetRow } from './budget-row';
import type { Activity } from './forms';
import {
  classResults,
  itemsByContract,
  modifiedTotalDirectCost,
  type BaseItem,
  type ClassResult,
  type ContractClass,
} from './indirect';
import type { FundingPlan, FundingSource } from './plan';
import { centsOf, numberOf, ruleAt, type FundingRules } from './rules';

/** The three results for one contract, and the class the user chose. */
export interface ContractResults {
  readonly contractId: string;
  readonly amount: Cents;
  readonly chosen?: ContractClass;
  readonly results: readonly ClassResult[];
}

/** The indirect cost of an award. Its amount is absent while a big contract has no class or the form no place. */
export interface AwardIndirect {
  readonly rate: number;
  readonly base: Cents;
  readonly amount?: Cents;
  readonly rows: readonly BudgetRow[];
  readonly contracts: readonly ContractResults[];
  readonly findings: readonly Finding[];
}

/** The rate of indirect cost, or why there is none. */
export function indirectRate(plan: FundingPlan, rules: FundingRules): { rate?: number; findings: Finding[] } {
  const { indirect } = plan;
  if (indirect.kind === 'none') return { rate: 0, findings: [] };
  if (indirect.kind === 'negotiated') return { rate: indirect.rate, findings: [] };
  const rule = ruleAt(rules, 'de-minimis-rate', plan.awardDate);
  const most = numberOf(rule.figure);
  const rate = indirect.rate ?? most;
  if (rate <= most) return { rate, findings: [] };
  return {
    findings: [
      finding(
        'funding/rate-above-de-minimis',
        '/funding/indirect',
        `a de minimis rate of ${rate} is above the ${most} of an award of ${plan.awardDate}`,
        'enter a rate within the limit, or the negotiated rate with its agreement',
        '2 CFR 200.414(f)',
      ),
    ],
  };
}

/** The indirect cost of an award on its allowable direct rows, as rows of the budget, one a column. */
export function awardIndirect(
  direct: readonly BudgetRow[],
  award: FundingSource,
  plan: FundingPlan,
  rules: FundingRules,
  activities: readonly Activity[],
): AwardIndirect {
  const { rate, findings } = indirectRate(plan, rules);
  if (rate === undefined || rate === 0)
    return { rate: rate ?? 0, base: 0, ...nothing(rate), rows: [], contracts: [], findings };
  const items = direct.map(toItem);
  const cap = centsOf(ruleAt(rules, 'subaward-cap', plan.awardDate).figure);
  const classes = withSmallServices(direct, plan.contractClasses, cap);
  const result = modifiedTotalDirectCost(items, classes, cap);
  const contracts = contractResults(items, plan.contractClasses, classes, cap, rate);
  const place = award.form === 'SF-424C' ? award.indirectLine : 'j';
  const problems = [...result.unclassed.map(unclassed), ...(place === undefined ? [noPlace(award)] : [])];
  if (problems.length > 0 || place === undefined)
    return { rate, base: result.base, rows: [], contracts, findings: problems };
  const inBase = new Map(result.parts.map(part => [part.id, part.inBase]));
  const amount = shareOf(result.base, rate);
  const rows = indirectRowsOf(direct, inBase, amount, place, activities);
  return { rate, base: result.base, amount, rows, contracts, findings: [] };
}

function nothing(rate: number | undefined): { amount?: Cents } {
  return rate === undefined ? {} : { amount: 0 };
}

function toItem(row: BudgetRow): BaseItem {
  const base = { id: row.id, amount: row.allowable };
  if (row.isInKind) return { ...base, excluded: 'in kind' };
  if (row.kind === 'contingency') return { ...base, excluded: 'contingency' };
  if (row.kind === 'equipment-purchase') return { ...base, excluded: 'equipment' };
  if (row.kind === 'rent') return { ...base, excluded: 'rent' };
  return row.contractId === undefined ? base : { ...base, contractId: row.contractId };
}

/** A service the owner buys for no more than the subaward cap is a service; only bigger ones are asked about. */
function withSmallServices(
  rows: readonly BudgetRow[],
  chosen: Readonly<Record<string, ContractClass>>,
  cap: Cents,
): Record<string, ContractClass> {
  const small = [...itemsByContract(rows)].flatMap(([id, own]) => {
    const isService =
      own.some(row => row.kind === 'subcontract') && own.every(row => row.kind !== 'contract');
    return isService && sumCents(own.map(row => row.allowable)) <= cap ? [id] : [];
  });
  return { ...Object.fromEntries(small.map(id => [id, 'service procurement' as const])), ...chosen };
}

function contractResults(
  items: readonly BaseItem[],
  chosen: Readonly<Record<string, ContractClass>>,
  classes: Readonly<Record<string, ContractClass>>,
  cap: Cents,
  rate: number,
): ContractResults[] {
  const resultsOf = classResults(items, classes, cap, rate);
  return [...itemsByContract(items)].map(([contractId, ofContract]) => {
    const own = chosen[contractId];
    return {
      contractId,
      amount: sumCents(ofContract.map(item => item.amount)),
      ...(own && { chosen: own }),
      results: resultsOf(contractId),
    };
  });
}

function indirectRowsOf(
  direct: readonly BudgetRow[],
  inBase: ReadonlyMap<string, Cents>,
  amount: Cents,
  classId: string,
  activities: readonly Activity[],
): BudgetRow[] {
  const columns = activities.map(activity => {
    const own = direct.filter(row => row.activityId === activity.id && known(inBase, row.id) > 0);
    return { activity, own, base: sumCents(own.map(row => known(inBase, row.id))) };
  });
  if (amount === 0 || sumCents(columns.map(column => column.base)) <= 0) return [];
  return allocateOver(amount, columns, column => column.base).flatMap(({ item, amount: part }) =>
    part === 0 ? [] : [indirectRow(item.activity, item.own, part, classId)],
  );
}

function indirectRow(
  activity: Activity,
  own: readonly BudgetRow[],
  amount: Cents,
  classId: string,
): BudgetRow {
  const pattern = gatherMonths(own.flatMap(row => row.months)).filter(month => month.amount > 0);
  const months = spreadLike(amount, pattern);
  return {
    id: `indirect/${activity.id}`,
    title: `Indirect cost, ${lowerFirst(activity.title)}`,
    kind: 'indirect',
    activityId: activity.id,
    isInKind: false,
    classId,
    total: amount,
    before: 0,
    after: 0,
    notAllowable: 0,
    allowable: amount,
    months,
    paidMonths: months,
  };
}

function unclassed(contractId: string): Finding {
  return finding(
    'funding/contract-class',
    `/funding/contracts/${contractId}`,
    `the contract ${contractId} has no class, so the base of indirect cost is not known`,
    'choose service procurement, subaward or capital; the three results stand side by side',
    '2 CFR 200.331 and 200.1',
  );
}

function noPlace(award: FundingSource): Finding {
  return finding(
    'funding/indirect-line',
    `/funding/sources/${award.id}`,
    `SF-424C has no line for indirect cost, and ${award.title} was not asked where it wants it`,
    'ask the grantor, and enter the line',
  );
}

function finding(code: string, place: string, message: string, remedy: string, rule?: string): Finding {
  const meaning = 'indirect cost is not known, so no form is made; the estimate stands';
  return { code, weight: 'blocks', place, message, meaning, remedy, ...(rule !== undefined && { rule }) };
}

/** The result of one class as a sentence, for the side-by-side table. */
export function classSentence(result: ClassResult, rate: number): string {
  return `as ${result.contractClass}: base ${dollars(result.base)}, at ${Number((rate * 100).toFixed(4))} % ${dollars(result.indirect)}`;
}
