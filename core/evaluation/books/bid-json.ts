import type { InternalSheet, Margin } from '../../bid';
import type { Evaluation } from '../evaluate';
import type { JsonObject } from '../json';
import type { BidView } from './bid-view';
import { amountsJson, inDollars, reconciliationJson } from './in-dollars';
import type { MarginView } from './margin-view';
import type { QuoteView } from './quote-view';
import type { TabulationView } from './tabulation-view';

/** The bid as the command line prints it: prices, how they come from the estimate, and the bids received beside it. */
export function bidJson(
  { scenario, findings: evaluated }: Evaluation,
  { sheet, schedule, findings }: BidView,
  tabulation: TabulationView,
): JsonObject {
  const told = [...findings, ...tabulation.findings].filter(one => !evaluated.includes(one));
  const frame = { scenario: scenario.id, findings: [...evaluated, ...told] };
  if (sheet === undefined || schedule === undefined) return frame;
  return {
    ...frame,
    baseBid: inDollars(sheet.baseBid),
    items: sheet.items.map(({ unitPrice, amount, isAllowance, ...row }, index) => ({
      id: schedule.items[index]?.item.id,
      ...row,
      ...(unitPrice !== undefined && { unitPrice: inDollars(unitPrice) }),
      amount: inDollars(amount),
      ...(isAllowance === true && { allowance: true }),
    })),
    alternates: schedule.alternates.map(({ id, title, amount }) => ({
      id,
      title,
      ...(amount !== undefined && { amount: inDollars(amount) }),
    })),
    reconciliation: reconciliationJson(schedule.reconciliation),
    ...(tabulation.comparison && { comparison: comparisonJson(tabulation) }),
  };
}

function comparisonJson({ comparison, alternates, bids }: TabulationView): JsonObject {
  if (comparison === undefined) return {};
  return {
    estimate: inDollars(comparison.estimate),
    totals: comparison.totals.map(({ bidId, bidder, total, rank, overEstimate }) => ({
      id: bidId,
      bidder,
      ...(total !== undefined && { total: inDollars(total) }),
      ...(rank !== undefined && { rank }),
      ...(overEstimate !== undefined && { overEstimate: inDollars(overEstimate) }),
    })),
    rows: comparison.rows.map(({ item, byBid, median }) => ({
      id: item.id,
      title: item.title,
      unit: item.unit,
      quantity: item.quantity,
      estimate: inDollars(item.estimate),
      byBid: amountsJson(byBid),
      ...(median !== undefined && { median: inDollars(median) }),
    })),
    alternates: alternates.map(({ alternateId, title, estimate, byBid }) => ({
      id: alternateId,
      title,
      ...(estimate !== undefined && { estimate: inDollars(estimate) }),
      byBid: amountsJson(byBid),
    })),
    bids: bids.length,
  };
}

/** What stays in the house: the build-up, the quotes and the margin. */
export function internalJson(
  internal: InternalSheet | undefined,
  { scopes }: QuoteView,
  margin: MarginView,
): JsonObject {
  return {
    ...(internal && buildUpJson(internal)),
    quotes: scopes.map(({ scopeId, title, neededOn, computed, chosen, comparison }) => ({
      id: scopeId,
      title,
      ...(neededOn !== undefined && { neededOn }),
      ...(computed !== undefined && { computed: inDollars(computed) }),
      ...(chosen !== undefined && { chosen }),
      ...(comparison.spread !== undefined && { spread: comparison.spread }),
      rows: comparison.rows.map(({ quote, levelled, overLowest }) => ({
        id: quote.id,
        supplier: quote.supplier,
        ...amountsJson({ quoted: quote.amount, levelled, overLowest }),
      })),
    })),
    margin: marginJson(margin),
  };
}

function buildUpJson({ items, buildUp, markUpShares, rates }: InternalSheet): JsonObject {
  return {
    items: items.map(item => ({
      id: item.itemId,
      cost: inDollars(item.cost),
      elements: amountsJson(item.elements),
      lines: item.lines.map(({ lineId, title, amounts, total, source, facts }) => ({
        id: lineId,
        title,
        elements: amountsJson(amounts),
        total: inDollars(total),
        source,
        facts: facts.map(fact => ({ title: fact.title, value: fact.value })),
      })),
    })),
    ...(buildUp && {
      direct: inDollars(buildUp.direct),
      price: inDollars(buildUp.price),
      markUps: buildUp.markUps.map(({ id, title, amount }) => ({
        id,
        title,
        share: markUpShares.find(one => one.title === title)?.share,
        amount: inDollars(amount),
      })),
    }),
    rates,
  };
}

function marginJson({ price, plan, breakEvenGrowth, simulated }: MarginView): JsonObject {
  const at = ({ cost, margin, share }: Margin): JsonObject => ({ ...amountsJson({ cost, margin }), share });
  return {
    ...(price !== undefined && { price: inDollars(price) }),
    ...(plan && { plan: at(plan) }),
    ...(breakEvenGrowth !== undefined && { breakEvenGrowth }),
    ...(simulated && {
      p50: at(simulated.atP50),
      p80: at(simulated.atP80),
      chanceOfLoss: simulated.chanceOfLoss,
    }),
  };
}
