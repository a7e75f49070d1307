import { at, known, lowerFirst, withId } from '../base';
import type { WorkItem } from '../work';
import { aligned, basisCell, NOT_APPLYING, words } from './cells';
import type { LineBases } from './bases';
import { dollarCell, type EstimateContext } from './context';
import { ELEMENT_TITLES, ELEMENTS, type ElementKey } from './elements';
import { inMeasures } from './measures';
import { shownNumber } from './number-text';
import type { Column, Row, Shown, TableRows } from './rows';
import { ownUnit, timedCell, timedHours } from './timed';
import { rateOf } from './work-sentence';
import type { ShownColumn, ShownMoney } from './shown-money';
import { wholeDollars } from './whole-dollars';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Work item', kind: 'words' },
  { key: 'quantity', title: 'Quantity', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'rate', title: 'Rate', unit: 'h per unit', kind: 'number' },
  { key: 'hours', title: 'Hours', unit: 'h', kind: 'number' },
  ...ELEMENTS.map((element): Column => ({
    key: element,
    title: ELEMENT_TITLES[element],
    unit: '$',
    kind: 'number',
    wide: true,
  })),
  { key: 'total', title: 'Cost', unit: '$', kind: 'number' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
];

/** Hours of several items together. */
export function hoursOf(context: EstimateContext, items: readonly WorkItem[], why: string): Shown {
  const all = items.flatMap(item => timedHours(context, item) ?? []);
  if (all.length < items.length) return { text: 'not yet', absent: true, why };
  const sum = all.reduce((total, hours) => total + hours, 0);
  return { text: shownNumber(sum.toFixed(1), 0), why };
}

/** The work items of a stage. */
export function itemsOfStage(
  { parts }: EstimateContext,
  { lines }: ShownMoney['stages'][number],
): readonly WorkItem[] {
  const ids = new Set(lines.map(line => line.id));
  return parts.items.filter(item => ids.has(item.id));
}

const MONEY: readonly ShownColumn[] = [...ELEMENTS, 'total'];

/** The work as a plain table: stages, their items, and the total. */
export function workTable(context: EstimateContext, money: ShownMoney, bases: LineBases): TableRows {
  const byId = new Map(context.parts.items.map(item => [item.id, item]));
  const rows = money.stages.flatMap(stage => [
    stageRow(context, money, stage),
    ...stage.lines.map(line => lineRow(context, money, bases, known(byId, line.id))),
  ]);
  return {
    id: 'work',
    caption: 'Work items by stage',
    columns: COLUMNS,
    rows: aligned(COLUMNS, [...rows, totalRow(context, money)]),
  };
}

function moneyCells(
  get: (column: ShownColumn) => number | undefined,
  why: (column: ShownColumn) => string,
): Record<string, Shown> {
  return Object.fromEntries(MONEY.map(column => [column, dollarCell(get(column), why(column))]));
}

function stageRow(context: EstimateContext, money: ShownMoney, stage: ShownMoney['stages'][number]): Row {
  const items = itemsOfStage(context, stage);
  return {
    id: stage.id,
    kind: 'group',
    cells: {
      title: words(`${stage.title}  ${stage.lines.length}`),
      hours: hoursOf(context, items, `hours:${stage.id}`),
      ...moneyCells(
        column => money.stage(stage.id, column),
        column => (column === 'total' ? `stages/${stage.id}/total` : `stage:${stage.id}:${column}`),
      ),
    },
  };
}

function totalRow(context: EstimateContext, money: ShownMoney): Row {
  return {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('All work'),
      hours: hoursOf(context, context.parts.items, 'hours:all'),
      ...moneyCells(money.total, column => (column === 'total' ? 'sums/total' : `element:${column}`)),
    },
  };
}

function lineRow(context: EstimateContext, money: ShownMoney, bases: LineBases, item: WorkItem): Row {
  const quantity = timedCell(context, item, 'quantity', item.decimals);
  const hours = timedCell(context, item, 'hours', 0);
  const basis = bases(item.id);
  return {
    id: item.id,
    kind: 'line',
    under: item.stage,
    subject: item.id,
    cells: {
      title: words(item.title),
      quantity: quantityCell(context, item, quantity),
      unit: words(quantity.unit ?? ''),
      rate: rateOf(context, item) ?? NOT_APPLYING,
      hours: hours.text === '0' ? NOT_APPLYING : hours,
      ...moneyCells(
        column => money.line(item.id, column),
        column => `lines/${item.id}/${column}`,
      ),
      basis: basisCell(basis, undefined, `lines/${item.id}/total`),
    },
  };
}

