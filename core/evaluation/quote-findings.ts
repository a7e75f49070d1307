import { withId, type Finding } from '../base';
import type { MoneySheet, PlannedItem } from '../estimate';
import { moneyText, type Money } from '../money';
import type { Quote } from '../project';
import { amountWords } from '../units';

export type Cover = Quote['covers'][number];

/** A covered line: its computed cost, and what the quote puts in its place. */
export interface SpreadLine {
  readonly cover: Cover;
  readonly before: Money;
  readonly amount: Money;
}

/** A quote further than this from the computed cost is asked about: times as much, or as little. Judgement. */
const FAR = 5;

/** What putting a quote in place of its lines does to them that the reader may not mean. */
export function spreadFindings(
  quote: Quote,
  covered: readonly SpreadLine[],
  { result, scrap }: Pick<MoneySheet, 'result' | 'scrap'>,
): Finding[] {
  const place = `/quotes/${quote.id}`;
  const whole = (of: (line: SpreadLine) => number) => covered.reduce((sum, line) => sum + of(line), 0);
  const quoted = whole(line => line.amount.cents);
  const computed = whole(({ before, cover }) => Math.round(before.cents * Number(cover.share)));
  const credit = whole(({ cover: { item, share } }) => {
    const kept = scrap.scope.index.has(item) ? result.money(scrap.columns.credit, item)?.cents : undefined;
    return Math.round((kept ?? 0) * Number(share));
  });
  const isFar = computed > 0 && (quoted * FAR < computed || quoted > computed * FAR);
  return [
    ...(isFar ? [farFrom(quote, place, quoted, computed)] : []),
    ...(credit > 0 ? [takesScrap(quote, place, credit)] : []),
  ];
}

const inWords = (cents: number) => amountWords({ value: (cents / 100).toFixed(2), unit: 'USD' });

function farFrom(quote: Quote, place: string, quoted: number, computed: number): Finding {
  return {
    code: 'quotes/far-from-computed',
    weight: 'warns',
    place: `${place}/amount`,
    message: `The quote of ${quote.vendor} comes to ${inWords(quoted)} for work that the estimate works out at ${inWords(computed)}.`,
    meaning: 'Its amount is used. A price for a unit taken as a lump sum, or work left out, looks like this.',
    remedy: 'See that its unit, its scope and the share it covers are right.',
  };
}

function takesScrap(quote: Quote, place: string, credit: number): Finding {
  return {
    code: 'quotes/takes-scrap',
    weight: 'notes',
    place,
    message: `The quote of ${quote.vendor} covers work whose scrap is worth ${inWords(credit)} to the contractor.`,
    meaning: 'The scrap counts as allowed for in its price: the credit is gone from the line.',
    remedy: 'Ask whether it is. If the scrap stays with you, enter the price less what the scrap brings.',
  };
}

/** What is to be said of a chosen quote itself: its date, and what of its work it leaves out. */
export function quoteFindings(quote: Quote, covered: number, today: string): Finding[] {
  const place = `/quotes/${quote.id}`;
  const found: Finding[] = [];
  if (quote.validUntil < today)
    found.push({
      code: 'quotes/expired',
      weight: 'warns',
      place,
      message: `The quote of ${quote.vendor} stood until ${quote.validUntil}; today is ${today}.`,
      meaning: 'Its amount is used, but nobody is bound by it.',
      remedy: 'Ask for a new date, or take the choice off it.',
    });
  const missing = quote.covers.length - covered;
  if (missing > 0)
    found.push({
      code: 'quotes/covers-other-work',
      weight: 'warns',
      place,
      message: `The quote of ${quote.vendor} covers ${missing} of its lines that this scenario does not have.`,
      meaning: 'Its whole amount stands on the lines that are there.',
      remedy: 'Ask for a quote of this scope.',
    });
  if (quote.exclusions.length > 0 || quote.covers.some(cover => Number(cover.share) < 1))
    found.push({
      code: 'quotes/covers-in-part',
      weight: 'notes',
      place,
      message: `The quote of ${quote.vendor} does not cover all of its lines${
        quote.exclusions.length > 0 ? `: it leaves out ${quote.exclusions.join('; ')}` : ''
      }.`,
      meaning: 'What it leaves out stays worked out.',
      remedy: 'See that the share covered of each line is right.',
    });
  return found;
}

/** Lines that cost little or nothing themselves, because lines beside the quote carry what they use. */
export function carriedElsewhere(
  quote: Quote,
  covered: readonly SpreadLine[],
  planned: readonly PlannedItem[],
): Finding[] {
  const items = planned.map(one => one.item);
  const isCovered = (id: string) => covered.some(({ cover }) => cover.item === id);
  return covered.flatMap(({ cover: { item }, before, amount }): Finding[] => {
    const carriers = items.filter(one => isCarrierOf(one, item) && !isCovered(one.id));
    if (amount.cents <= before.cents) return [];
    if (before.cents > 0 && carriers.length === 0) return [];
    return [
      carried(
        quote,
        withId(items, item).title,
        { before, amount },
        carriers.map(one => one.title),
      ),
    ];
  });
}

/** Whether an item stands for what another uses while it lasts: its span is that of the other alone. */
function isCarrierOf({ span }: PlannedItem['item'], id: string): boolean {
  return span !== undefined && [...span.from, ...span.to].every(one => one === id);
}

function carried(
  quote: Quote,
  title: string,
  { before, amount }: { readonly before: Money; readonly amount: Money },
  carriers: readonly string[],
): Finding {
  const words = (money: Money) => amountWords({ value: moneyText(money), unit: 'USD' });
  const cost = before.cents === 0 ? 'nothing' : words(before);
  const others =
    carriers.length === 0
      ? 'Other lines carry'
      : `${carriers.map(one => `“${one}”`).join(', ')} ${carriers.length === 1 ? 'carries' : 'carry'}`;
  return {
    code: 'quotes/carried-elsewhere',
    weight: 'warns',
    place: `/quotes/${quote.id}`,
    message: `The quote of ${quote.vendor} puts ${words(amount)} on “${title}”, which cost ${cost} before. ${others} what it uses.`,
    meaning: 'The quote is counted beside those lines, so the same work may be paid for twice.',
    remedy: 'Let the quote price those lines too, or leave them out of the work.',
  };
}

/** A line that two chosen quotes cover. */
export function coveredTwice(quote: Quote, item: string): Finding {
  return {
    code: 'quotes/covered-twice',
    weight: 'warns',
    place: `/quotes/${quote.id}`,
    message: `Another chosen quote covers ${item} already; that of ${quote.vendor} is not used.`,
    meaning: 'A line is paid for once, so only the first of them stands in the estimate.',
    remedy: 'Choose one of the two.',
  };
}

/** A quote whose amount cannot be put in place of its lines. */
export function cannotSpread(quote: Quote): Finding {
  return {
    code: 'quotes/no-amount',
    weight: 'warns',
    place: `/quotes/${quote.id}/amount`,
    message: `${amountWords(quote.amount)} of ${quote.vendor} cannot be put in place of the lines it covers.`,
    meaning: 'The computed figures stay.',
    remedy:
      Number(quote.amount.value) < 0
        ? 'An amount below zero prices no work: take the minus away, or leave the quote out.'
        : 'Give a lump sum, or a price for a unit that the one line it covers is measured in.',
  };
}
