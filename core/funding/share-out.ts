import type { Finding } from '../base';
import { allocateOver, dollars, shareOf, sumCents, type Cents, type Part } from '../cash-flow';
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

/** A row being shared out: what is still to be borne of it, and who bears what so far. */
interface Entry {
  readonly row: BudgetRow;
  readonly left: Cents;
  readonly shares: Readonly<Record<string, Cents>>;
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
  const result = applyProgramIncome(allowable, income.amount, award.share ?? WHOLE, income.method);
  let entries: readonly Entry[] = rows.map(row => ({ row, left: row.allowable, shares: {} }));
  let purseLeft = purse;
  const giveInOrder = (support: FundingSource['support']): void => {
    for (const source of matching.filter(one => one.support === support)) {
      const total = reachOf(source, entries, allowable, purseLeft.get(source.id));
      entries = bear(entries, source.id, total, entry => reaches(source, entry.row));
      purseLeft = afterGiving(purseLeft, source.id, total);
    }
  };
  giveInOrder('in kind');
  entries = bear(entries, PROGRAM_INCOME, Math.max(0, Math.min(usedInBudget(result), leftOf(entries))));
  entries = grantBears(entries, award, result.federal);
  giveInOrder('cash');
  const missing = leftOf(entries);
  entries = entries.map(entry => borne(entry, NOT_FOUND, entry.left));
  return {
    rows: entries.map(({ row, shares }) => ({ ...row, shares })),
    income: result,
    purse: purseLeft,
    findings: shareFindings(award, missing, result),
  };
}

/** A source without a share bears all that is left. */
const WHOLE = 1;

/** Income that pays for more of the project (addition) is not part of the budget that is shared. */
function usedInBudget(result: IncomeResult): Cents {
  return result.method === 'addition' ? 0 : result.income - result.unused;
}

/** What the grant bears: its share, no more than is left, within its cap and its caps by stage. */
function grantBears(entries: readonly Entry[], award: FundingSource, federal: Cents): readonly Entry[] {
  const most = Math.max(0, Math.min(federal, award.cap ?? federal, leftOf(entries)));
  const even = allocateOver(most, entries, entry => entry.left);
  const stages = award.stageCaps ?? {};
  const capped = Object.entries(stages).reduce(
    (parts, [stage, cap]) => underStageCap(parts, stage, cap),
    even,
  );
  return capped.map(({ item, amount }) => borne(item, award.id, amount));
}

function underStageCap(parts: Part<Entry>[], stage: string, cap: Cents): Part<Entry>[] {
  const inStage = parts.filter(part => part.item.row.stage === stage);
  if (sumCents(inStage.map(part => part.amount)) <= cap) return parts;
  const cut = new Map(allocateOver(cap, inStage, part => part.amount).map(part => [part.item, part.amount]));
  return parts.map(part => ({ item: part.item, amount: cut.get(part) ?? part.amount }));
}

/** The most a matching source gives: what it reaches, its share, what is left of its cap. */
function reachOf(
  source: FundingSource,
  entries: readonly Entry[],
  allowable: Cents,
  purse: Cents | undefined,
): Cents {
  const open = leftOf(entries.filter(entry => reaches(source, entry.row)));
  const share = source.share === undefined ? open : shareOf(allowable, source.share);
  return Math.max(0, Math.min(open, purse ?? open, share));
}

function reaches(source: FundingSource, row: BudgetRow): boolean {
  if (source.lineIds) return row.lineId !== undefined && source.lineIds.includes(row.lineId);
  if (row.isInKind) return false;
  return !source.stages || row.stage === undefined || source.stages.some(stage => stage === row.stage);
}

/** Books a total over what is left of the entries in reach. */
function bear(
  entries: readonly Entry[],
  sourceId: string,
  total: Cents,
  isInReach: (entry: Entry) => boolean = () => true,
): readonly Entry[] {
  const reached = (entry: Entry): Cents => (isInReach(entry) ? entry.left : 0);
  return allocateOver(total, entries, reached).map(({ item, amount }) => borne(item, sourceId, amount));
}

function borne(entry: Entry, sourceId: string, amount: Cents): Entry {
  if (amount === 0) return entry;
  return { ...entry, left: entry.left - amount, shares: { ...entry.shares, [sourceId]: amount } };
}

function leftOf(entries: readonly Entry[]): Cents {
  return sumCents(entries.map(entry => entry.left));
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
      meaning: 'it lowers neither the grant nor the match, and stays with the grantee unexplained',
      remedy: 'agree with the grantor what the rest of the income is for',
      rule: '2 CFR 200.307',
    });
  return findings;
}