function quantityCell(context: EstimateContext, item: WorkItem, shown: Shown): Shown {
  if (item.span !== undefined || item.disposes !== undefined) return shown;
  const unit = ownUnit(context, item.id);
  const value = shown.absent === true ? '' : shown.text.replaceAll(',', '');
  return {
    ...shown,
    edit: {
      at: `/items/${item.id}/quantity`,
      kind: 'figure',
      value,
      unit: inMeasures('0', unit, context.measures).unit,
      label: `Quantity of ${lowerFirst(item.title)}`,
    },
  };
}

const PAYEES: readonly {
  readonly id: string;
  readonly title: string;
  readonly elements: readonly ElementKey[];
}[] = [
  { id: 'crews', title: 'Crews and staff', elements: ['labour'] },
  { id: 'hired-plant', title: 'Hired plant', elements: ['equipment'] },
  { id: 'disposal', title: 'Disposal, less scrap', elements: ['disposal'] },
  { id: 'bought-in', title: 'Bought in', elements: ['material', 'subcontract'] },
  { id: 'fees', title: 'Fees', elements: ['fee'] },
  { id: 'mark-ups', title: 'Contractor’s mark-ups', elements: ['mark-up'] },
];

const PAYEE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Who is paid, for what', kind: 'words' },
  { key: 'stage', title: 'Stage', kind: 'words' },
  { key: 'element', title: 'Element', kind: 'words' },
  { key: 'total', title: 'Cost', unit: '$', kind: 'number' },
];

/** The same money by who is paid: crews and staff, hired plant, disposal, bought in, fees. */
export function payeeTable(_context: EstimateContext, money: ShownMoney): TableRows {
  const rows = PAYEES.flatMap(payee => {
    const parts = payee.elements.flatMap(element => elementRows(money, payee.id, element));
    const totals = payee.elements.flatMap(element => money.total(element) ?? []);
    const sum = totals.length < payee.elements.length ? undefined : totals.reduce((all, one) => all + one, 0);
    const why = `payee:${payee.elements.join('+')}`;
    return [
      {
        id: payee.id,
        kind: 'group' as const,
        cells: { title: words(payee.title), total: dollarCell(sum, why) },
      },
      ...parts,
    ];
  });
  const total: Row = {
    id: 'total',
    kind: 'total',
    cells: { title: words('All work'), total: dollarCell(money.total('total'), 'sums/total') },
  };
  return {
    id: 'payee',
    caption: 'Work by who is paid',
    columns: PAYEE_COLUMNS,
    rows: aligned(PAYEE_COLUMNS, [...rows, total]),
  };
}

/** Lines of one element, largest first, in dollars that add up to the element. */
function elementRows(money: ShownMoney, under: string, element: ElementKey): Row[] {
  const lines = money.lines.flatMap(line => {
    const cents = line.cents[element];
    return cents === undefined || cents === 0 ? [] : [{ line, cents }];
  });
  const shown = wholeDollars(
    lines.map(({ cents }) => cents),
    money.total(element),
  );
  return lines
    .map(({ line, cents }, place) => ({ line, cents, dollars: at(shown, place) }))
    .sort((a, b) => b.cents - a.cents)
    .map(({ line, dollars }): Row => ({
      id: `${under}-${element}-${line.id}`,
      kind: 'line',
      under,
      subject: line.id,
      cells: {
        title: words(line.title),
        stage: words(withId(money.stages, line.stage).title),
        element: words(ELEMENT_TITLES[element]),
        total: dollarCell(dollars, `lines/${line.id}/${element}`),
      },
    }));
}

const OPTION_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Choice', kind: 'words' },
  { key: 'value', title: 'Chosen', kind: 'words' },
  { key: 'effect', title: 'What it does', kind: 'words' },
];

/** The planner’s choices, which decide what items are in the work. */
export function optionTable({ evaluation, parts }: EstimateContext): TableRows {
  const rows = evaluation.library.options.map((option): Row => {
    const chosen = parts.input.options[option.id];
    const value = at(
      option.values,
      option.values.findIndex(one => one.id === chosen),
    );
    return {
      id: option.id,
      kind: 'line',
      cells: {
        title: words(option.title),
        value: {
          text: value.title,
          edit: {
            at: `/options/${option.id}`,
            kind: 'choice',
            value: value.id,
            choices: option.values.map(one => ({ id: one.id, title: one.title })),
            label: option.title,
          },
        },
        effect: words(value.effect),
      },
    };
  });
  return { id: 'options', caption: 'Choices of this scenario', columns: OPTION_COLUMNS, rows };
}
