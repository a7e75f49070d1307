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
  type BuildUp,
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
  const internal = internalSheet(schedule, basis.lines, factsOf(basis), {
    ...markUpsOf(basis),
    rates: wagesOf(basis),
  });
  return {
    schedule,
    sheet: bidSheet(schedule),
    internal,
    findings: [...schedule.findings, ...namedSuppliers(evaluation, schedule)],
  };
}

/** Titles of the bid that name a supplier: the sheet that leaves would tell who is behind a price. */
function namedSuppliers({ project }: Evaluation, schedule: ScheduleOfValues): Finding[] {
  const titles = [...schedule.items.map(one => one.item), ...schedule.alternates];
  return project.quotes.flatMap(({ vendor }) =>
    titles
      .filter(({ title }) => title.toLowerCase().includes(vendor.toLowerCase()))
      .map(({ id, title }) => ({
        code: 'bid/names-supplier',
        weight: 'warns',
        place: `/bid/items/${id}`,
        message: `The bid sheet names ${vendor} in "${title}".`,
        meaning: 'Whoever reads the bid knows who quoted for it.',
        remedy: 'Write the title without the name.',
      })),
  );
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
  return { id, title, ...(amount && { amount: centsOfFigure(amount) }) };
}

/** Hours, production rates, crew rates, quantities and vendors behind the prices. */
function factsOf({ parts, summary, evaluation }: BookBasis): BuildUpFact[] {
  const contract = summary.lines.filter(line => line.contract);
  const { money, work } = parts;
  const figures = contract.flatMap(({ id, hours, quantity }) => [
    ...fact(id, 'Hours', hours),
    ...fact(id, 'Hours for one', numberAt(work.result, `items/${id}/hours-per-unit`)),
    ...fact(id, 'Crew rate', numberAt(money.result, `lines/${id}/crew-rate`)),
    ...fact(id, 'Quantity', quantity),
  ]);
  const vendors = evaluation.project.quotes.flatMap(quote =>
    quote.covers.map(cover => ({ lineId: cover.item, title: 'Vendor', value: quote.vendor })),
  );
  return [...figures, ...vendors];
}

function fact(lineId: string, title: string, value: number | undefined): BuildUpFact[] {
  return value === undefined || value === 0 ? [] : [{ lineId, title, value }];
}

function numberAt(result: BookBasis['parts']['money']['result'], id: string): number | undefined {
  return result.has(id) ? result.figure(id).number : undefined;
}

/** The wage and the burdened rate of each trade. */
function wagesOf({ parts }: BookBasis): InternalSheet['rates'] {
  const kinds = [
    ['wage', 'wage'],
    ['contractor', 'with burdens'],
  ] as const;
  return parts.input.library.rateBook.trades.flatMap(({ id, title }) =>
    kinds.flatMap(([column, words]) => {
      const value = numberAt(parts.money.result, `trades/${id}/${column}`);
      return value === undefined ? [] : [{ title: `${title}, ${words}`, unit: 'USD/h', value }];
    }),
  );
}

function markUpsOf({ lines, parts }: BookBasis): {
  readonly buildUp: BuildUp;
  readonly shares: InternalSheet['markUpShares'];
} {
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
