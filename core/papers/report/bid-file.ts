import { anyBlocks } from '../../base';
import { bidView } from '../../evaluation';
import { fromCents } from '../../money';
import { bidCautionsPart } from './basis-page';
import { NO_PRICE, pricedAs } from '../bid/bid-workbook';
import { SIGNED_LINES, offerLines, type OfferLine } from '../bid/offer';
import { sampleLine } from './decision-sheet';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, points, table, type Markup } from './markup';
import { stageSpans, stagesOverlap } from './time-chart';
import { dateWords, dollarsAndCents, numberWords } from './words';

/** Stages of the contractor, whose dates a bidder shows. */
const STAGES_SHOWN = ['yard', 'clean-up', 'topside', 'openings', 'acceptance', 'tow', 'sinking'];

/** The bid file: schedule of values, alternates, dates, what the price holds and leaves out. No cost stands in it. */
export function bidFilePages(facts: ReportFacts): Markup[] | undefined {
  const { sheet, findings } = bidView(facts.evaluation);
  if (sheet === undefined || anyBlocks(findings)) return undefined;
  const dollars = (cents: number) => dollarsAndCents(fromCents(cents));
  const { project, parts } = facts;
  const spans = stageSpans(parts).filter(({ stage }) => STAGES_SHOWN.includes(stage));
  return [
    element(
      'section',
      {},
      element('h1', {}, `Bid: ${project.title}`),
      sampleLine(project.sample),
      handLines(offerLines(facts.evaluation)),
      heading(2, 'Schedule of values'),
      table(
        'Items at their full price',
        [
          { title: 'Work' },
          { title: 'Unit' },
          { title: 'Quantity', figures: true },
          { title: 'Unit price, USD', figures: true },
          { title: 'Amount, USD', figures: true },
        ],
        sheet.items.map(item => [
          `${item.number}. ${item.title}`,
          item.unit,
          numberWords(item.quantity),
          item.unitPrice === undefined ? pricedAs(item) : dollars(item.unitPrice),
          dollars(item.amount),
        ]),
        ['Base bid', '', '', '', dollars(sheet.baseBid)],
      ),
      ...(sheet.alternates.length === 0
        ? []
        : [
            table(
              'Alternates, not in the base bid',
              [{ title: 'Alternate' }, { title: 'Adds or takes, USD', figures: true }],
              sheet.alternates.map(({ number, title, amount }) => [
                `${number}. ${title}`,
                amount === undefined ? NO_PRICE : dollars(amount),
              ]),
            ),
          ]),
    ),
    element(
      'section',
      {},
      heading(2, 'What the price holds'),
      points([
        `Prices are those of ${dateWords(project.rates.priceDate)}, brought to the month of each work.`,
        'Overhead, profit, bond, insurance and tax are inside each price.',
        'Scrap kept by the contractor is inside the prices as a credit.',
        'What no item names is not inside: the owner does it or pays for it.',
        'Materials beyond the survey are not inside; they are paid by change order, or by the unit price of an item that has one.',
      ]),
      heading(2, 'When'),
      table(
        'Stages from first start to last finish',
        [{ title: 'Stage' }, { title: 'Start', figures: true }, { title: 'Finish', figures: true }],
        spans.map(({ title, start, finish }) => [title, dateWords(start), dateWords(finish)]),
      ),
      stagesOverlap(spans)
        ? paragraph('A stage spans from its first to its last work item; stages overlap.')
        : undefined,
      paragraph('Dates are planned, not promised; tow and sinking wait for weather.'),
      ...bidCautionsPart(facts),
      signedPart(facts),
    ),
  ];
}

/** The offer in the bidder's name; an empty line where a hand is to write. */
function signedPart({ project, evaluation: { scenario } }: ReportFacts): Markup {
  return element(
    'div',
    { class: 'signed' },
    heading(2, 'Signed for the bidder'),
    paragraph(`The bidder offers the work of this bid, ${scenario.title}, to ${project.site.county}.`),
    handLines(SIGNED_LINES.map(title => ({ title }))),
  );
}

function handLines(lines: readonly OfferLine[]): Markup {
  return element(
    'dl',
    { class: 'hand' },
    ...lines.flatMap(({ title, words }) => [
      element('dt', {}, title),
      element('dd', words === undefined ? { class: 'empty' } : {}, words ?? ''),
    ]),
  );
}
