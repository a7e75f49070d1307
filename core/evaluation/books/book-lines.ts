import { recordOf, withId, type Finding } from '../../base';
import { ELEMENTS as BOOK_ELEMENTS, spreadByDays, type Element, type EstimateLine } from '../../cash-flow';
import type { MoneySheet } from '../../estimate';
import type { Money } from '../../money';
import type { Evaluation, EstimateParts } from '../evaluate';
import {
  summarise,
  type ElementKey,
  type EstimateLine as SummaryLine,
  type EstimateSummary,
} from '../summary';
import { lineHints } from './line-hints';
import { lineSpans, type LineSpan } from './line-spans';
import { lineWords, lineWorkings } from './line-words';

/** An estimate that has its money. */
export type PricedParts = EstimateParts & { readonly money: MoneySheet };

/** The estimate as the books read it: its lines in cents by month, and what else the books need of it. */
export interface BookBasis {
  readonly evaluation: Evaluation;
  readonly parts: PricedParts;
  readonly summary: EstimateSummary;
  readonly spans: ReadonlyMap<string, LineSpan>;
  readonly lines: readonly EstimateLine[];
}

/** The basis of the books, or why there is none: a book never leaves out a line that is absent. */
export interface BookOutcome {
  readonly basis?: BookBasis;
  readonly findings: readonly Finding[];
}

const KNOWN = new WeakMap<Evaluation, BookOutcome>();

/**
 * The lines of an evaluation as the books need them: amounts by element in cents, spread over the calendar days on
 * which the schedule has the work done. Absent while a line of the estimate is absent.
 */
export function bookBasis(evaluation: Evaluation): BookOutcome {
  const known = KNOWN.get(evaluation) ?? readBasis(evaluation);
  KNOWN.set(evaluation, known);
  return known;
}

function readBasis(evaluation: Evaluation): BookOutcome {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return { findings: [noMoney()] };
  const parts = { ...estimate, money: estimate.money };
  const summary = summarise(parts);
  const spans = lineSpans(parts);
  const absent = summary.lines.filter(line => !isTold(line));
  if (absent.length > 0) return { findings: absentLines(absent) };
  const lines = summary.lines.filter(isTold).map(line => bookLine(line, evaluation, parts, spans));
  return { basis: { evaluation, parts, summary, spans, lines }, findings: [] };
}

type ToldLine = SummaryLine & { readonly total: Money };

function isTold(line: SummaryLine): line is ToldLine {
  return line.total !== undefined;
}

/** The paid hours of a line. */
export function paidHours({ summary }: BookBasis, id: string): number {
  return withId(summary.lines, id).hours ?? 0;
}

function bookLine(
  line: ToldLine,
  evaluation: Evaluation,
  parts: PricedParts,
  spans: ReadonlyMap<string, LineSpan>,
): EstimateLine {
  const item = withId(parts.items, line.id);
  const total = line.total.cents;
  const span = spans.get(line.id);
  const { given: _given, ...words } = lineWords(line, parts.money);
  const driver = parts.input.library.drivers.find(({ id }) => id === item.driver)?.title;
  const workings = lineWorkings(line, driver);
  return {
    id: line.id,
    stage: line.stage,
    title: line.title,
    amounts: recordOf(BOOK_ELEMENTS, element => line.elements[elementKey(element)]?.cents ?? 0),
    total,
    contract: line.contract,
    ...words,
    ...(workings !== undefined && { workings }),
    months: span === undefined ? [] : spreadByDays(total, span.start, span.finish),
    ...lineHints(line, item, parts, evaluation.project.funding),
  };
}

/** The name that the summary of the estimate has for an element of the books. */
export function elementKey(element: Element): ElementKey {
  return element === 'markUp' ? 'mark-up' : element;
}

function noMoney(): Finding {
  return {
    code: 'books/no-estimate',
    weight: 'blocks',
    place: '/',
    message: 'There is no schedule and so no money: neither a grant budget nor a bid can be made.',
    meaning: 'Funding, Bid and Cash stay empty; what is entered there is kept.',
    remedy: 'Clear the findings that block the estimate.',
  };
}

/** So many lines without an amount are named one by one; more are told together. */
const NAMED = 3;

function absentLines(lines: readonly SummaryLine[]): Finding[] {
  const [first] = lines;
  if (first === undefined || lines.length <= NAMED) return lines.map(absentLine);
  const message = `${lines.length} lines have no amount, ${first.title} first, so the books are not made.`;
  return [{ ...absentLine(first), message, meaning: 'A budget or a bid without them would be too low.' }];
}

function absentLine(line: SummaryLine): Finding {
  return {
    code: 'books/line-absent',
    weight: 'blocks',
    place: `/items/${line.id}`,
    message: `${line.title} has no amount, so the books are not made.`,
    meaning: 'A budget or a bid without the line would be too low.',
    remedy: 'Clear the finding that withholds its figure, or leave the item out of the scenario.',
  };
}
