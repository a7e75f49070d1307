import type { Finding } from '../../base';
import { compareQuotes, type Quote as ComparedQuote, type QuoteComparison } from '../../bid';
import { sumCents, type Cents } from '../../cash-flow';
import type { Quote } from '../../project';
import type { Evaluation } from '../evaluate';
import { quoteAmount } from '../line-quotes';
import { bookBasis, type BookBasis } from './book-lines';
import { faultsOfSection } from './faulty-section';
import { centsOfFigure } from './grant-input';

/** The quotes that stand for the same work, side by side. */
export interface QuoteScope {
  /** The ids of the items it covers, joined. */
  readonly scopeId: string;
  readonly itemIds: readonly string[];
  readonly title: string;
  /** The day the work starts in the plan: a quote must stand until then. */
  readonly neededOn?: string;
  /** What the estimate works the covered part out at, direct cost before mark-ups. */
  readonly computed?: Cents;
  /** The quote that is relied on. */
  readonly chosen?: string;
  readonly comparison: QuoteComparison;
}

/** The quotes of an evaluation by scope of work. */
export interface QuoteView {
  readonly scopes: readonly QuoteScope[];
  readonly findings: readonly Finding[];
}

/** The quotes side by side: those that share an item stand for one scope, each brought to it by its adjustments. */
export function quoteView(evaluation: Evaluation): QuoteView {
  const { quotes } = evaluation.project;
  if (quotes.length === 0) return { scopes: [], findings: [] };
  const { basis, findings } = bookBasis(evaluation);
  const faults = faultsOfSection(evaluation, '/quotes');
  if (basis === undefined || faults.length > 0) return { scopes: [], findings: [...findings, ...faults] };
  const scopes = groups(quotes).map(group => scopeOf(group, basis));
  return { scopes, findings: scopes.flatMap(findingsOf) };
}

/** The findings of a scope at a place of the document: the quote relied on, else the lowest. */
function findingsOf({ comparison, chosen }: QuoteScope): Finding[] {
  const at = chosen ?? comparison.rows[0]?.quote.id;
  const place = at === undefined ? '/quotes' : `/quotes/${at}`;
  return comparison.findings.map(finding => ({ ...finding, place }));
}

/** Quotes that share an item, directly or by a third, are of one scope. */
function groups(quotes: readonly Quote[]): Quote[][] {
  return quotes.reduce<Quote[][]>((known, quote) => {
    const same = known.filter(group => group.some(other => sharesItem(other, quote)));
    const apart = known.filter(group => !same.includes(group));
    return [...apart, [...same.flat(), quote]];
  }, []);
}

function sharesItem(a: Quote, b: Quote): boolean {
  return a.covers.some(one => b.covers.some(other => other.item === one.item));
}

function scopeOf(group: readonly Quote[], basis: BookBasis): QuoteScope {
  const itemIds = [...new Set(group.flatMap(quote => quote.covers.map(cover => cover.item)))];
  const scopeId = itemIds.join('+');
  const chosen = group.find(quote => quote.chosen);
  const neededOn = itemIds.flatMap(id => basis.spans.get(id)?.start ?? []).toSorted()[0];
  const computed = computedOf(group, basis);
  const compared = group.flatMap(quote => comparedQuote(quote, basis));
  const choice = chosen && {
    quoteId: chosen.id,
    ...(chosen.reason !== undefined && { reason: chosen.reason }),
  };
  return {
    scopeId,
    itemIds,
    title: basis.lines
      .filter(line => itemIds.includes(line.id))
      .map(line => line.title)
      .join(', '),
    ...(neededOn !== undefined && { neededOn }),
    ...(computed !== undefined && { computed }),
    ...(chosen && { chosen: chosen.id }),
    comparison: compareQuotes(scopeId, compared, choice, neededOn),
  };
}

function comparedQuote(quote: Quote, { parts }: BookBasis): ComparedQuote[] {
  const amount = quoteAmount(quote, quote.covers, parts.money);
  if (amount === undefined) return [];
  const { id, vendor, adjustments = [], validUntil } = quote;
  return [
    {
      id,
      supplier: vendor,
      amount: amount.cents,
      adjustments: adjustments.map(one => ({ title: one.title, amount: centsOfFigure(one.amount) })),
      validUntil,
    },
  ];
}

/** The largest share any of the quotes covers of each item, at the cost that the estimate works out without a quote. */
function computedOf(group: readonly Quote[], { parts }: BookBasis): Cents | undefined {
  const { result, lines } = parts.money;
  const shares = new Map<string, number>();
  for (const { item, share } of group.flatMap(quote => quote.covers))
    shares.set(item, Math.max(shares.get(item) ?? 0, Number(share)));
  const amounts = [...shares].flatMap(([item, share]) => {
    const whole = lines.scope.index.has(item) ? result.money(lines.columns.computed, item) : undefined;
    return whole === undefined ? [] : [Math.round(whole.cents * share)];
  });
  return amounts.length === shares.size ? sumCents(amounts) : undefined;
}
