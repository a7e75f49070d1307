import type { Finding } from '../../base';
import { marginView, type BidView } from '../../evaluation';
import type { EstimateContext } from '../context';
import { reconciliationTable } from '../funding/sources';
import { asSentence, findingWords } from '../finding-words';
import { dollars } from '../number-text';
import type { Sentence } from '../rows';
import { bidId, bidOf } from './bid-of';
import { buildUpRows } from './build-up';
import { alternateTable, beginBid, itemChoices } from './choices';
import { offerTable } from './offer';
import { bidderTables, comparisonRows, percentText } from './received';
import type { BidRows } from './rows';
import { insideTable, sheetTable } from './sheet-tables';

/** The bid: the sheet that leaves, the sheet that stays, and what ties them to the estimate. */
export function bidRows(context: EstimateContext): BidRows {
  const view = bidOf(context.evaluation);
  const blocks = (one: Finding) => one.weight === 'blocks';
  return {
    sentence: sentence(view),
    missing: view.sheet === undefined ? view.findings.filter(blocks).map(findingWords) : [],
    sheet: sheetTable(view),
    offer: offerTable(context),
    alternates: alternateTable(context),
    inside: insideTable(view),
    buildUp: buildUpRows(context, view),
    reconciliation:
      view.schedule === undefined ? undefined : reconciliationTable(view.schedule.reconciliation),
    items: itemChoices(context),
    begin: beginBid(context, view),
    margin: marginWords(context),
    outside: OUTSIDE,
    comparison: comparisonRows(context),
    bidders: bidderTables(context),
    findings: view.findings.map(findingWords),
  };
}

/** What a bidder may take for part of the price, and is not. */
const OUTSIDE =
  'Hiring crews and letting them go is not in the price: what levelling of crews weighs by it, in the view of the schedule, is told beside the estimate. A bidder who wants it paid puts it into a rate or a mark-up.';

function sentence({ sheet, internal, findings }: BidView): Sentence {
  if (sheet === undefined) return ['There is no bid yet: a line of the estimate is absent.'];
  const blocking = findings.find(({ weight }) => weight === 'blocks');
  if (blocking !== undefined) return [asSentence(`No bid can be made yet: ${blocking.message}`)];
  const built = internal?.buildUp;
  const base = { text: dollars(sheet.baseBid), why: bidId('base') };
  if (built === undefined) return ['The base bid is ', base, '.'];
  return [
    `${sheet.items.length} items make a base bid of `,
    base,
    '; ',
    { text: dollars(built.price - built.direct), why: bidId('price') },
    ' of it are mark-ups.',
  ];
}

/** What is left of the price in the plan, and how far the cost may grow before it is gone. */
function marginWords({ evaluation }: EstimateContext): Sentence {
  const { plan, breakEvenGrowth } = marginView(evaluation);
  if (plan === undefined) return [];
  const growth =
    breakEvenGrowth === undefined
      ? ''
      : ` It is gone when the cost grows by ${percentText(breakEvenGrowth)}.`;
  return [
    'In the plan the margin is ',
    { text: dollars(plan.margin), why: bidId('mark-up', 'profit') },
    `, ${percentText(plan.share)} of the price.${growth}`,
  ];
}
