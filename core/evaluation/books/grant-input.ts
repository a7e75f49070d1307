import { sourceWithYear, type Figure } from '../../base';
import type { Cents, PaymentTerms } from '../../cash-flow';
import {
  perCentWords,
  termOf,
  type Contingency,
  type ContractClass,
  type FundingPlan,
  type FundingSource,
  type GrantInput,
  type IndirectChoice,
  type Scrap,
} from '../../funding';
import { roundToCents } from '../../money';
import type { Funding, FundingSourceChoice, Project } from '../../project';
import type { BookBasis } from './book-lines';
import { formMapping } from './form-mapping';
import type { BookRules } from './shipped-rules';

/** An amount of money of the document in cents. */
export function centsOfFigure(figure: Figure): Cents {
  return roundToCents(figure.value).cents;
}

/** The estimate and the funding section as what a grant budget is made from. */
export function grantInput(basis: BookBasis, funding: Funding, rules: BookRules): GrantInput {
  const contingency = contingencyOf(basis, funding);
  const scrap = scrapOf(basis);
  return {
    lines: basis.lines,
    ...(contingency && { contingency }),
    ...(scrap && { scrap }),
    plan: fundingPlan(basis, funding, rules),
  };
}

function fundingPlan({ lines, parts }: BookBasis, funding: Funding, rules: BookRules): FundingPlan {
  const { programIncome } = funding;
  return {
    awardDate: funding.awardDate,
    sources: funding.sources.map(sourceOf),
    contractClasses: classesOf(funding),
    indirect: indirectOf(funding),
    income: {
      ...(programIncome.method && { method: programIncome.method }),
      ...optional('costOfEarning', programIncome.costOfEarning),
    },
    notAllowable: funding.notAllowable.map(({ item, amount, reason }) => ({
      lineId: item,
      ...optional('amount', amount),
      reason,
    })),
    county: {
      ...optional('microPurchase', funding.county.microPurchase),
      ...optional('simplified', funding.county.simplified),
      ...optional('equipment', funding.county.equipment),
    },
    mapping: formMapping(lines, parts.items, rules.forms, funding.mapping),
    ...(funding.activities && { activities: funding.activities }),
    payment: paymentTerms(funding, rules),
  };
}

function optional<Key extends string>(key: Key, figure: Figure | undefined): Partial<Record<Key, Cents>> {
  const known: Partial<Record<Key, Cents>> = {};
  if (figure !== undefined) known[key] = centsOfFigure(figure);
  return known;
}

function sourceOf(choice: FundingSourceChoice): FundingSource {
  const { share, cap, stageCaps, stages, lines, valuation, period, programme, indirectLine } = choice;
  return {
    id: choice.id,
    title: choice.title,
    kind: choice.kind,
    form: choice.form,
    support: choice.support,
    ...(share && { share: Number(share.value) }),
    ...optional('cap', cap),
    ...(stageCaps.length > 0 && {
      stageCaps: Object.fromEntries(stageCaps.map(one => [one.stage, centsOfFigure(one.cap)])),
    }),
    ...(stages && { stages }),
    ...(lines && { lineIds: lines }),
    ...(valuation && { valuation: provenanceOf(valuation) }),
    ...(period && { period }),
    preAwardApproved: choice.preAwardApproved,
    mode: choice.mode,
    lagMonths: choice.lagMonths,
    ...(programme && { programme }),
    ...(indirectLine !== undefined && { indirectLine }),
  };
}

function provenanceOf({
  basis,
  source,
  year,
}: NonNullable<FundingSourceChoice['valuation']>): NonNullable<FundingSource['valuation']> {
  return { basis, source, ...(year !== undefined && { year }) };
}

function classesOf({ contracts }: Funding): Record<string, ContractClass> {
  return Object.fromEntries(
    contracts.flatMap(contract => (contract.class === undefined ? [] : [[contract.id, contract.class]])),
  );
}

function indirectOf({ indirect }: Funding): IndirectChoice {
  if (indirect.kind === 'none') return indirect;
  if (indirect.kind === 'negotiated')
    return { kind: 'negotiated', rate: Number(indirect.rate.value), agreement: indirect.agreement };
  return { kind: 'de minimis', ...(indirect.rate && { rate: Number(indirect.rate.value) }) };
}

/** The terms of the document; where it is silent, the usual ones, and the owner's own bills paid in their month. */
function paymentTerms({ payment }: Funding, { funding }: BookRules): PaymentTerms {
  return {
    retainage: payment.retainage ? Number(payment.retainage.value) : termOf(funding, 'retainage'),
    releaseAfterMonths: payment.releaseAfterMonths ?? termOf(funding, 'release-after'),
    contractPayLag: payment.contractPayLag ?? termOf(funding, 'contract-pay-lag'),
    ownPayLag: payment.ownPayLag ?? 0,
  };
}

function contingencyOf({ evaluation, summary }: BookBasis, funding: Funding): Contingency | undefined {
  const amount = summary.contingency?.cents;
  const { statusDate } = evaluation.project;
  if (amount === undefined) return undefined;
  return {
    amount,
    ...contingencyMethod(evaluation.project),
    isByAcceptedMethod: funding.contingency.byAcceptedMethod,
    isDocumented: funding.contingency.documented,
    isAcceptedByAgency: funding.contingency.acceptedByAgency,
    isReserve: funding.contingency.reserve,
    ...(statusDate !== undefined && { fromMonth: statusDate.slice(0, 7) }),
  };
}

/** How the contingency is estimated, as the narrative of an award says it. */
function contingencyMethod({ contingency, risk }: Project): Pick<Contingency, 'method'> {
  const { policy, share, confidence } = contingency;
  if (policy === 'confidence') {
    if (confidence === undefined) return {};
    const runs = `${risk?.trials ?? 'the'} simulated runs`;
    return {
      method: `its part of what keeps the cost of ${perCentWords(Number(confidence))} of ${runs} inside the budget, beyond the estimate`,
    };
  }
  if (share === undefined) return {};
  return {
    method: `its part of ${perCentWords(Number(share.value))} of the estimate; ${share.basis} (${sourceWithYear(share)})`,
  };
}

/** Scrap by who keeps it; the owner's price comes in when the last work that yields scrap is done. */
function scrapOf({ summary, parts, spans }: BookBasis): Scrap | undefined {
  const income = summary.scrapIncome?.cents ?? 0;
  const credit = summary.scrapCredit?.cents ?? 0;
  if (income === 0) return credit === 0 ? undefined : { amount: credit, keptBy: 'contractor' };
  const month = parts.items
    .filter(item => item.scrap !== undefined)
    .flatMap(item => spans.get(item.id)?.finish.slice(0, 7) ?? [])
    .toSorted()
    .at(-1);
  return { amount: income, keptBy: 'owner', ...(month !== undefined && { month }) };
}
