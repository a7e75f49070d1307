import { anyBlocks, type Finding } from '../base';
import { dollars, sumCents, type Cents, type EstimateLine } from '../cash-flow';
import { directRows } from './award-rows';
import { PROGRAM_INCOME, type SharedRow } from './budget-row';
import { labelsOf, type FormKind, type FormsData } from './forms';
import { awardIndirect, type AwardIndirect } from './indirect-rows';
import { narrativeOf, type NarrativeSentence } from './narrative';
import type { Contingency, FundingPlan, FundingSource } from './plan';
import { preAwardFindings } from './pre-award';
import type { IncomeMethod, IncomeResult } from './program-income';
import type { FundingRules } from './rules';
import { buildSf424a } from './sf-424a';
import { buildSf424c } from './sf-424c';
import { shareOut, type Purse } from './share-out';
import { tieOut, type GrantForm, type TieOutRow } from './tie-out';

/** One award: its rows shared out, its form, its narrative, and how they tie out. */
export interface Award {
  readonly source: FundingSource;
  readonly rows: readonly SharedRow[];
  readonly indirect: AwardIndirect;
  readonly income: IncomeResult;
  readonly form: GrantForm;
  readonly narrative: readonly NarrativeSentence[];
  readonly tieOut: readonly TieOutRow[];
}

/** What an award is made from. */
export interface AwardInput {
  readonly source: FundingSource;
  readonly lines: readonly EstimateLine[];
  readonly contingency?: Contingency | undefined;
  readonly income: { readonly amount: Cents; readonly method: IncomeMethod };
  readonly plan: FundingPlan;
  readonly rules: FundingRules;
  readonly forms: FormsData;
  readonly purse: Purse;
}

/** The award, absent when a finding blocks it; its indirect cost with the three results is there all the same. */
export interface AwardOutcome {
  readonly award?: Award;
  readonly indirect?: AwardIndirect;
  readonly purse: Purse;
  readonly findings: readonly Finding[];
}

/** Makes one award: scope, indirect cost, shares, form, narrative, tie-out. */
export function makeAward(input: AwardInput): AwardOutcome {
  const { source, plan, rules, forms, purse } = input;
  if (source.form === 'none' || !source.period) return { purse, findings: [] };
  const activities = plan.activities ?? forms.activities;
  const direct = directRows({
    lines: input.lines,
    contingency: input.contingency,
    period: { ...source.period, preAwardApproved: source.preAwardApproved === true },
    plan,
    rules,
    activities,
    mapping: plan.mapping?.[source.form] ?? forms.mappings[source.form],
  });
  const indirect = awardIndirect(direct.rows, source, plan, rules, activities);
  const rows = [...direct.rows, ...indirect.rows];
  const early = [
    ...direct.findings,
    ...indirect.findings,
    ...unknownClasses(rows, source.form, forms),
    ...creditsAbove(rows, source),
  ];
  if (anyBlocks(early)) return { indirect, purse, findings: early };
  const matching = plan.sources.filter(other => other.form === 'none');
  const shared = shareOut(rows, source, matching, input.income, purse);
  const form = fillForm(input, shared.rows, shared.income);
  const narrative = narrativeOf(shared.rows, {
    lines: input.lines,
    indirect,
    contingencyMethod:
      input.contingency?.method ?? 'estimated by a documented method, see the basis of estimate',
  });
  const award: Award = {
    source,
    rows: shared.rows,
    indirect,
    income: shared.income,
    form,
    narrative,
    tieOut: tieOut(form, rows, narrative),
  };
  return {
    award,
    indirect,
    purse: shared.purse,
    findings: [...early, ...preAwardFindings(rows, source, plan.awardDate), ...shared.findings],
  };
}

function fillForm(input: AwardInput, rows: readonly SharedRow[], income: IncomeResult): GrantForm {
  const { source, forms, plan } = input;
  const deducted = sumCents(
    rows.map(row => (income.method === 'deduction' ? (row.shares[PROGRAM_INCOME] ?? 0) : 0)),
  );
  if (source.form === 'SF-424C') return buildSf424c({ rows, award: source, forms, deducted });
  return buildSf424a({
    rows,
    award: source,
    sources: plan.sources,
    activities: plan.activities ?? forms.activities,
    forms,
    start: source.period?.start ?? plan.awardDate,
    programIncome: income.income,
  });
}

function unknownClasses(rows: readonly { classId: string }[], kind: FormKind, forms: FormsData): Finding[] {
  const special = kind === 'SF-424A' ? ['j'] : ['13'];
  const known = [...labelsOf(forms, kind).classes.map(one => one.id), ...special];
  const unknown = [...new Set(rows.map(row => row.classId))].filter(id => !known.includes(id));
  return unknown.map(id => ({
    code: 'funding/unknown-form-line',
    weight: 'blocks',
    place: '/funding/mapping',
    message: `the mapping sends cost to line ${id}, which ${kind} does not have`,
    meaning: 'no form is made while a cost has no line on it',
    remedy: `map it to one of ${known.join(', ')}`,
  }));
}

function creditsAbove(rows: readonly { allowable: Cents }[], source: FundingSource): Finding[] {
  const allowable = sumCents(rows.map(row => row.allowable));
  if (allowable >= 0) return [];
  return [
    {
      code: 'funding/credits-above-cost',
      weight: 'blocks',
      place: `/funding/sources/${source.id}`,
      message: `the allowable cost of ${source.title} is ${dollars(allowable)}: its credits are larger than its costs`,
      meaning: 'a grant cannot ask for less than nothing, so there is no form',
      remedy: 'put the credit on the source that bears the cost it lowers',
    },
  ];
}
