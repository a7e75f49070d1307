import type { Finding } from '../../base';
import { amountIn, isConvertible, isUnit, quantity } from '../../units';
import type { InputCell } from './input-cells';

/** What somebody left in a cell of a workbook or a field of a CSV file. */
export type TypedContent =
  | { readonly kind: 'blank' }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'date'; readonly iso: string }
  | { readonly kind: 'other'; readonly words: string };

/** A row of the input cells as it came back. */
export interface TypedRow {
  /** Where the value stands, such as `Inputs!D12` or `row 12`. */
  readonly address: string;
  readonly key: string;
  readonly value: TypedContent;
  /** The unit that stands beside it. */
  readonly unit: string;
  /** Where the new value comes from, in the words of the person who typed it; empty when nothing was said. */
  readonly basis: string;
  readonly source: string;
}

/** The most decimals a figure of the document keeps. */
export const DECIMALS = 12;

/**
 * A typed value as decimal text in the unit of the cell; nothing for a blank; a finding with its address for anything
 * else: a text, a date, an error.
 */
export function readTyped({ address, value }: TypedRow, cell: InputCell): string | undefined | Finding {
  switch (value.kind) {
    case 'blank':
      return undefined;
    case 'number':
      return (
        decimalText(value.value) ?? faultOf(address, cell, `${value.value} is beyond what a figure can hold.`)
      );
    case 'date':
      return faultOf(
        address,
        cell,
        `There is a date, ${value.iso}, where an amount belongs.`,
        'Set the cell back to a plain number and type the amount: spreadsheets turn 3-4 into a date.',
      );
    case 'text':
      return textFault(address, value.text, cell);
    case 'other':
      return faultOf(address, cell, `There is ${value.words} where an amount belongs.`);
  }
}

/** A number as plain decimal text of at most twelve decimals; nothing when it is too large. */
function decimalText(value: number): string | undefined {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e15) return undefined;
  const plain = String(value);
  const fixed =
    /e/.test(plain) || (plain.split('.')[1]?.length ?? 0) > DECIMALS ? value.toFixed(DECIMALS) : plain;
  const trimmed = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return trimmed === '-0' ? '0' : trimmed;
}

function textFault(address: string, text: string, cell: InputCell): Finding {
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  const [, number = '', unit = ''] = /^\s*(-?\d+(?:\.\d+)?)\s*([A-Za-z0-9/$%]*)\s*$/.exec(text) ?? [];
  if (number !== '' && unit === '')
    return faultOf(
      address,
      cell,
      `"${shown}" is text that looks like a number.`,
      `Type ${number} as a number, not pasted as text: sums of the workbook pass text over.`,
    );
  if (number !== '' && isUnit(unit) && isUnit(cell.unit) && isConvertible(unit, cell.unit)) {
    const same = String(Number(amountIn(quantity(number, unit), cell.unit).toPrecision(10)));
    return faultOf(
      address,
      cell,
      `"${shown}" is in ${unit}; the cell is in ${cell.unit}.`,
      `Type ${same}, the same in ${cell.unit}, without the unit.`,
    );
  }
  return faultOf(address, cell, `"${shown}" is not an amount in ${unitWords(cell.unit)}.`);
}

/** A finding about a typed value: it is not taken, and the figure of the project stays. */
export function faultOf(address: string, cell: InputCell, message: string, remedy?: string): Finding {
  return {
    code: 'take-back/not-an-amount',
    weight: 'warns',
    place: address,
    message: `${cell.title}: ${message}`,
    meaning: 'Nothing was taken from this cell; the figure of the project stays.',
    remedy: remedy ?? `Type a plain number in ${unitWords(cell.unit)}, without the unit.`,
  };
}

export function unitWords(unit: string): string {
  return unit === '1' ? 'plain numbers' : unit;
}
