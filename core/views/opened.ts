import type { EstimateContext } from './context';
import type { BenefitRows } from './benefit/rows';
import { benefitRows } from './benefit/view';
import type { BidRows } from './bid/rows';
import { bidRows } from './bid/view';
import { evidenceView, type EvidenceView } from './evidence';
import type { FundingView } from './funding/rows';
import { fundingView } from './funding/view';
import type { MaterialsView } from './materials/rows';
import { materialsView } from './materials/view';
import type { ReviewView } from './review/rows';
import { reviewView } from './review/view';
import { scenariosView, type ScenariosView } from './scenarios';
import type { ShownMoney } from './shown-money';

/** Views that are made when they are opened, so that an edit elsewhere does not wait for them. */
export interface OpenedRows {
  readonly materials: MaterialsView;
  readonly funding: FundingView;
  readonly bid: BidRows;
  readonly review: ReviewView;
  readonly benefit: BenefitRows;
  readonly scenarios: ScenariosView;
  readonly evidence: EvidenceView;
}
export type OpenedName = keyof OpenedRows;

const MAKERS: {
  readonly [N in OpenedName]: (context: EstimateContext, money: ShownMoney) => OpenedRows[N];
} = {
  materials: materialsView,
  funding: fundingView,
  bid: bidRows,
  review: reviewView,
  benefit: benefitRows,
  scenarios: scenariosView,
  evidence: evidenceView,
};

/** Whether a view is one of these. */
export function isOpenedName(view: string): view is OpenedName {
  return Object.hasOwn(MAKERS, view);
}

/** The rows of one of these views. */
export function openedRows<N extends OpenedName>(
  name: N,
  context: EstimateContext,
  money: ShownMoney,
): OpenedRows[N] {
  return MAKERS[name](context, money);
}
