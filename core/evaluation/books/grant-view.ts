import { known, type Finding } from '../../base';
import { obligationsByMonth, type ContingentObligation } from '../../benefit';
import {
  byFiscalYear,
  carryingCost,
  checkDrawdown,
  drawdownPlan,
  totalOfMonths,
  type Draw,
  type MonthAmount,
} from '../../cash-flow';
import {
  drawBasisOf,
  grantBook,
  grantCash,
  procurementLimits,
  procurementMethod,
  type Award,
  type ContractResults,
  type GrantBook,
  type GrantCash,
  type GrantInput,
  type ProcurementLimits,
  type ProcurementMethod,
} from '../../funding';
import type { Funding } from '../../project';
import type { Evaluation } from '../evaluate';
import { agreementFindings } from './agreement-date';
import { bookBasis, type BookBasis } from './book-lines';
import { faultsOfSection } from './faulty-section';
import { grantInput } from './grant-input';
import { hiredPersonnelFindings } from './hired-personnel';
import { afterSinking } from './obligations';
import { shippedBookRules, type BookRules } from './shipped-rules';

/** What one award draws, month by month. */
export interface AwardDraws {
  readonly sourceId: string;
  readonly draws: readonly Draw[];
}

/** The owner's cash with what stands beside the budget: fiscal years, drawing, carrying, obligations. */
export interface CashPart {
  readonly cash: GrantCash;
  /** Payments by fiscal year of the county; the start month moves no total. */
  readonly fiscalYears: readonly { readonly fiscalYear: number; readonly amount: number }[];
  readonly drawdown: readonly AwardDraws[];
  /** What carrying the gap costs at the county's rate; absent without one. */
  readonly carrying?: number;
  /** Obligations after the sinking by month: beside the budget, never in the grant total. */
  readonly obligations: readonly MonthAmount[];
  readonly contingent: readonly ContingentObligation[];
}

/** The grant budget of an evaluation. Book and cash are absent while a finding blocks them. */
export interface GrantView {
  readonly input?: GrantInput;
  readonly book?: GrantBook;
  readonly cash?: CashPart;
  readonly contracts: readonly ContractResults[];
  /** How each contract must be bought under the limits of the award date, or the county's where stricter. */
  readonly procurement: readonly ContractMethod[];
  readonly findings: readonly Finding[];
}

/** How a contract must be bought, and whose limit says so. */
export interface ContractMethod {
  readonly contractId: string;
  readonly method: ProcurementMethod;
  readonly limits: ProcurementLimits;
}

/** The grant view: budget by form, shares, cash and what ties them to the estimate. */
export function grantView(evaluation: Evaluation, rules: BookRules = shippedBookRules()): GrantView {
  const { funding } = evaluation.project;
  const nothing = { contracts: [], procurement: [] };
  if (funding === undefined) return { ...nothing, findings: [noFunding()] };
  const { basis, findings } = bookBasis(evaluation);
  const faults = faultsOfSection(evaluation, '/funding');
  if (basis === undefined || faults.length > 0) return { ...nothing, findings: [...findings, ...faults] };
  const input = grantInput(basis, funding, rules);
  const outcome = grantBook(input, rules.funding, rules.forms);
  const { book, contracts } = outcome;
  const frame = { input, contracts, procurement: methodsOf(contracts, input, rules) };
  const early = [
    ...findings,
    ...outcome.findings,
    ...agreementFindings(basis, funding, book?.awards ?? []),
    ...hiredPersonnelFindings(book?.awards ?? []),
    ...absentContingency(basis),
  ];
  if (book === undefined || basis.summary.contingency === undefined) return { ...frame, findings: early };
  const cash = cashPart(basis, input, book, funding, rules);
  return { ...frame, book, cash, findings: [...early, ...drawFindings(book, cash)] };
}

/** A budget without its contingency would be short by it, so it is withheld. */
function absentContingency({ summary, evaluation }: BookBasis): Finding[] {
  if (summary.contingency !== undefined) return [];
  const isByRuns = evaluation.project.contingency.policy === 'confidence';
  return [
    {
      code: 'funding/contingency-absent',
      weight: 'blocks',
      place: isByRuns ? '/contingency/confidence' : '/contingency/share',
      message: 'The contingency is absent, so there is no grant budget.',
      meaning: 'Forms, shares and cash gap would be short by it; the estimate without it stands.',
      remedy: isByRuns
        ? 'Run the trials under Risk, which set it, or choose a share.'
        : 'Enter its share; for none at all, a share of 0.',
    },
  ];
}

function cashPart(
  basis: BookBasis,
  input: GrantInput,
  book: GrantBook,
  funding: Funding,
  rules: BookRules,
): CashPart {
  const cash = grantCash(input, book);
  const matching = input.plan.sources.filter(source => source.form === 'none');
  const after = afterSinking(basis, basis.evaluation.project.benefits, rules);
  const sunk = sinkingMonth(basis);
  return {
    cash,
    fiscalYears: byFiscalYear(cash.payments, funding.fiscalYearStart),
    drawdown: book.awards.map(award => ({
      sourceId: award.source.id,
      draws: drawdownPlan(drawBasisOf(award, matching, input)),
    })),
    ...(funding.carryingRate && { carrying: carryingCost(cash.view, Number(funding.carryingRate.value)) }),
    obligations: sunk === undefined ? [] : obligationsByMonth(after.beside, sunk),
    contingent: after.contingent,
  };
}

function methodsOf(
  contracts: readonly ContractResults[],
  { plan }: GrantInput,
  rules: BookRules,
): ContractMethod[] {
  const limits = procurementLimits(rules.funding, plan.awardDate, plan.county);
  return contracts.map(({ contractId, amount }) => ({
    contractId,
    method: procurementMethod(amount, limits),
    limits,
  }));
}

/** The month in which the ship is sunk: the last of the stage of sinking. */
export function sinkingMonth({ parts, spans }: BookBasis): string | undefined {
  return parts.items
    .filter(item => item.stage === 'sinking')
    .flatMap(item => spans.get(item.id)?.finish.slice(0, 7) ?? [])
    .toSorted()
    .at(-1);
}

function drawFindings(book: GrantBook, { drawdown }: CashPart): Finding[] {
  const drawn = new Map(drawdown.map(({ sourceId, draws }) => [sourceId, draws]));
  return book.awards.flatMap(award => {
    const draws = known(drawn, award.source.id);
    return checkDrawdown(draws, draws.at(-1)?.drawn ?? 0, matchOf(award));
  });
}

function matchOf(award: Award): number {
  return totalOfMonths(
    award.rows.flatMap(row =>
      Object.entries(row.shares)
        .filter(([id]) => id !== award.source.id && id !== 'program-income')
        .map(([, amount]) => ({ month: '', amount })),
    ),
  );
}

function noFunding(): Finding {
  return {
    code: 'funding/section-missing',
    weight: 'blocks',
    place: '/funding',
    message: 'The project has no funding section, so there is no grant budget.',
    meaning: 'The forms, the match and the cash gap are absent; the estimate is not touched.',
    remedy:
      'Add the section "funding": award date, sources with share and period, contracts with their class, indirect cost.',
  };
}
