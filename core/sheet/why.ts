import { at } from '../base';
import { innerOf, type Inner } from './inner';
import { idIn, type SheetResult } from './result';
import type { Given } from './given';
import { unitIn, type Step } from './step';

/** One step of an explanation, with the ids of the steps it was calculated from. */
export interface WhyStep {
  /** table / row key / column key, block / key, look-up / key; a hidden step: its user's id and its place in it. */
  readonly id: string;
  readonly title: string;
  /** Exact decimal text; undefined when absent. */
  readonly value: string | undefined;
  readonly unit: string;
  /** What was done with the inputs, in their order. */
  readonly operation: string;
  /** Constants of the operation: rounding digits, settled decimals, the keys of a look-up entry. */
  readonly settings: Readonly<Record<string, string | number>>;
  /** The operation in words. */
  readonly words: string;
  readonly inputs: readonly string[];
  /** Leaves only: where the number comes from. */
  readonly given?: Pick<Given, 'basis' | 'source' | 'year' | 'low' | 'high' | 'typed'>;
}

/** The explanation of a figure: each step once, by id, the figure itself first. */
export interface Why {
  readonly root: string;
  readonly steps: ReadonlyMap<string, WhyStep>;
}

/**
 * Why a figure is what it is: every step down to the givens, also through a sheet that was run before.
 * @throws BugError when there is no such figure.
 */
export function why(result: SheetResult, id: string): Why {
  const steps = new Map<string, WhyStep>();
  const open: Visit[] = [{ result, inner: innerOf(result), cell: result.cellOf(id), id }];
  for (let visit = open.pop(); visit !== undefined; visit = open.pop()) {
    if (steps.has(visit.id)) continue;
    const next = visitsBelow(visit);
    const step = explained(
      visit,
      next.map(v => v.id),
    );
    steps.set(visit.id, step);
    for (const entry of entriesOf(visit)) steps.set(entry.id, entry);
    open.push(...next.reverse());
  }
  return { root: id, steps };
}

interface Visit {
  readonly result: SheetResult;
  readonly inner: Inner;
  readonly cell: number;
  readonly id: string;
}

const cellOf = ({ inner, cell }: Visit) => inner.order.at(cell);

/** The steps that this one was calculated from. */
function visitsBelow(visit: Visit): Visit[] {
  const { result, inner, id } = visit;
  const { step, row } = cellOf(visit);
  const before = step.kind.carried;
  const carriedId = before?.id(row);
  if (before && carriedId !== undefined)
    return [
      {
        result: before.from,
        inner: innerOf(before.from),
        cell: before.from.cellOf(carriedId),
        id: carriedId,
      },
    ];
  const operands = inner.order.operands(step, row);
  const shown = step.kind.shown?.(inner.values(operands)) ?? [...operands.keys()];
  return shown.flatMap(i => {
    const cell = at(operands, i);
    if (cell < 0) return [];
    const from = inner.order.at(cell);
    if (from.step.unit === 'text') return [];
    const own = from.step.home ? idIn(from.step, from.row) : `${id}.${i + 1}`;
    return [{ result, inner, cell, id: own }];
  });
}

/** The leaves that no one gave: the constants 0 and 1, and a total of no rows. */
const BY_DEFINITION = { basis: 'published', source: 'by definition' } as const;

function explained(visit: Visit, below: readonly string[]): WhyStep {
  const { step, row } = cellOf(visit);
  const given = step.kind.givens?.[row];
  const inRow = step.scope?.rows[row];
  const inputs = [...below, ...entriesOf(visit).map(entry => entry.id)];
  const value = visit.inner.text(visit.cell);
  const byDefinition = given === undefined && inputs.length === 0 && value !== undefined;
  const titles = step.inputs.map(input => input.home?.title ?? input.kind.words(...titlesOf(input.inputs)));
  const words = step.kind.words(...titles);
  const title =
    step.home === undefined ? words : inRow ? `${step.home.title}: ${inRow.title}` : step.home.title;
  return {
    id: visit.id,
    title,
    value,
    unit: unitIn(step, row),
    operation: step.kind.operation,
    settings: { ...step.kind.settings, ...entrySettings(visit) },
    words,
    inputs,
    ...(given && { given: provenanceOf(given) }),
    ...(byDefinition && { given: BY_DEFINITION }),
  };
}

function titlesOf(steps: readonly Step[]): string[] {
  return steps.map(step => step.home?.title ?? step.kind.operation);
}

function provenanceOf(given: Given): NonNullable<WhyStep['given']> {
  const { basis, source, year, low, high, typed } = given;
  return {
    basis,
    source,
    ...(year !== undefined && { year }),
    ...(low !== undefined && { low }),
    ...(high !== undefined && { high }),
    ...(typed !== undefined && { typed }),
  };
}

function usedEntry(visit: Visit) {
  const { step, row } = cellOf(visit);
  const operands = visit.inner.order.operands(step, row);
  return step.kind.entry?.(visit.inner.values(operands));
}

/** The key of the entry used and of the next one, so that a reader can check which entry applies. */
function entrySettings(visit: Visit): Record<string, string> {
  const used = usedEntry(visit);
  if (used === undefined) return {};
  const here = used.table.entries[used.entry]?.key;
  const next = used.table.entries[used.entry + 1]?.key;
  return { ...(here !== undefined && { entryKey: here }), ...(next !== undefined && { nextKey: next }) };
}

/** The look-up entry a step took its value from, as a leaf of its own. */
function entriesOf(visit: Visit): WhyStep[] {
  const used = usedEntry(visit);
  const entry = used?.table.entries[used.entry];
  if (used === undefined || entry === undefined) return [];
  return [
    {
      id: `${used.table.id}/${entry.key}`,
      title: `${used.table.title}: ${entry.title}`,
      value: entry.given.value,
      unit: used.table.unit,
      operation: 'given',
      settings: {},
      words: 'given',
      inputs: [],
      given: provenanceOf(entry.given),
    },
  ];
}
