import { weakerBasis, type Basis } from '../base';
import { innerOf, type Inner } from './inner';
import type { SheetResult } from './result';

/** Terms that leave their result as it is: a factor of one in a product, nothing in a sum. */
const LEAVES_UNCHANGED: Readonly<Record<string, number>> = { product: 1, sum: 0, total: 0, 'total where': 0 };

/**
 * The weakest basis among the givens that a figure is worked out from: a chain is as strong as its weakest link. Flags,
 * rounding steps and dates weigh on nothing, nor do factors of one and terms of nothing.
 * @returns a reader of figures by id, which remembers what it has found; undefined where no given bears on the figure.
 */
export function basisReader(result: SheetResult): (id: string) => Basis | undefined {
  const readers = new Map<SheetResult, (cell: number) => Basis | undefined>();
  const readerOf = (of: SheetResult): ((cell: number) => Basis | undefined) => {
    const known = readers.get(of);
    if (known !== undefined) return known;
    const inner = innerOf(of);
    const found = new Map<number, Basis | undefined>();
    const read = (cell: number): Basis | undefined => {
      if (found.has(cell)) return found.get(cell);
      found.set(cell, undefined);
      const basis = basisOf(inner, cell, read, (from, id) => readerOf(from)(from.cellOf(id)));
      found.set(cell, basis);
      return basis;
    };
    readers.set(of, read);
    return read;
  };
  return id => readerOf(result)(result.cellOf(id));
}

type Carried = (from: SheetResult, id: string) => Basis | undefined;

function basisOf(
  inner: Inner,
  cell: number,
  read: (cell: number) => Basis | undefined,
  carried: Carried,
): Basis | undefined {
  const { step, row } = inner.order.at(cell);
  const { kind } = step;
  const given = kind.givens?.[row];
  if (given !== undefined)
    return given.neutral === true || given.basis === 'schedule' ? undefined : given.basis;
  if (kind.carried !== undefined) {
    const id = kind.carried.id(row);
    return id === undefined ? undefined : carried(kind.carried.from, id);
  }
  const operands = inner.order.operands(step, row);
  const values = kind.shown || kind.entry ? inner.values(operands) : [];
  const shown = kind.shown?.(values);
  const unchanged = LEAVES_UNCHANGED[kind.operation];
  const entry = kind.entry?.(values);
  const entryBasis = entry?.table.entries[entry.entry]?.given.basis;
  return weakest([
    ...(entryBasis === undefined || entryBasis === 'schedule' ? [] : [entryBasis]),
    ...operands.flatMap((operand, i) => {
      if (operand < 0 || shown?.includes(i) === false) return [];
      if (unchanged !== undefined && inner.equals(operand, unchanged)) return [];
      const basis = read(operand);
      return basis === undefined ? [] : [basis];
    }),
  ]);
}

function weakest(bases: readonly Basis[]): Basis | undefined {
  const [first, ...rest] = bases;
  return first && rest.reduce(weakerBasis, first);
}
