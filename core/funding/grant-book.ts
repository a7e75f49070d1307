import { anyBlocks, type Finding } from '../base';
import { checkLines, sumCents, type Cents, type EstimateLine, type Reconciliation } from '../cash-flow';
import { makeAward, type Award, type AwardOutcome } from './award';
import { NOT_FOUND, PROGRAM_INCOME, UNFUNDED_TITLE } from './budget-row';
import { checkContingency } from './contingency';
import type { FormsData } from './forms';
import { incomeSubtracted, reconcileForms } from './forms-reconciliation';
import type { ContractResults } from './indirect-rows';
import type { FundingSource, GrantInput } from './plan';
import { METHOD_IF_NOT_STATED, netIncome } from './program-income';
import type { FundingRules } from './rules';
import { checkSources, openingPurse } from './source-checks';
import { federalRequest } from './tie-out';

/** What one source gives over all awards. */
export interface SourceTotal {
  readonly sourceId: string;
  readonly title: string;
  readonly amount: Cents;
  /** What is left of its cap; absent without a cap. */
  readonly leftOfCap?: Cents;
}

/** The grant budget: one form a source, and how they come from the estimate. */
export interface GrantBook {
  readonly awards: readonly Award[];
  readonly federal: Cents;
  readonly match: Cents;
  readonly indirect: Cents;
  /** Program income: what the owner gets for scrap, less the cost of earning it. */
  readonly programIncome: Cents;
  readonly bySource: readonly SourceTotal[];
  /** The part of the budget of the forms that program income pays for. */
  readonly incomeOnForms: Cents;
  /** The part of the budget of the forms that no source bears yet. */
  readonly unfunded: Cents;
  readonly reconciliation: Reconciliation;
  /** Lines that stand on no form. */
  readonly outsideForms: readonly string[];
}

/** The grant budget, absent when a finding blocks it. The three results by contract class are there all the same. */
export interface GrantOutcome {
  readonly book?: GrantBook;
  readonly contracts: readonly ContractResults[];
  readonly findings: readonly Finding[];
}

/**
 * Makes the grant budget from the estimate: each line goes to the first source with a form that may pay for its
 * stage, so no money stands on two forms.
 */
export function grantBook(input: GrantInput, rules: FundingRules, forms: FormsData): GrantOutcome {
  const early = [
    ...checkLines(input.lines),
    ...checkSources(input),
    ...(input.contingency ? checkContingency(input.contingency) : []),
  ];
  if (anyBlocks(early)) return { contracts: [], findings: early };
  const { outcomes, outside } = makeAwards(input, rules, forms);
  const findings = [...early, ...outcomes.flatMap(outcome => outcome.findings), ...noAward(outcomes)];
  const contracts = outcomes.flatMap(outcome => outcome.indirect?.contracts ?? []);
  if (anyBlocks(findings)) return { contracts, findings };
  const awards = outcomes.flatMap(outcome => outcome.award ?? []);
  return { book: toBook(input, awards, outside), contracts, findings };
}

function makeAwards(
  input: GrantInput,
  rules: FundingRules,
  forms: FormsData,
): { outcomes: AwardOutcome[]; outside: EstimateLine[] } {
  const { plan } = input;
  let left = input.lines;
  let purse: AwardOutcome['purse'] = openingPurse(plan.sources);
  const outcomes = plan.sources
    .filter(source => source.form !== 'none')
    .map((source, index) => {
      const lines = left.filter(line => mayPay(source, line));
      left = left.filter(line => !mayPay(source, line));
      const isFirst = index === 0;
      const outcome = makeAward({
        source,
        lines,
        contingency: isFirst ? input.contingency : undefined,
        income: {
          amount: isFirst ? ownersIncome(input) : 0,
          method: plan.income.method ?? METHOD_IF_NOT_STATED,
        },
        plan,
        rules,
        forms,
        purse,
      });
      purse = outcome.purse;
      return outcome;
    });
  return { outcomes, outside: [...left] };
}

function mayPay(source: FundingSource, line: EstimateLine): boolean {
  return !source.stages || source.stages.includes(line.stage);
}

/** Program income: scrap that the owner keeps. Scrap kept by the contractor is a lower price and never income. */
export function ownersIncome(input: GrantInput): Cents {
  const { scrap, plan } = input;
  return scrap?.keptBy === 'owner' ? netIncome(scrap.amount, plan.income.costOfEarning ?? 0) : 0;
}

function toBook(input: GrantInput, awards: readonly Award[], outside: readonly EstimateLine[]): GrantBook {
  const rows = awards.flatMap(award => award.rows);
  const federal = sumCents(awards.map(award => federalRequest(award.form)));
  const matching = input.plan.sources.filter(source => source.form === 'none').map(source => source.id);
  const bySource = input.plan.sources.map(source => sourceTotal(source, rows));
  const unfunded = sumCents(rows.map(row => row.shares[NOT_FOUND] ?? 0));
  const income = sumCents(rows.map(row => row.shares[PROGRAM_INCOME] ?? 0));
  return {
    awards,
    federal,
    match:
      sumCents(bySource.filter(one => matching.includes(one.sourceId)).map(one => one.amount)) + unfunded,
    indirect: sumCents(awards.map(award => award.indirect.amount ?? 0)),
    programIncome: ownersIncome(input),
    bySource,
    incomeOnForms: income - sumCents(awards.map(incomeSubtracted)),
    unfunded,
    reconciliation: reconcileForms(input, awards, outside),
    outsideForms: outside.map(line => line.id),
  };
}

/** A part of the budget of the forms and what bears it. */
export interface BudgetPart {
  readonly id: string;
  readonly title: string;
  readonly amount: Cents;
}

/** The budget of the forms by what bears it: the sources, program income, and last what no source bears yet. */
export function budgetParts({
  bySource,
  incomeOnForms,
  unfunded,
}: Pick<GrantBook, 'bySource' | 'incomeOnForms' | 'unfunded'>): BudgetPart[] {
  const beside = [
    { id: PROGRAM_INCOME, title: 'Program income', amount: incomeOnForms },
    { id: NOT_FOUND, title: UNFUNDED_TITLE, amount: unfunded },
  ].filter(({ amount }) => amount !== 0);
  return [...bySource.map(({ sourceId, title, amount }) => ({ id: sourceId, title, amount })), ...beside];
}

function sourceTotal(source: FundingSource, rows: Award['rows']): SourceTotal {
  const amount = sumCents(rows.map(row => row.shares[source.id] ?? 0));
  return {
    sourceId: source.id,
    title: source.title,
    amount,
    ...(source.cap !== undefined && { leftOfCap: source.cap - amount }),
  };
}

function noAward(outcomes: readonly AwardOutcome[]): Finding[] {
  if (outcomes.length > 0) return [];
  return [
    {
      code: 'funding/no-award',
      weight: 'blocks',
      place: '/funding/sources',
      message: 'no source with a form and a period bears any cost, so there is no grant budget',
      meaning: 'forms, shares and match are absent; the estimate stands',
      remedy: 'add a grant with its form, period and share',
    },
  ];
}
