import { at, type Finding } from '../base';
import { compareDecimals, quantity } from '../units';
import type { TripPoint } from './schema';
import { trips } from './trips';

/** A laboratory result as text, as it stood in the report. */
export interface LaboratoryCell {
  readonly result: string;
  readonly qualifier: string;
  readonly reportingLimit?: string | undefined;
}

/**
 * What a result says: a number; less than its reporting limit (never zero); not detected without any limit; a cell
 * without a result; or text that is no result.
 */
export type ReadResult =
  | { readonly kind: 'measured'; readonly value: string }
  | { readonly kind: 'below'; readonly limit: string }
  | { readonly kind: 'below-unknown' }
  | { readonly kind: 'empty' }
  | { readonly kind: 'text'; readonly text: string };

const NOT_DETECTED = /^(nd|n\.d\.|not detected|non-?detect|u|bdl|brl|<\s*rl)$/i;
const NUMBER = /^(\d+(?:\.\d+)?|\.\d+)\s*([a-z]*)$/i;
const LESS_THAN = /^<\s*(\d+(?:\.\d+)?|\.\d+)\s*u?$/i;

/** Reads a result cell. `<5` and `< 5.0 U` are below 5; `ND` and a number with qualifier U are below the reporting limit. */
export function readResult(cell: LaboratoryCell): ReadResult {
  const text = cell.result.trim().replaceAll(/(?<=\d),(?=\d{3}\b)/g, '');
  const flagged = /(^|[\s,;])(u|nd)($|[\s,;])/i.test(cell.qualifier);
  if (text === '') return flagged ? belowLimit(cell, undefined) : { kind: 'empty' };
  const less = LESS_THAN.exec(text);
  if (less !== null) return { kind: 'below', limit: plain(at(less, 1)) };
  if (NOT_DETECTED.test(text)) return belowLimit(cell, undefined);
  const number = NUMBER.exec(text);
  if (number === null) return { kind: 'text', text };
  const [, value = '', suffix = ''] = number;
  if (flagged || suffix.toUpperCase() === 'U') return belowLimit(cell, plain(value));
  return suffix === '' || suffix.toUpperCase() === 'J'
    ? { kind: 'measured', value: plain(value) }
    : { kind: 'text', text };
}

function belowLimit(cell: LaboratoryCell, stated: string | undefined): ReadResult {
  const limit = cell.reportingLimit ?? stated;
  return limit === undefined ? { kind: 'below-unknown' } : { kind: 'below', limit: plain(limit) };
}

function plain(text: string): string {
  return quantity(text, '1').value;
}

/** What a result says about a trip-point. */
export type Verdict = 'trips' | 'clears' | 'cannot tell';

/**
 * A result against a trip-point. Not detected clears only when everything below its reporting limit would clear; a
 * limit above the trip-point, no limit, an empty cell and text cannot tell.
 */
export function verdictOf(read: ReadResult, point: TripPoint): Verdict {
  if (read.kind === 'measured') return trips(point, read.value) ? 'trips' : 'clears';
  if (read.kind !== 'below') return 'cannot tell';
  return compareDecimals(read.limit, point.figure.value) <= 0 ? 'clears' : 'cannot tell';
}

/** Why a result cannot tell, as a finding; none when it can. */
export function resultFinding(
  read: ReadResult,
  point: TripPoint,
  place: string,
  sample: string,
): Finding | undefined {
  if (verdictOf(read, point) !== 'cannot tell') return undefined;
  return {
    code: `survey/${read.kind === 'below' ? 'reporting-limit-too-high' : 'no-result'}`,
    weight: 'warns',
    place,
    message: `Sample ${sample}: ${wordsFor(read, point)}`,
    meaning: 'Nobody can tell from it whether the material is there; the assumption by era stays.',
    remedy:
      read.kind === 'below'
        ? 'Ask the laboratory for a lower reporting limit or take another sample.'
        : 'Give the result, or the reporting limit it lies below.',
    rule: point.rule,
  };
}

function wordsFor(read: ReadResult, point: TripPoint): string {
  switch (read.kind) {
    case 'below':
      return `not detected below ${read.limit}, but the trip-point is ${point.figure.value}.`;
    case 'below-unknown':
      return 'not detected, without a reporting limit.';
    case 'text':
      return `"${read.text}" is not a result.`;
    default:
      return 'no result is given.';
  }
}
