import { onlyOther } from '../only-other';
import { BugError } from '../../base';
import { addWhere } from '../columns/kernels';
import { addAll, asTrials } from '../columns/runs';
import { ZERO, plus, type Exact, type Value } from '../decimal';
import { folded } from '../exactly';
import { call, type FormulaContext } from '../formula/term';
import type { Kind } from '../kind';
import { requireSettled } from '../looseness';
import { rowsOf } from '../order';
import { added } from '../quick/operations';
import { inputOf, makeStep, nameOf, textsOf, type Step } from '../step';
import type { SheetUnit, StepUnit } from '../unit';

const formula = (context: FormulaContext) =>
  call('SUMIFS', context.range(0), context.range(1), context.term(2));

const words = (column: string, keys: string, key: string) => `the total of ${column} where ${keys} is ${key}`;

interface RowsByText {
  readonly rows: ReadonlyMap<string, readonly number[]>;
  readonly keyless: number;
}

/** The rows of a text column by their text, worked out once a column. */
const GROUPED = new WeakMap<readonly (string | undefined)[], RowsByText>();

function rowsByText(texts: readonly (string | undefined)[]): RowsByText {
  const known = GROUPED.get(texts);
  if (known !== undefined) return known;
  const rows = new Map<string, number[]>();
  let keyless = 0;
  texts.forEach((text, i) => {
    if (text === undefined) keyless++;
    else {
      const list = rows.get(text);
      if (list === undefined) rows.set(text, [i]);
      else list.push(i);
    }
  });
  const grouped = { rows, keyless };
  GROUPED.set(texts, grouped);
  return grouped;
}

/** By text keys: only the rows of that key are operands. A row without a key is a row that cannot be told. */
const byText: Kind = {
  operation: 'total where',
  cells: (self, row, book) => {
    const wanted = textsOf(inputOf(self, 2))[row];
    if (wanted === undefined) return [-1];
    const first = book.cell(inputOf(self, 0), 0);
    const { rows, keyless } = rowsByText(textsOf(inputOf(self, 1)));
    const cells = (rows.get(wanted) ?? []).map(at => first + at);
    return keyless === 0 ? cells : [...cells, ...new Array<number>(keyless).fill(-1)];
  },
  exact: folded(plus, ZERO),
  quick: (cells, operands, out) => added(cells, operands, out),
  reason: () => 'a row has no key to be told apart by',
  live: addAll,
  passes: constants => onlyOther(constants, 0),
  formula,
  words,
};

/** By numeric keys such as months: operands are the wanted key, then each row's key and amount. */
const byNumber: Kind = {
  operation: 'total where',
  cells: (self, row, book) => {
    const [column, keys, key] = [inputOf(self, 0), inputOf(self, 1), inputOf(self, 2)];
    const [firstKey, first] = [book.cell(keys, 0), book.cell(column, 0)];
    const cells = [book.cell(key, row)];
    for (let i = 0; i < rowsOf(column); i++) cells.push(firstKey + i, first + i);
    return cells;
  },
  exact: ([wanted, ...pairs]) => {
    if (wanted === undefined) return undefined;
    let sum: Exact = ZERO;
    for (let i = 0; i < pairs.length; i += 2) {
      const key = pairs[i];
      if (key === undefined) return undefined;
      if (!key.eq(wanted)) continue;
      const amount = pairs[i + 1];
      if (amount === undefined) return undefined;
      sum = sum.plus(amount);
    }
    return sum;
  },
  live: ([wanted, ...pairs], out) => {
    const arrays = pairs.map(operand => asTrials(operand, out.length));
    const key = asTrials(wanted, out.length);
    const rows = arrays.flatMap((keys, i) =>
      i % 2 === 0 ? [{ keys, amounts: asTrials(arrays[i + 1], 0) }] : [],
    );
    return n => {
      out.fill(0, 0, n);
      for (const row of rows) addWhere(out, row.amounts, row.keys, key, n);
    };
  },
  formula,
  shown: values => matching(values),
  words,
};

/** The operand numbers of the amounts that count: of the wanted key, or of no key at all. */
function matching([wanted, ...pairs]: readonly Value[]): number[] {
  if (wanted === undefined) return [0];
  return pairs.flatMap((key, i) => {
    if (i % 2 !== 0) return [];
    return key === undefined ? [i + 1] : key.eq(wanted) ? [i + 2] : [];
  });
}

/**
 * The total of a column over the rows whose key equals this row's key: a stage subtotal, the waste of a
 * month. The column and its keys are placed in one table; numeric keys are whole numbers, given or rounded.
 */
export function totalWhere<U extends SheetUnit, K extends StepUnit>(
  column: Step<U>,
  keys: Step<K>,
  key: Step<NoInfer<K>>,
): Step<U> {
  if (column.home === undefined || keys.home === undefined || column.scope !== keys.scope || !column.scope)
    throw new BugError(`total where: ${nameOf(column)} and ${nameOf(keys)} are not columns of one table`);
  if (column.unit.includes('own'))
    throw new BugError(
      `total where: the rows of ${nameOf(column)} are in units of their own and do not add up`,
    );
  if (keys.unit !== key.unit)
    throw new BugError(`total where: keys in ${keys.unit} and ${key.unit} never meet`);
  requireSettled('a key', keys, 0);
  requireSettled('a key', key, 0);
  const kind = keys.unit === 'text' ? byText : byNumber;
  return makeStep(column.unit, kind, [column, keys, key], column.looseness, key.scope);
}
