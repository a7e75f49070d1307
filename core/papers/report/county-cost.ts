import { lowerFirst } from '../../base';
import { mostCarried } from '../../cash-flow';
import { grantView, type Evaluation } from '../../evaluation';
import { fromCents } from '../../money';
import { paragraph, type Markup } from './markup';
import { dollarsAndCents, monthWords } from './words';

/** What the county pays in all and of what, and what it has out at most; nothing without a grant budget. */
export function countyCostPart(evaluation: Evaluation): Markup | undefined {
  const { cash } = grantView(evaluation);
  if (cash === undefined) return undefined;
  const { county, view } = cash.cash;
  const dollars = (cents: number): string => dollarsAndCents(fromCents(cents));
  const { outsideSteps } = county;
  const steps = outsideSteps.map(({ title, amount }) =>
    outsideSteps.length === 1 ? lowerFirst(title) : `${lowerFirst(title)} ${dollars(amount)}`,
  );
  const left = steps.length === 0 ? '' : ` (${steps.join(', ')})`;
  const parts = [
    `its share of the forms, ${dollars(county.share)}`,
    ...(county.outside === 0 ? [] : [`what nobody else bears, ${dollars(county.outside)}${left}`]),
    ...(county.unfunded === 0 ? [] : [`${dollars(county.unfunded)} that no source bears yet`]),
  ];
  const told = parts.length === 1 ? '' : `: ${parts.slice(0, -1).join(', ')}, and ${parts.at(-1) ?? ''}`;
  const most = mostCarried(view);
  return paragraph(
    `The county pays in all ${dollars(county.total)}${told}. `,
    view.peak === undefined
      ? 'It lends nothing beyond its own share.'
      : `At the end of ${monthWords(view.peak.month)} it lends ${dollars(view.peak.amount)} beyond its own share.`,
    most === undefined
      ? ''
      : ` It has ${dollars(most.amount)} out at most, at the end of ${monthWords(most.month)}.`,
  );
}
