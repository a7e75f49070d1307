import type { Finding } from '../base';
import { allocateCents, dollars, shareOf, sumCents, type Cents } from '../cash-flow';
import { NOT_FOUND, PROGRAM_INCOME, type BudgetRow, type SharedRow } from './budget-row';
import type { FundingSource } from './plan';
import { applyProgramIncome, type IncomeMethod, type IncomeResult } from './program-income';

/** What the sources still have after earlier awards took of them, by source id; a source without a cap is not in it. */
export type Purse = ReadonlyMap<string, Cents>;

/** The cost of one award shared out among the sources. */
export interface SharedOut {
  readonly rows: readonly SharedRow[];
  readonly income: IncomeResult;
  readonly purse: Purse;
  readonly findings: readonly Finding[];
}

/** Rows being shared out: what is still to be borne of each, and who bears what so far. */
interface Ledger {
  readonly left: readonly Cents[];
  readonly shares: readonly Readonly<Record<string, Cents>>[];
}

/**
 * Shares the allowable cost of an award out among its sources: first the contributions in kind on their own
 * lines, then program income, then the grant up to its share and caps, then the matching sources in order, each
 * no further than it reaches. What nobody bears is named, never dropped.
 */
export function shareOut(
  rows: readonly BudgetRow[],
  award: FundingSource,
  matching: readonly FundingSource[],
  income: { readonly amount: Cents; readonly method: IncomeMethod },
  purse: Purse,
): SharedOut {
  const allowable = sumCents(rows.map(row => row.allowable));
  const result = applyProgramIncome(allowable, income.amount, award.share ?? 1, income.method);
  const start: Ledger = { left: rows.map(row => row.allowable), shares: rows.map(() => ({})) };
  const inKind = matching.filter(source => source.support === 'in kind');
  const cash = matching.filter(source => source.support === 'cash');
  let purseLeft = purse;
  let ledger = start;
  const give = (source: FundingSource, from: Ledger): Ledger => {
    const given = bear(rows, from, source, allowable, purseLeft.get(source.id));
    purseLeft = afterGiving(purseLeft, source.id, sumCents(given));
    return book(from, source.id, given);
  };
  for (const source of inKind) ledger = give(source, ledger);
  ledger = book(
    ledger,
    PROGRAM_INCOME,
    allocateUpTo(result.income - result.unused - addedIncome(result), ledger.left),
  );
  const asked = grantShares(rows, ledger, award, result.federal);
  ledger = book(ledger, award.id, asked);
  for (const source of cash) ledger = give(source, ledger);
  const missing = sumCents(ledger.left);
  ledger = book(ledger, NOT_FOUND, ledger.left);
  const shared = rows.map((row, index) => ({ ...row, shares: ledger.shares[index] ?? {} }));
  return { rows: shared, income: result, purse: purseLeft, findings: shareFindings(award, missing, result) };
}

/** Income that pays for more of the project is not part of the budget that is shared. */
function addedIncome(result: IncomeResult): Cents {
  return result.method === 'addition' ? result.income : 0;
}

/** What the grant bears of each row: its share, no more than is left, within its caps. */
function grantShares(
  rows: readonly BudgetRow[],
  ledger: Ledger,
  award: FundingSource,
  federal: Cents,
): Cents[] {
  const left = sumCents(ledger.left);
  const most = Math.min(federal, award.cap ?? federal, left);
  const even = allocateUpTo(Math.max(0, most), ledger.left);
  const caps = award.stageCaps;
  if (!caps) return even;
  return Object.entries(caps).reduce((shares, [stage, cap]) => underStageCap(rows, shares, stage, cap), even);
}

function underStageCap(
  rows: readonly BudgetRow[],
  shares: readonly Cents[],
  stage: string,
  cap: Cents,
): Cents[] {
  const inStage = shares.map((share, index) => (rows[index]?.stage === stage ? share : 0));
  if (sumCents(inStage) <= cap) return [...shares];
  const cut = allocateCents(cap, inStage);
  return shares.map((share, index) => (rows[index]?.stage === stage ? (cut[index] ?? 0) : share));
}

/** What a matching source bears of each row: it reaches its own lines or stages, its share, its cap. */
function bear(
  rows: readonly BudgetRow[],
  ledger: Ledger,
  source: FundingSource,
  allowable: Cents,
  purse: Cents | undefined,
): Cents[] {
  const reached = ledger.left.map((left, index) => {
    const row = rows[index];
    return row && reaches(source, row) ? left : 0;
  });
  const open = sumCents(reached);
  const limits = [open, purse ?? open, source.share === undefined ? open : shareOf(allowable, source.share)];
  return allocateUpTo(Math.max(0, Math.min(...limits)), reached);
}

function reaches(source: FundingSource, row: BudgetRow): boolean {
  if (source.lineIds) return row.lineId !== undefined && source.lineIds.includes(row.lineId);
  if (row.isInKind) return false;
  return !source.stages || row.stage === undefined || source.stages.some(stage => stage === row.stage);
}

/** A total over what is left; nothing where nothing is left. */
function allocateUpTo(total: Cents, left: readonly Cents[]): Cents[] {
  return sumCents(left) <= 0 || total === 0 ? left.map(() => 0) : allocateCents(total, left);
}

function book(ledger: Ledger, sourceId: string, given: readonly Cents[]): Ledger {
  return {
    left: ledger.left.map((left, index) => left - (given[index] ?? 0)),
    shares: ledger.shares.map((shares, index) => {
      const part = given[index] ?? 0;
      return part === 0 ? shares : { ...shares, [sourceId]: part };
    }),
  };
}

function afterGiving(purse: Purse, sourceId: string, given: Cents): Purse {
  const had = purse.get(sourceId);
  return had === undefined ? purse : new Map(purse).set(sourceId, had - given);
}

function shareFindings(award: FundingSource, missing: Cents, income: IncomeResult): Finding[] {
  const findings: Finding[] = [];
  if (missing > 0)
    findings.push({
      code: 'funding/match-not-found',
      weight: 'warns',
      place: `/funding/sources/${award.id}`,
      message: `${dollars(missing)} of the cost beside ${award.title} is borne by no source`,
      meaning: 'the match is short by that amount',
      remedy: 'add a matching source, raise what a source gives, or ask for less',
    });
  if (income.unused > 0)
    findings.push({
      code: 'funding/income-not-used',
      weight: 'warns',
      place: '/funding/income',
      message: `${dollars(income.unused)} of program income finds no use under ${income.method}`,
      remedy: 'agree with the grantor what the rest of the income is for',
      rule: '2 CFR 200.307',
    });
  return findings;
}
