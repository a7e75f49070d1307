import { at, BASES, UNCHECKED_BASES, keeping, known, recordOf, type Basis } from '../base';
import { allocate, fromCents, sumMoney, type Money } from '../money';
import { basisReader, idOf, type Step } from '../sheet';
import { STAGES, type StageKey } from '../work';
import type { LineColumns, MoneySheet, WorkSheet } from '../estimate';
import type { EstimateParts } from './evaluate';

/** The elements of cost, in their order. */
export const ELEMENTS = [
  'labour',
  'equipment',
  'material',
  'disposal',
  'subcontract',
  'fee',
  'mark-up',
] as const;
export type ElementKey = (typeof ELEMENTS)[number];

/** What a reader is told the elements are, in window and papers. */
export const ELEMENT_TITLES: Readonly<Record<ElementKey, string>> = {
  labour: 'Labour',
  equipment: 'Equipment',
  material: 'Material',
  disposal: 'Disposal, less scrap',
  subcontract: 'Subcontract',
  fee: 'Fee',
  'mark-up': 'Mark-ups',
};

/** One line of the estimate with its money; an absent figure is undefined. */
export interface EstimateLine {
  readonly id: string;
  readonly stage: StageKey;
  readonly title: string;
  readonly contract: boolean;
  readonly quantity: number | undefined;
  readonly unit: string;
  readonly hours: number | undefined;
  readonly elements: Readonly<Record<ElementKey, Money | undefined>>;
  readonly total: Money | undefined;
  /** The weakest basis of each element that is not nothing. */
  readonly bases: Readonly<Partial<Record<ElementKey, Basis>>>;
}

/** The estimate of a scenario in figures: what screens and papers show. */
export interface EstimateSummary {
  readonly lines: readonly EstimateLine[];
  readonly total: Money | undefined;
  readonly knownSoFar: Money | undefined;
  readonly contractCost: Money | undefined;
  readonly markUps: Money | undefined;
  readonly ownerCost: Money | undefined;
  readonly contingency: Money | undefined;
  readonly budget: Money | undefined;
  readonly scrapCredit: Money | undefined;
  readonly scrapIncome: Money | undefined;
  readonly byStage: Readonly<Record<StageKey, Money | undefined>>;
  readonly byElement: Readonly<Record<ElementKey, Money | undefined>>;
  /** Adds up to the total; each element by its weakest basis, mark-ups in proportion to the elements they follow. */
  readonly byBasis: Readonly<Record<Basis, Money>> | undefined;
  /** The share of the total that rests on figures nobody has checked. */
  readonly uncheckedShare: number | undefined;
}

/** Reads the summary from the money sheet. Sums that the sheet holds are read there; none is worked out anew. */
export function summarise({ work, money }: EstimateParts & { readonly money: MoneySheet }): EstimateSummary {
  return summaryOf(work, money);
}

const summaryOf = keeping(4, (work: WorkSheet, money: MoneySheet): EstimateSummary => {
  const { result, sums, stages } = money;
  const rows = new Map(work.rows.map(row => [row.item.id, row]));
  const lines = money.lines.scope.rows.map(({ key }) => lineOf(money, known(rows, key), key));
  const of = (step: Step) => result.money(step);
  const total = of(sums.total);
  const byBasis = basisSplit(lines);
  return {
    lines,
    total,
    knownSoFar: of(sums.knownSoFar),
    contractCost: of(sums.contractCost),
    markUps: of(sums.markUps),
    ownerCost: of(sums.ownerCost),
    contingency: of(sums.contingency),
    budget: of(sums.budget),
    scrapCredit: of(sums.scrapCredit),
    scrapIncome: of(sums.scrapIncome),
    byStage: recordOf(STAGES, stage => result.money(stages.columns.total, stage)),
    byElement: recordOf(ELEMENTS, element => sumOf(lines.map(line => line.elements[element]))),
    byBasis,
    uncheckedShare: byBasis && total && uncheckedShare(byBasis, total),
  };
});

function lineOf(money: MoneySheet, { item, own }: WorkSheet['rows'][number], key: string): EstimateLine {
  const { columns } = money.lines;
  const elements = recordOf(ELEMENTS, element => money.result.money(columnOf(columns, element), key));
  const read = readerOf(money);
  const bases = Object.fromEntries(
    ELEMENTS.flatMap(element => {
      if ((elements[element]?.cents ?? 0) === 0 || element === 'mark-up') return [];
      const basis = read(idOf(columnOf(columns, element), key));
      return basis === undefined ? [] : [[element, basis]];
    }),
  );
  return {
    id: key,
    stage: item.stage,
    title: item.title,
    contract: item.contract,
    quantity: money.result.number(columns.quantity, key),
    unit: own,
    hours: money.result.number(columns.hours, key),
    elements,
    total: money.result.money(columns.total, key),
    bases,
  };
}

const READERS = new WeakMap<MoneySheet, ReturnType<typeof basisReader>>();

function readerOf(money: MoneySheet): ReturnType<typeof basisReader> {
  const reader = READERS.get(money) ?? basisReader(money.result);
  READERS.set(money, reader);
  return reader;
}

/** The column of an element. */
export function columnOf(columns: LineColumns, element: ElementKey): Step<'USD'> {
  return element === 'mark-up' ? columns.markUp : columns[element];
}

const DIRECT = ELEMENTS.filter(element => element !== 'mark-up');

/** The total by basis: elements by their own, the line's mark-ups in proportion to its elements. */
function basisSplit(lines: readonly EstimateLine[]): Record<Basis, Money> | undefined {
  const parts = new Map<Basis, Money[]>(BASES.map(basis => [basis, []]));
  for (const line of lines) {
    const amounts = DIRECT.flatMap(element => {
      const amount = line.elements[element];
      return amount === undefined ? [] : [{ amount, basis: line.bases[element] ?? 'common practice' }];
    });
    const markUp = line.elements['mark-up'];
    if (markUp === undefined || amounts.length < DIRECT.length) return undefined;
    const weights = amounts.map(({ amount }) => Math.max(0, amount.cents));
    const shares = weights.some(weight => weight > 0)
      ? allocate(markUp, weights)
      : weights.map((_, i) => (i === 0 ? markUp : fromCents(0)));
    for (const [i, { amount, basis }] of amounts.entries()) known(parts, basis).push(amount, at(shares, i));
  }
  return recordOf(BASES, basis => sumMoney(known(parts, basis)));
}

function uncheckedShare(byBasis: Readonly<Record<Basis, Money>>, total: Money): number {
  const unchecked = sumMoney(UNCHECKED_BASES.map(basis => byBasis[basis]));
  return total.cents === 0 ? 0 : Math.round((unchecked.cents / total.cents) * 1e6) / 1e6;
}

function sumOf(amounts: readonly (Money | undefined)[]): Money | undefined {
  const given = amounts.filter(amount => amount !== undefined);
  return given.length === amounts.length ? sumMoney(given) : undefined;
}
