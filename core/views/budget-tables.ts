import { at, known, withId } from '../base';
import { monthWords } from '../calendar';
import type { MoneySheet } from '../estimate';
import { dollarsOf } from '../money';
import { monthsOfLines } from '../papers';
import { idOf, type Step } from '../sheet';
import { aligned, words } from './cells';
import { ABSENT, dollarCell, type EstimateContext } from './context';
import { ELEMENT_TITLES, ELEMENTS } from './elements';
import { roundText, shownNumber } from './number-text';
import type { Column, Row, Shown, TableRows } from './rows';
import type { ShownColumn, ShownMoney } from './shown-money';
import { tenths } from './budget';
import { roundedDollars, wholeDollars } from './whole-dollars';

const MONEY_COLUMNS: readonly Column[] = ELEMENTS.map(element => ({
  key: element,
  title: ELEMENT_TITLES[element],
  unit: '$',
  kind: 'number',
}));
const TOTAL: Column = { key: 'total', title: 'Total', unit: '$', kind: 'number' };
const SHARE: Column = { key: 'share', title: 'Share', unit: '%', kind: 'share' };
const STAGE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Stage', kind: 'words' },
  ...MONEY_COLUMNS,
  TOTAL,
  SHARE,
];

/** The share of each amount in the total, and that of the total; none of them is known while an amount is not. */
function sharesOf(
  amounts: readonly (number | undefined)[],
  total: number | undefined,
): { readonly share: (place: number, why: string) => Shown; readonly whole: Shown } {
  const known = amounts.filter(amount => amount !== undefined);
  const absent = (why: string): Shown => ({ ...ABSENT, why });
  if (known.length < amounts.length || total === undefined)
    return { share: (_, why) => absent(why), whole: absent('sums/total') };
  const shares = tenths(known);
  return {
    share: (place, why) => ({ text: at(shares, place), why }),
    whole: { text: '100.0', why: 'sums/total' },
  };
}

/** Stages by element. */
export function stageTable(money: ShownMoney): TableRows {
  const { share, whole: all } = sharesOf(
    money.stages.map(stage => money.stage(stage.id, 'total')),
    money.total('total'),
  );
  const cells = (get: (column: ShownColumn) => number | undefined, why: (column: ShownColumn) => string) =>
    Object.fromEntries(
      [...ELEMENTS, 'total' as const].map(column => [column, dollarCell(get(column), why(column))]),
    );
  const rows = money.stages.map((stage, place): Row => {
    const whole = `stages/${stage.id}/total`;
    return {
      id: stage.id,
      kind: 'line',
      cells: {
        title: words(stage.title),
        ...cells(
          column => money.stage(stage.id, column),
          column => (column === 'total' ? whole : `stage:${stage.id}:${column}`),
        ),
        share: share(place, whole),
      },
    };
  });
  const total: Row = {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('Total'),
      ...cells(money.total, column => (column === 'total' ? 'sums/total' : `element:${column}`)),
      share: all,
    },
  };
  return {
    id: 'by-stage',
    caption: 'Budget by stage',
    columns: STAGE_COLUMNS,
    rows: aligned(STAGE_COLUMNS, [...rows, total]),
  };
}

/** A table of one amount a row with its share. */
function amountTable(
  id: string,
  caption: string,
  head: string,
  rows: readonly { id: string; title: string; amount: number | undefined; why: string }[],
  total: number | undefined,
): TableRows {
  const columns: readonly Column[] = [{ key: 'title', title: head, kind: 'words' }, TOTAL, SHARE];
  const { share, whole } = sharesOf(
    rows.map(row => row.amount),
    total,
  );
  const lines = rows.map((row, place): Row => ({
    id: row.id,
    kind: 'line',
    cells: {
      title: words(row.title),
      total: dollarCell(row.amount, row.why),
      share: share(place, row.why),
    },
  }));
  const sum: Row = {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('Total'),
      total: dollarCell(total, 'sums/total'),
      share: whole,
    },
  };
  return { id, caption, columns, rows: aligned(columns, [...lines, sum]) };
}

export function elementTable(money: ShownMoney): TableRows {
  const rows = ELEMENTS.map(element => ({
    id: element,
    title: ELEMENT_TITLES[element],
    amount: money.total(element),
    why: `element:${element}`,
  }));
  return amountTable('by-element', 'Budget by element', 'Element', rows, money.total('total'));
}

