import { at } from '../base';
import { STAGES, type StageKey } from '../work';
import { stageTitle } from '../estimate';
import type { EstimateContext } from './context';
import { ELEMENTS, type ElementKey } from './elements';
import { roundedDollars, wholeDollars } from './whole-dollars';

/** A line with its money in whole cents; absent where a given is missing. */
export interface MoneyLine {
  readonly id: string;
  readonly title: string;
  readonly stage: StageKey;
  readonly cents: Readonly<Record<ElementKey, number | undefined>>;
  readonly total: number | undefined;
}

/** The money of the lines, or none when there is no schedule. */
export function moneyLines({ summary }: EstimateContext): readonly MoneyLine[] {
  return (summary?.lines ?? []).map(line => {
    const cents = Object.fromEntries(
      ELEMENTS.map(element => [element, line.elements[element]?.cents]),
    ) as MoneyLine['cents'];
    return { id: line.id, title: line.title, stage: line.stage, cents, total: line.total?.cents };
  });
}

export type ShownColumn = ElementKey | 'total';
const COLUMNS: readonly ShownColumn[] = [...ELEMENTS, 'total'];

/** Money in whole dollars for showing: every column adds up, from lines to stages to the total. */
export interface ShownMoney {
  readonly lines: readonly MoneyLine[];
  readonly stages: readonly {
    readonly id: StageKey;
    readonly title: string;
    readonly lines: readonly MoneyLine[];
  }[];
  readonly line: (id: string, column: ShownColumn) => number | undefined;
  readonly stage: (id: string, column: ShownColumn) => number | undefined;
  readonly total: (column: ShownColumn) => number | undefined;
}

function centsOf(line: MoneyLine, column: ShownColumn): number | undefined {
  return column === 'total' ? line.total : line.cents[column];
}

function sumOf(lines: readonly MoneyLine[], column: ShownColumn): number | undefined {
  let sum = 0;
  for (const line of lines) {
    const cents = centsOf(line, column);
    if (cents === undefined) return undefined;
    sum += cents;
  }
  return sum;
}

/** Rounds the money of an estimate to whole dollars by largest remainder, from the total down to the lines. */
export function shownMoney(context: EstimateContext): ShownMoney {
  const lines = moneyLines(context);
  const stages = STAGES.map(id => ({
    id,
    title: stageTitle(id),
    lines: lines.filter(line => line.stage === id),
  })).filter(stage => stage.lines.length > 0);
  const shown = new Map<string, number>();
  const put = (kind: string, id: string, column: ShownColumn, value: number) =>
    shown.set(`${kind}/${id}/${column}`, value);
  const totals = context.summary === undefined ? NONE : totalsOf(lines);
  for (const column of COLUMNS) {
    const total = totals.get(column);
    if (total !== undefined) put('total', '', column, total);
    const sums = stages.map(stage => sumOf(stage.lines, column));
    const whole = spread(sums, total);
    stages.forEach((stage, place) => {
      const stageDollars = whole[place];
      if (stageDollars !== undefined) put('stage', stage.id, column, stageDollars);
      spread(
        stage.lines.map(line => centsOf(line, column)),
        stageDollars,
      ).forEach((value, row) => {
        if (value !== undefined) put('line', at(stage.lines, row).id, column, value);
      });
    });
  }
  const get = (kind: string) => (id: string, column: ShownColumn) => shown.get(`${kind}/${id}/${column}`);
  return { lines, stages, line: get('line'), stage: get('stage'), total: column => get('total')('', column) };
}

/** Without prices no column has a total, not even one of nothing. */
const NONE: ReadonlyMap<ShownColumn, number> = new Map();

/** The totals of the columns, which add up to the total. */
function totalsOf(lines: readonly MoneyLine[]): ReadonlyMap<ShownColumn, number> {
  const total = sumOf(lines, 'total');
  const whole = total === undefined ? undefined : roundedDollars(total);
  const columns = spread(
    ELEMENTS.map(element => sumOf(lines, element)),
    whole,
  );
  const found = new Map<ShownColumn, number>();
  ELEMENTS.forEach((element, place) => {
    const value = columns[place];
    if (value !== undefined) found.set(element, value);
  });
  if (whole !== undefined) found.set('total', whole);
  return found;
}

/** Whole dollars that add up to a total; where something is absent, each is rounded for itself. */
function spread(
  cents: readonly (number | undefined)[],
  total: number | undefined,
): readonly (number | undefined)[] {
  const known = cents.filter(amount => amount !== undefined);
  if (known.length === cents.length && total !== undefined) return wholeDollars(known, total);
  return cents.map(amount => (amount === undefined ? undefined : roundedDollars(amount)));
}
