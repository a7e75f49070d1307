import { at, withId, type Finding } from '../base';
import type { LineQuote, MoneySheet, PlannedItem } from '../estimate';
import { allocate, moneyText, roundToCents, type Money } from '../money';
import type { Project, Quote } from '../project';
import { amountWords, decimalProduct, quantity } from '../units';

/** What the chosen quotes put in place of lines, and what is to be said of them. */
export interface QuotedLines {
  readonly quotes: ReadonlyMap<string, LineQuote>;
  readonly findings: readonly Finding[];
}

/**
 * The chosen quotes, each spread over the lines it covers to the cent, in proportion to the computed direct cost of what
 * it covers of each. A price per unit is multiplied by the quantity of the line first.
 * @param computed the money sheet without any quote.
 * @param today `YYYY-MM-DD`.
 * @param planned the items of the scenario, for lines that carry the cost of another.
 */
export function quotedLines(
  project: Project,
  computed: MoneySheet,
  today: string,
  planned: readonly PlannedItem[],
): QuotedLines {
  const quotes = new Map<string, LineQuote>();
  const findings: Finding[] = [];
  for (const quote of project.quotes.filter(candidate => candidate.chosen)) {
    const covered = quote.covers.filter(cover => computed.lines.scope.index.has(cover.item));
    findings.push(...quoteFindings(quote, covered.length, today));
    const twice = covered.find(cover => quotes.has(cover.item));
    if (twice !== undefined) {
      findings.push(coveredTwice(quote, twice.item));
      continue;
    }
    const amounts = spread(quote, covered, computed);
    if (amounts === undefined) {
      findings.push(cannotSpread(quote));
      continue;
    }
    findings.push(...carriedElsewhere(quote, amounts, planned));
    for (const { cover, amount } of amounts)
      quotes.set(cover.item, {
        covered: cover.share,
        amount: moneyText(amount),
        source: `Quote of ${quote.vendor}, ${quote.dated}`,
        place: `/quotes/${quote.id}`,
      });
  }
  return { quotes, findings };
}

type Cover = Quote['covers'][number];

/** A covered line: its computed cost, and what the quote puts in its place. */
interface SpreadLine {
  readonly cover: Cover;
  readonly before: Money;
  readonly amount: Money;
}

/** The amount for each covered line, exact to the cent; none when the quote's unit, or a computed figure, is missing. */
function spread(quote: Quote, covered: readonly Cover[], computed: MoneySheet): SpreadLine[] | undefined {
  const whole = quoteAmount(quote, covered, computed);
  const { result, lines } = computed;
  const known = covered.flatMap(cover => {
    const before = result.money(lines.columns.computed, cover.item);
    return before === undefined ? [] : [{ cover, before }];
  });
  // Below zero it is refused as a figure of the document; nothing is put in place of the lines.
  if (whole === undefined || whole.cents < 0 || covered.length === 0 || known.length < covered.length)
    return undefined;
  const ratios = known.map(({ cover, before }) =>
    decimalProduct(String(Math.max(0, before.cents)), cover.share),
  );
  const amounts = allocate(whole, ratios.some(ratio => ratio !== '0') ? ratios : known.map(() => 1));
  return known.map((line, i) => ({ ...line, amount: at(amounts, i) }));
}

/** What a quote comes to, for what it covers of the lines that are there; none when its unit does not fit. */
export function quoteAmount(
  quote: Quote,
  covered: readonly Cover[],
  computed: MoneySheet,
): Money | undefined {
  const { value, unit } = quote.amount;
  if (unit === 'USD') return roundToCents(value);
  const [cover] = covered;
  if (cover === undefined || covered.length > 1) return undefined;
  const number = computed.result.at(computed.lines.columns.quantity, cover.item);
  if (unit !== `USD/${number.unit}` || number.number === undefined) return undefined;
  return roundToCents(decimalProduct(decimalProduct(value, quantity(number.number, '1').value), cover.share));
}

function quoteFindings(quote: Quote, covered: number, today: string): Finding[] {
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
function carriedElsewhere(
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

function coveredTwice(quote: Quote, item: string): Finding {
  return {
    code: 'quotes/covered-twice',
    weight: 'warns',
    place: `/quotes/${quote.id}`,
    message: `Another chosen quote covers ${item} already; that of ${quote.vendor} is not used.`,
    meaning: 'A line is paid for once, so only the first of them stands in the estimate.',
    remedy: 'Choose one of the two.',
  };
}

function cannotSpread(quote: Quote): Finding {
  return {
    code: 'quotes/no-amount',
    weight: 'warns',
    place: `/quotes/${quote.id}/amount`,
    message: `${quote.amount.value} ${quote.amount.unit} of ${quote.vendor} cannot be put in place of the lines it covers.`,
    meaning: 'The computed figures stay.',
    remedy: 'Give a lump sum in USD, or a price for the unit of the one line it covers.',
  };
}