/** Parts of lines put together by a key, in whole dollars that add up to the total while each of them is known. */
function grouped(
  money: ShownMoney,
  parts: readonly { readonly key: string; readonly cents: number | undefined }[],
): ReadonlyMap<string, number | undefined> {
  const sums = new Map<string, number | undefined>();
  for (const { key, cents } of parts) {
    const before = sums.has(key) ? sums.get(key) : 0;
    sums.set(key, before === undefined || cents === undefined ? undefined : before + cents);
  }
  const present = [...sums.values()].filter(cents => cents !== undefined);
  if (present.length < sums.size)
    return new Map(
      [...sums].map(([key, cents]) => [key, cents === undefined ? cents : roundedDollars(cents)]),
    );
  const shown = wholeDollars(present, money.total('total'));
  return new Map([...sums.keys()].map((key, place) => [key, at(shown, place)]));
}

/** The money by material of concern: an item counts for the first material whose goal it meets. */
export function materialTable({ evaluation, parts }: EstimateContext, money: ShownMoney): TableRows {
  const meets = new Map(parts.items.map(item => [item.id, item.meets[0] ?? '']));
  const sums = grouped(
    money,
    money.lines.map(({ id, total }) => ({ key: known(meets, id), cents: total })),
  );
  const { materials } = evaluation.library;
  const rows = [...sums].map(([id, amount]) => ({
    id: id === '' ? 'none' : id,
    title: id === '' ? 'Not for one material' : withId(materials, id).title,
    amount,
    why: `material:${id}`,
  }));
  const ordered = rows.toSorted(
    (a, b) => Number(a.id === 'none') - Number(b.id === 'none') || (b.amount ?? 0) - (a.amount ?? 0),
  );
  return amountTable(
    'by-material',
    'Budget by material of concern',
    'Material',
    ordered,
    money.total('total'),
  );
}

/** The money by the month of spending, as the papers tell it: each line by the days of its work. */
export function monthTable({ parts, summary }: EstimateContext, money: ShownMoney): TableRows {
  const months = summary === undefined ? [] : [...monthsOfLines(parts, summary).values()].flat();
  const sums = grouped(
    money,
    months.map(({ month = '', amount }) => ({ key: month, cents: amount })),
  );
  const rows = [...sums]
    .toSorted(([a], [b]) => a.localeCompare(b))
    .map(([month, amount]) => ({
      id: month === '' ? 'none' : month,
      title: month === '' ? 'Without a month' : monthWords(month),
      amount,
      why: `month:${month}`,
    }));
  return amountTable('by-month', 'Budget by month of spending', 'Month', rows, money.total('total'));
}

const BUILD_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'From direct cost to total', kind: 'words' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
];

/** How the total is built up: contract work, mark-ups, the owner’s own cost; to the cent, because it ties out. */
export function buildUpTable({ parts }: EstimateContext): TableRows {
  const { money } = parts;
  const rows = money === undefined ? [] : buildUpRows(money);
  return {
    id: 'build-up',
    caption: 'Build-up of the total',
    columns: BUILD_COLUMNS,
    rows: aligned(BUILD_COLUMNS, rows),
  };
}

function buildUpRows({ sums, result }: MoneySheet): Row[] {
  const steps: readonly (readonly [string, Step<'USD'>, Row['kind']])[] = [
    ['Direct cost of contract work', sums.contractCost, 'line'],
    ['Mark-ups of the contractor', sums.markUps, 'line'],
    ['Owner’s own cost', sums.ownerCost, 'line'],
    ['Total', sums.total, 'total'],
    ['Of it: scrap kept by the contractor, as a lower price', sums.scrapCredit, 'line'],
    ['Beside it: scrap received by the owner, as income', sums.scrapIncome, 'line'],
  ];
  return steps.map(([title, step, kind]): Row => {
    const amount = result.money(step);
    const why = idOf(step);
    const shown =
      amount === undefined ? ABSENT : { text: shownNumber(roundText(String(dollarsOf(amount)), 2), 2) };
    return { id: why, kind, cells: { title: words(title), amount: { ...shown, why } } };
  });
}
