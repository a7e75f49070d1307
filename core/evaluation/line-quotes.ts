import { at, type Finding } from '../base';
import type { LineQuote, MoneySheet, PlannedItem } from '../estimate';
import { allocate, moneyText, roundToCents, type Money } from '../money';
import type { Project, Quote } from '../project';
import { convert, decimalProduct, isConvertible, isUnit, quantity } from '../units';
import {
  cannotSpread,
  carriedElsewhere,
  coveredTwice,
  quoteFindings,
  spreadFindings,
  type Cover,
  type SpreadLine,
} from './quote-findings';

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
    findings.push(...carriedElsewhere(quote, amounts, planned), ...spreadFindings(quote, amounts, computed));
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
  const { number, unit: own } = computed.result.at(computed.lines.columns.quantity, cover.item);
  const units = number === undefined ? undefined : inPriced(quantity(number, '1').value, own, unit);
  return units === undefined
    ? undefined
    : roundToCents(decimalProduct(decimalProduct(value, units), cover.share));
}

/** A quantity in the unit that a price is for, `ft` for `USD/ft`; none where that measures something else. */
function inPriced(amount: string, own: string, price: string): string | undefined {
  const [top, priced = '', ...rest] = price.split('/');
  if (top !== 'USD' || rest.length > 0 || !isUnit(own) || !isUnit(priced) || !isConvertible(own, priced))
    return undefined;
  return convert(quantity(amount, own), priced).value;
}
