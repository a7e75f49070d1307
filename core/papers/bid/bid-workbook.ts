import type { BidSheet, BidSheetRow } from '../../bid';
import type { Cents } from '../../cash-flow';
import { bidView, type Evaluation } from '../../evaluation';
import { anyBlocks } from '../../base';
import { dollarsOf, fromCents } from '../../money';
import { headingRow, moneyFormula, text } from '../workbook/cells';
import { SIGNED_LINES, offerLines, type OfferLine } from './offer';
import type { PaperCell, PaperSheet, PaperWorkbook } from '../workbook/model';

const FIRST_ROW = 5;
const VALUES = 'Schedule of values';
const HEADINGS = ['Item', 'Work', 'Unit', 'Quantity', 'Unit price, USD', 'Amount, USD'];

/** What a bid file says beside its prices. */
export interface BidFrame {
  readonly title: string;
  readonly date: string;
  /** Set on invented examples: the file says so. */
  readonly sample: boolean;
  /** Who offers what to whom: lines without words are left to be filled by hand. */
  readonly offer: readonly OfferLine[];
}

/**
 * The bid file of an evaluation.
 * @returns nothing while there is no bid, or a finding blocks it: a part would pass for the price.
 */
export function bidWorkbook(evaluation: Evaluation): PaperWorkbook | undefined {
  const { sheet, findings } = bidView(evaluation);
  if (sheet === undefined || anyBlocks(findings)) return undefined;
  const { project, today } = evaluation;
  return bidPaper(sheet, {
    title: project.title,
    date: today,
    sample: project.sample,
    offer: offerLines(evaluation),
  });
}

/**
 * The bid sheet as a workbook: schedule of values, base bid, alternates, who offers. It is made from the bid sheet alone, which
 * has no place for hours, wages, production rates, mark-ups or suppliers.
 */
export function bidPaper(sheet: BidSheet, frame: BidFrame): PaperWorkbook {
  return {
    title: `${frame.title}: bid`,
    date: frame.date,
    names: [],
    sheets: [
      valuesSheet(sheet, frame),
      ...(sheet.alternates.length === 0 ? [] : [alternatesSheet(sheet, frame)]),
      offerSheet(sheet, frame),
    ],
  };
}

function valuesSheet({ items, baseBid }: BidSheet, frame: BidFrame): PaperSheet {
  const guard = FIRST_ROW + items.length;
  return {
    name: VALUES,
    cells: [
      ...head(`Schedule of values: ${frame.title}`, frame.sample),
      text(2, 1, 'Each item at its full price, overhead, profit, bond, insurance and tax included.', 'note'),
      ...headingRow(FIRST_ROW - 1, HEADINGS),
      ...items.flatMap((item, i) => itemCells(item, FIRST_ROW + i)),
      text(guard, 2, 'Put new items in above this row.', 'note'),
      text(guard + 1, 2, 'Base bid', 'total'),
      moneyFormula(guard + 1, 6, `ROUND(SUM(F${FIRST_ROW}:F${guard}),2)`, fromCents(baseBid), 'total'),
    ],
    widths: [8, 60, 14, 14, 18, 20],
    headingRows: FIRST_ROW - 1,
    landscape: true,
  };
}

/** What stands in place of the amount of an alternate that is not priced yet. */
export const NO_PRICE = 'no price';

/** What stands in place of the price of one unit where none is asked for. */
export function pricedAs({ isAllowance }: BidSheetRow): string {
  return isAllowance === true ? 'allowance' : 'lump sum';
}

function itemCells(item: BidSheetRow, row: number): PaperCell[] {
  return [
    text(row, 1, String(item.number)),
    text(row, 2, item.isAllowance === true ? `${item.title} (allowance, as set by the owner)` : item.title),
    text(row, 3, item.unit),
    {
      row,
      column: 4,
      content: { kind: 'number', value: item.quantity, decimals: undefined, role: 'result' },
    },
    ...(item.unitPrice === undefined
      ? [text(row, 5, pricedAs(item)), money(row, 6, item.amount)]
      : [
          money(row, 5, item.unitPrice),
          moneyFormula(row, 6, `ROUND(D${row}*E${row},2)`, fromCents(item.amount)),
        ]),
  ];
}

function alternatesSheet({ alternates }: BidSheet, frame: BidFrame): PaperSheet {
  return {
    name: 'Alternates',
    cells: [
      ...head(`Alternates: ${frame.title}`, frame.sample),
      text(2, 1, 'What each adds to the base bid, or takes from it. They are not in the base bid.', 'note'),
      ...headingRow(FIRST_ROW - 1, ['Alternate', 'Work', 'Adds or takes', 'Amount, USD']),
      ...alternates.flatMap(({ number, title, amount }, i) => [
        text(FIRST_ROW + i, 1, String(number)),
        text(FIRST_ROW + i, 2, title),
        ...(amount === undefined
          ? [text(FIRST_ROW + i, 3, NO_PRICE)]
          : [text(FIRST_ROW + i, 3, amount < 0 ? 'takes' : 'adds'), money(FIRST_ROW + i, 4, amount)]),
      ]),
    ],
    widths: [10, 60, 14, 20],
    headingRows: FIRST_ROW - 1,
    landscape: true,
  };
}

/** Who offers, to whom and until when, with the base bid as the schedule has it, and lines to sign on. */
function offerSheet({ items, baseBid }: BidSheet, frame: BidFrame): PaperSheet {
  const { offer } = frame;
  const base = FIRST_ROW + offer.length;
  return {
    name: 'Offer',
    cells: [
      ...head(`Offer: ${frame.title}`, frame.sample),
      text(2, 1, 'What is empty is to be filled in by the bidder.', 'note'),
      ...headingRow(FIRST_ROW - 1, ['Of the offer', 'Words']),
      ...offer.flatMap(({ title, words }, i) => [
        text(FIRST_ROW + i, 1, title),
        ...(words === undefined ? [] : [text(FIRST_ROW + i, 2, words)]),
      ]),
      text(base, 1, 'Base bid', 'total'),
      moneyFormula(base, 2, `'${VALUES}'!F${FIRST_ROW + items.length + 1}`, fromCents(baseBid), 'total'),
      ...SIGNED_LINES.map((title, i) => text(base + 2 + i, 1, title)),
    ],
    widths: [28, 80],
    headingRows: FIRST_ROW - 1,
    landscape: true,
  };
}

function head(title: string, sample: boolean): PaperCell[] {
  return [
    text(1, 1, title, 'title'),
    ...(sample ? [text(3, 1, 'Invented example: not an offer.', 'caution')] : []),
  ];
}

function money(row: number, column: number, amount: Cents): PaperCell {
  return {
    row,
    column,
    content: { kind: 'money', value: dollarsOf(fromCents(amount)), role: 'input' },
  };
}
