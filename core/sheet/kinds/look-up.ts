import { lookUpByIndex, stepOf } from '../columns/kernels';
import { roundOne } from '../columns/rounding';
import { asTrials } from '../columns/runs';
import { Exact, settle } from '../decimal';
import { one } from '../exactly';
import { call } from '../formula/term';
import type { Kind, Run } from '../kind';
import { entryValue, type LookUp } from '../look-up';
import { requireDigits, requireSettled } from '../looseness';
import { ABSENT, operandOf, tens } from '../quick/cells';
import { settled } from '../quick/settling';
import { wholeOfText } from '../quick/text';
import { makeStep, requireUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

/** What holds beyond the last key of a table. Before the first key a value is always absent. */
export type Beyond = 'absent' | 'hold the last';

/** Entry by key: the equal key, or in steps the last key not above it. */
type Find = (key: Exact) => number | undefined;

function finder(table: LookUp, inSteps: boolean, settledTo: number, beyond: Beyond): Find {
  const keys = table.entries.map(entry => new Exact(entry.key));
  const last = keys.length - 1;
  return raw => {
    const key = settle(raw, settledTo);
    const above = keys.findIndex(k => k.gt(key));
    const at = above < 0 ? last : above - 1;
    const found = keys[at];
    if (found === undefined) return undefined;
    if (at === last && key.gt(found)) return beyond === 'hold the last' ? last : undefined;
    return inSteps || found.eq(key) ? at : undefined;
  };
}

/** The greatest whole number of at most 15 digits. */
const MOST_TOLD = 999_999_999_999_999;

/** The same by doubles, which tell keys of at most 15 digits apart as their decimals do. */
function nearFinder(table: LookUp, inSteps: boolean, beyond: Beyond): (key: number) => number | undefined {
  const keys = Float64Array.from(table.entries, entry => Number(entry.key));
  const last = keys.length - 1;
  return key => {
    const at = stepOf(keys, key);
    const found = keys[at];
    if (found === undefined) return undefined;
    if (at === last && key > found) return beyond === 'hold the last' ? last : undefined;
    return inSteps || found === key ? at : undefined;
  };
}

function liveLookUp(table: LookUp, inSteps: boolean, settledTo: number, beyond: Beyond) {
  const keys = Float64Array.from(table.entries, entry => Number(entry.key));
  const values = Float64Array.from(table.entries, (_, i) => entryValue(table, i)?.toNumber() ?? NaN);
  const hold = beyond === 'hold the last';
  const last = keys.length - 1;
  const factor = 10 ** settledTo;
  const first = keys[0] ?? NaN;
  const consecutive = !inSteps && keys.every((key, i) => key === first + i);
  return (key: Float64Array, out: Float64Array): Run => {
    if (consecutive) return n => lookUpByIndex(out, key, factor, { values, first, hold }, n);
    return n => {
      for (let i = 0; i < n; i++) {
        const wanted = roundOne(key[i] ?? NaN, factor);
        const at = Number.isNaN(wanted) ? -1 : stepOf(keys, wanted);
        const past = at === last && wanted > (keys[last] ?? NaN);
        const found = past ? hold : inSteps || keys[at] === wanted;
        out[i] = (found ? values[at] : NaN) ?? NaN;
      }
    };
  };
}

function record(table: LookUp, inSteps: boolean, settledTo: number, beyond: Beyond): Kind {
  const find = finder(table, inSteps, settledTo, beyond);
  const isTelling = table.entries.every(entry => wholeOfText(entry.key) !== undefined);
  const findNear = nearFinder(table, inSteps, beyond);
  const live = liveLookUp(table, inSteps, settledTo, beyond);
  return {
    operation: inSteps ? 'step look-up' : 'look-up',
    settings: { table: table.id, settledTo, beyond },
    exact: one(key => entryValue(table, find(key))),
    quick: (cells, operands, out) => {
      const key = operandOf(operands, 0);
      if (cells.stateOf(key) === ABSENT) return cells.putAbsent(out);
      if (!isTelling || !settled(cells, key, settledTo) || Math.abs(cells.whole) > MOST_TOLD) return false;
      const text = table.entries[findNear(cells.whole / tens(cells.places)) ?? -1]?.given.value;
      if (text === undefined) return cells.putAbsent(out);
      const read = wholeOfText(text);
      return read !== undefined && cells.putWhole(out, read.whole, read.decimals);
    },
    reason: ([key]) => `${table.title} has no value for ${key?.toFixed() ?? ''} ${table.keyUnit}`,
    live: ([key], out) => live(asTrials(key, out.length), out),
    formula: context => {
      const names = context.lookUp(table);
      const settled = call('ROUND', context.term(0), settledTo);
      const held =
        !inSteps && beyond === 'hold the last' ? call('MIN', settled, call('MAX', names.keys)) : settled;
      return call('INDEX', names.values, call('MATCH', held, names.keys, inSteps ? 1 : 0));
    },
    entry: ([key]) => {
      const entry = key === undefined ? undefined : find(key);
      return entry === undefined ? undefined : { table, entry };
    },
    words: title => `${table.title} at ${title}`,
  };
}

function make<K extends SheetUnit, U extends SheetUnit>(
  table: LookUp<K, U>,
  key: Step<NoInfer<K>>,
  inSteps: boolean,
  settledTo: number,
  beyond: Beyond,
): Step<U> {
  const operation = `the key of ${table.title}`;
  requireUnit(operation, key, table.keyUnit);
  requireDigits(operation, settledTo);
  requireSettled(operation, key, 2);
  return makeStep(table.unit, record(table, inSteps, settledTo, beyond), [key], 0);
}

/**
 * The value at exactly this key, settled to stated decimals: an index by month.
 * @param beyond what holds after the last key; between or before keys the value is absent with a finding.
 */
export function lookUp<K extends SheetUnit, U extends SheetUnit>(
  table: LookUp<K, U>,
  key: Step<NoInfer<K>>,
  settledTo: number,
  beyond: Beyond,
): Step<U> {
  return make(table, key, false, settledTo, beyond);
}

/** The value at the last key not above this one: a tariff by length, a fee by award. */
export function stepLookUp<K extends SheetUnit, U extends SheetUnit>(
  table: LookUp<K, U>,
  key: Step<NoInfer<K>>,
  settledTo: number,
  beyond: Beyond,
): Step<U> {
  return make(table, key, true, settledTo, beyond);
}
