import type { Finding } from '../base';
import { dollars, sumCents, type Cents } from '../cash-flow';

/** A supplier's quote for a scope of work, and what it takes to make it comparable with the others. */
export interface Quote {
  readonly id: string;
  readonly supplier: string;
  readonly amount: Cents;
  /** What is missing from it (positive) or more than asked (negative). */
  readonly adjustments: readonly { readonly title: string; readonly amount: Cents }[];
  /** The last day it stands, `YYYY-MM-DD`. */
  readonly validUntil?: string;
}

/** The quote relied on, and why if it is not the lowest. */
export interface QuoteChoice {
  readonly quoteId: string;
  readonly reason?: string;
}

/** A quote made comparable. */
export interface LevelledQuote {
  readonly quote: Quote;
  readonly levelled: Cents;
  readonly overLowest: Cents;
}

/** The quotes of one scope side by side, the lowest first. */
export interface QuoteComparison {
  readonly rows: readonly LevelledQuote[];
  /** Highest less lowest, as a share of the lowest; absent with fewer than two quotes. */
  readonly spread?: number;
  readonly findings: readonly Finding[];
}

const ENOUGH_QUOTES = 3;

/**
 * Compares the quotes for a scope after bringing each to the same scope.
 * @param choice absent while none is relied on. @param neededOn the day the work is ordered, where it is known.
 */
export function compareQuotes(
  scopeId: string,
  quotes: readonly Quote[],
  choice?: QuoteChoice,
  neededOn?: string,
): QuoteComparison {
  const levelled = quotes
    .map(quote => ({ quote, levelled: quote.amount + sumCents(quote.adjustments.map(one => one.amount)) }))
    .sort((a, b) => a.levelled - b.levelled);
  const lowest = levelled[0]?.levelled ?? 0;
  const highest = levelled.at(-1)?.levelled ?? 0;
  const rows = levelled.map(row => ({ ...row, overLowest: row.levelled - lowest }));
  return {
    rows,
    ...(rows.length > 1 && lowest > 0 && { spread: (highest - lowest) / lowest }),
    findings: [
      ...(choice ? checkChoice(scopeId, rows, choice, neededOn) : [noneChosen(scopeId)]),
      ...checkCount(scopeId, quotes),
    ],
  };
}

function checkChoice(
  scopeId: string,
  rows: readonly LevelledQuote[],
  choice: QuoteChoice,
  neededOn: string | undefined,
): Finding[] {
  const place = `/quotes/${scopeId}`;
  const used = rows.find(row => row.quote.id === choice.quoteId);
  if (!used)
    return [
      warns(
        'bid/quote-not-there',
        place,
        `the quote ${choice.quoteId} is not among the quotes`,
        'choose one of them',
      ),
    ];
  const findings: Finding[] = [];
  if (used.overLowest > 0 && choice.reason === undefined)
    findings.push(
      warns(
        'bid/quote-not-lowest',
        place,
        `the quote used is ${dollars(used.overLowest)} above the lowest, and no reason is given`,
        'write down why, or use the lowest',
      ),
    );
  const { validUntil } = used.quote;
  if (validUntil !== undefined && neededOn !== undefined && validUntil < neededOn)
    findings.push(
      warns(
        'bid/quote-expired',
        place,
        `the quote used stands until ${validUntil}, the work is ordered on ${neededOn}`,
        'ask for it to be renewed, and widen its range until then',
      ),
    );
  return findings;
}

function noneChosen(scopeId: string): Finding {
  return {
    ...warns(
      'bid/quote-none-chosen',
      `/quotes/${scopeId}`,
      'no quote of this scope is relied on, so the worked-out cost stands',
      'choose a quote, or keep them as a second way to check the cost',
    ),
    weight: 'notes',
  };
}

function checkCount(scopeId: string, quotes: readonly Quote[]): Finding[] {
  if (quotes.length >= ENOUGH_QUOTES) return [];
  return [
    {
      ...warns(
        'bid/few-quotes',
        `/quotes/${scopeId}`,
        `there are ${quotes.length} quotes`,
        'ask for more, or say why fewer must do',
      ),
      weight: 'notes',
    },
  ];
}

const MEANINGS = {
  'bid/quote-not-there': 'nothing stands behind the choice, so the worked-out cost is used',
  'bid/quote-not-lowest': 'whoever reviews the price will ask why money was left on the table',
  'bid/quote-expired': 'its amount is used, but nobody is bound by it on that day',
  'bid/quote-none-chosen': 'the quotes are there to compare with and move no figure',
  'bid/few-quotes': 'whether the price is the going one, so few quotes cannot show',
} as const;

function warns(code: keyof typeof MEANINGS, place: string, message: string, remedy: string): Finding {
  return { code, weight: 'warns', place, message, meaning: MEANINGS[code], remedy };
}
