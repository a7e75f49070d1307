import { at } from '../../base';
import { homeOf, idOf, type Given, type Sheet, type Step } from '../../sheet';
import { STAGES } from '../../work';
import type { WholeParts } from './parts';
import type { Narrowing } from './risk-file';

/**
 * A given with a range, once for all the places of the sheets it stands in: a gate price is one price, whatever hauls
 * it is used for.
 */
export interface RangedGiven {
  /** From where it is held, so that it stays the same when lines are added. */
  readonly id: string;
  readonly title: string;
  /** Key of its column or block entry. */
  readonly column: string;
  /** Keys of the rows it stands in. */
  readonly rows: readonly string[];
  /** Ids in the work sheet, and in the money sheet. */
  readonly work: readonly string[];
  readonly money: readonly string[];
  readonly likely: number;
  readonly low: number;
  readonly high: number;
  /** How it is spread between its ends; most weight at the likely value unless the project says otherwise. */
  readonly shape?: 'pert' | 'triangular' | 'uniform' | 'lognormal' | 'discrete';
  /** Of a discrete one: what can come, with its probability. */
  readonly outcomes?: readonly { readonly value: string; readonly probability: string }[];
  /** Items whose lines and activities it moves. */
  readonly items: readonly string[];
  readonly stages: ReadonlySet<string>;
}

interface Cell {
  readonly sheet: 'work' | 'money';
  readonly id: string;
  readonly step: Step;
  readonly row: { readonly key: string; readonly title: string } | undefined;
  readonly given: Given;
}

/** What the planner decides is no uncertainty. */
const DECIDED = new Set([
  'shift-hours',
  'overtime-share',
  'contingency-share',
  'monitoring-years',
  'topside-share',
  'tax',
]);

/**
 * The givens of both sheets that have a range, grouped. Of the library's ranges the part is drawn that the risk file
 * says; a range given in the project stands as it is.
 */
export function rangedGivens(parts: WholeParts, narrowings: readonly Narrowing[] = []): RangedGiven[] {
  const cells = [...cellsOf(parts.work.sheet, 'work'), ...cellsOf(parts.money.sheet, 'money')];
  const groups = new Map<string, Cell[]>();
  for (const cell of cells) {
    const { value, low, high } = cell.given;
    const key = JSON.stringify([idFor(cell), value, low, high]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [cell]);
    else group.push(cell);
  }
  const stageOf = new Map(parts.items.map(item => [item.id, item.stage]));
  const taken = new Map<string, number>();
  return [...groups.values()].map(group => {
    const first = at(group, 0);
    const id = idFor(first);
    const again = taken.get(id) ?? 0;
    taken.set(id, again + 1);
    const whole = grouped(again === 0 ? id : `${id}#${again + 1}`, first, group, stageOf);
    return isOfLibrary(first.given) ? narrowed(whole, narrowings) : whole;
  });
}

function isOfLibrary({ place }: Given): boolean {
  return place === undefined || place.startsWith('templates/');
}

/** The part of a range about its likely value that the first narrowing that applies leaves. */
function narrowed(given: RangedGiven, narrowings: readonly Narrowing[]): RangedGiven {
  const rule = narrowings.find(
    ({ columns, held }) => columns.includes(given.column) || held.some(start => given.id.startsWith(start)),
  );
  if (rule === undefined) return given;
  const left = Number(rule.share.value);
  const { likely, low, high } = given;
  return { ...given, low: likely - left * (likely - low), high: likely + left * (high - likely) };
}

function* cellsOf(sheet: Sheet, name: Cell['sheet']): Generator<Cell> {
  const steps = [...sheet.tables.flatMap(t => t.placed), ...sheet.blocks.flatMap(b => b.entries())];
  for (const step of steps) {
    if (DECIDED.has(homeOf(step).key)) continue;
    for (const [i, given] of (step.kind.givens ?? []).entries()) {
      if (given === undefined || !isRanged(given)) continue;
      const row = step.scope?.rows[i];
      yield { sheet: name, id: idOf(step, row?.key), step, row, given };
    }
  }
}

function isRanged({ value, low, high, neutral, basis }: Given): boolean {
  if (value === undefined || neutral === true || basis === 'schedule') return false;
  const likely = Number(value);
  return Number(low ?? value) < likely || Number(high ?? value) > likely;
}

/** Where a given is held, without what changes when it is overridden, and its column where that says more. */
function idFor({ given, id, step }: Cell): string {
  const place = given.place ?? id;
  const held = place
    .replace(/^\/rates\/overrides\//, '')
    .replace(/^templates\/rates\//, '')
    .replace(/^templates\/work\/[^/]+\//, 'items/')
    .replace(/^templates\//, '')
    .replace(/^\//, '');
  const column = homeOf(step).key;
  const last = held.slice(held.lastIndexOf('/') + 1);
  return bare(last) === bare(column) ? held : `${held}/${column}`;
}

function bare(text: string): string {
  return text.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
}

function grouped(
  id: string,
  first: Cell,
  group: readonly Cell[],
  stageOf: ReadonlyMap<string, string>,
): RangedGiven {
  const { value, low, high } = first.given;
  const keys = group.flatMap(cell => (cell.row === undefined ? [] : [cell.row.key]));
  const items = [...new Set(keys.map(key => at(key.split('.'), 0)))].filter(item => stageOf.has(item));
  return {
    id,
    title: titleOf(first, group),
    column: homeOf(first.step).key,
    rows: keys,
    work: group.flatMap(cell => (cell.sheet === 'work' ? [cell.id] : [])),
    money: group.flatMap(cell => (cell.sheet === 'money' ? [cell.id] : [])),
    likely: Number(value),
    low: Number(low ?? value),
    high: Number(high ?? value),
    items,
    stages: new Set(STAGES.filter(stage => items.some(item => stageOf.get(item) === stage))),
  };
}

/** What it is called: of one row by the row, of many by where it is held. */
function titleOf({ step, row, given }: Cell, group: readonly Cell[]): string {
  const column = homeOf(step).title;
  if (row === undefined) return column;
  const { place } = given;
  const name =
    group.length === 1 || place === undefined
      ? row.title
      : at(place.split('/').slice(-2), 0).replaceAll('-', ' ');
  return `${column}: ${name}`;
}
