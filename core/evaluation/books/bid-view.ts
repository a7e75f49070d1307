import type { Finding } from '../../base';
import {
  bidSheet,
  findLeaks,
  internalSheet,
  scheduleOfValues,
  secretsOf,
  type Alternate,
  type BidItem,
  type BidSheet,
  type BuildUpFact,
  type InternalSheet,
  type Leak,
  type ScheduleOfValues,
} from '../../bid';
import { sumCents } from '../../cash-flow';
import type { BidChoices } from '../../project';
import type { WorkItem } from '../../work';
import type { Evaluation } from '../evaluate';
import { bookBasis, type BookBasis } from './book-lines';
import { faultsOfSection } from './faulty-section';
import { centsOfFigure } from './grant-input';

/** The bid of an evaluation: the sheet that leaves, the sheet that stays, and what ties them to the estimate. */
export interface BidView {
  readonly schedule?: ScheduleOfValues;
  readonly sheet?: BidSheet;
  readonly internal?: InternalSheet;
  readonly findings: readonly Finding[];
}

/** The bid view. Without items of its own the project is bid by the headings of the work library. */
export function bidView(evaluation: Evaluation): BidView {
  const { basis, findings } = bookBasis(evaluation);
  const faults = faultsOfSection(evaluation, '/bid');
  if (basis === undefined || faults.length > 0) return { findings: [...findings, ...faults] };
  const choices = evaluation.project.bid;
  const items = bidItems(basis, choices);
  const schedule = scheduleOfValues(basis.lines, items, (choices?.alternates ?? []).map(alternateOf));
  const internal = internalSheet(schedule, basis.lines, factsOf(basis), markUpsOf(basis));
  return { schedule, sheet: bidSheet(schedule), internal, findings: schedule.findings };
}

/** Looks for anything of the internal sheet in what is about to leave. */
export function bidLeaks(contents: readonly (string | number)[], { sheet, internal }: BidView): Leak[] {
  return sheet && internal ? findLeaks(contents, secretsOf(internal, sheet)) : [];
}

function bidItems({ parts, lines }: BookBasis, choices: BidChoices | undefined): BidItem[] {
  const contract = parts.items.filter(item => lines.some(line => line.id === item.id && line.contract));
  if (choices === undefined || choices.items.length === 0) return headings(contract);
  return choices.items.map(({ id, title, unit, quantity, unitPriced, allowance, ...of }) => ({
    id,
    title,
    unit,
    quantity: quantity ? Number(quantity.value) : 1,
    isUnitPriced: unitPriced,
    lineIds: [
      ...of.lines,
      ...contract
        .filter(item => of.headings.includes(item.bidItem) && !isNamed(choices, item.id))
        .map(item => item.id),
    ],
    ...(allowance && { allowance: centsOfFigure(allowance) }),
  }));
}

/** An item named on its own stands there, not under its heading. */
function isNamed(choices: BidChoices, itemId: string): boolean {
  return choices.items.some(item => item.lines.includes(itemId));
}

function headings(contract: readonly WorkItem[]): BidItem[] {
  return [...new Set(contract.map(item => item.bidItem))].map(title => ({
    id: title.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-'),
    title,
    unit: 'lump sum',
    quantity: 1,
    isUnitPriced: false,
    lineIds: contract.filter(item => item.bidItem === title).map(item => item.id),
  }));
}

function alternateOf({ id, title, amount }: BidChoices['alternates'][number]): Alternate {
  return { id, title, amount: centsOfFigure(amount) };
}

/** Hours, crew rates and vendors behind the prices. */
function factsOf({ parts, summary, evaluation }: BookBasis): BuildUpFact[] {
  const contract = summary.lines.filter(line => line.contract);
  const hours = contract.flatMap(({ id, hours: value }) =>
    value === undefined || value === 0 ? [] : [{ lineId: id, title: 'Hours', value }],
  );
  const rates = contract.flatMap(({ id }) => {
    const value = parts.money.result.figure(`lines/${id}/crew-rate`).number;
    return value === undefined || value === 0 ? [] : [{ lineId: id, title: 'Crew rate', value }];
  });
  const vendors = evaluation.project.quotes.flatMap(quote =>
    quote.covers.map(cover => ({ lineId: cover.item, title: 'Vendor', value: quote.vendor })),
  );
  return [...hours, ...rates, ...vendors];
}

function markUpsOf({ lines, parts }: BookBasis): Parameters<typeof internalSheet>[3] {
  const { library, overrides } = parts.input;
  const { result } = parts.money;
  const contract = lines.filter(line => line.contract);
  const markUps = library.rateBook.markUps.map(({ id, title }) => ({
    id,
    title,
    amount: sumCents(
      contract.map(line => Math.round((result.figure(`lines/${line.id}/${id}`).number ?? 0) * 100)),
    ),
  }));
  const price = sumCents(contract.map(line => line.total));
  const direct = price - sumCents(contract.map(line => line.amounts.markUp));
  const shares = library.rateBook.markUps.map(({ id, title, share }) => ({
    title,
    share: Number((overrides.get(`markUps/${id}/share`) ?? share).value),
  }));
  return { buildUp: { direct, markUps, price }, shares };
}
