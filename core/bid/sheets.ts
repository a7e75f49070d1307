import { sumCents, type Cents, type Element, type EstimateLine } from '../cash-flow';
import type { BuildUp } from './mark-ups';
import type { ScheduleOfValues } from './schedule-of-values';

/** A row of the bid sheet: all that a bidder shows of an item. */
export interface BidSheetRow {
  readonly number: number;
  readonly title: string;
  readonly unit: string;
  readonly quantity: number;
  readonly unitPrice?: Cents;
  readonly amount: Cents;
  /** The owner has set the amount; the bid carries it as set. */
  readonly isAllowance?: boolean;
}

/** The bid sheet: prices alone. It is built from prices and titles and has no place for anything else. */
export interface BidSheet {
  readonly items: readonly BidSheetRow[];
  readonly baseBid: Cents;
  readonly alternates: readonly BidSheetAlternate[];
}

/** An alternate of the bid sheet; without an amount it is not priced yet, which is not the same as nothing. */
export interface BidSheetAlternate {
  readonly number: number;
  readonly title: string;
  readonly amount?: Cents;
}

/** A fact of the build-up: an hour, a wage, a production rate, a supplier. */
export interface BuildUpFact {
  readonly lineId: string;
  readonly title: string;
  readonly value: number | string;
}

/** The internal sheet: the whole build-up behind the prices. It never leaves. */
export interface InternalSheet {
  readonly items: readonly {
    readonly itemId: string;
    readonly title: string;
    readonly lines: readonly InternalLine[];
    readonly elements: Readonly<Record<Element, Cents>>;
    readonly cost: Cents;
  }[];
  readonly buildUp?: BuildUp;
  readonly markUpShares: readonly { readonly title: string; readonly share: number }[];
  /** Wages and burdened rates of the trades, and whatever else the prices rest on beyond a line. */
  readonly rates: readonly { readonly title: string; readonly unit: string; readonly value: number }[];
}

interface InternalLine {
  readonly lineId: string;
  readonly title: string;
  readonly amounts: Readonly<Record<Element, Cents>>;
  readonly total: Cents;
  /** Where its rates come from; of a line without rates of its own, the weakest of what it is worked out from. */
  readonly source: string;
  readonly facts: readonly { readonly title: string; readonly value: number | string }[];
}

/** The sheet that leaves: item numbers, titles, quantities and prices, nothing of what they are made of. */
export function bidSheet(schedule: ScheduleOfValues): BidSheet {
  return {
    items: schedule.items.map(({ item, unitPrice, amount }, index) => ({
      number: index + 1,
      title: item.title,
      unit: item.unit,
      quantity: item.quantity,
      ...(unitPrice !== undefined && { unitPrice }),
      amount,
      ...(item.allowance !== undefined && { isAllowance: true }),
    })),
    baseBid: schedule.baseBid,
    alternates: schedule.alternates.map(({ title, amount }, index) => ({
      number: index + 1,
      title,
      ...(amount !== undefined && { amount }),
    })),
  };
}

/** The sheet that stays: lines, elements, mark-ups and every fact of the build-up. */
export function internalSheet(
  schedule: ScheduleOfValues,
  lines: readonly EstimateLine[],
  facts: readonly BuildUpFact[],
  markUps: {
    readonly buildUp?: BuildUp;
    readonly shares: InternalSheet['markUpShares'];
    readonly rates?: InternalSheet['rates'];
  },
): InternalSheet {
  const items = schedule.items.map(({ item, cost }) => {
    const own = lines.filter(line => item.lineIds.includes(line.id));
    return {
      itemId: item.id,
      title: item.title,
      lines: own.map(line => internalLine(line, facts)),
      elements: elementSums(own),
      cost,
    };
  });
  return {
    items,
    ...(markUps.buildUp && { buildUp: markUps.buildUp }),
    markUpShares: markUps.shares,
    rates: markUps.rates ?? [],
  };
}

function internalLine(line: EstimateLine, facts: readonly BuildUpFact[]): InternalLine {
  return {
    lineId: line.id,
    title: line.title,
    amounts: line.amounts,
    total: line.total,
    source: line.rateSource ?? line.source,
    facts: facts.filter(fact => fact.lineId === line.id).map(({ title, value }) => ({ title, value })),
  };
}

function elementSums(lines: readonly EstimateLine[]): Record<Element, Cents> {
  const of = (element: Element): Cents => sumCents(lines.map(line => line.amounts[element]));
  return {
    labour: of('labour'),
    equipment: of('equipment'),
    material: of('material'),
    disposal: of('disposal'),
    subcontract: of('subcontract'),
    fee: of('fee'),
    markUp: of('markUp'),
  };
}
