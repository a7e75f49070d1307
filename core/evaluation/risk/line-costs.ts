import { at, known, valueAt } from '../../base';
import { TRIALS_PER_CHUNK, type MoneyColumns } from '../../risk';
import { idOf } from '../../sheet';
import type { WholeParts } from './parts';

/** What a money sheet must keep so that total and lines of a trial can be told. */
export interface LineCosts {
  readonly keep: readonly string[];
  /** @returns a function that works out the first n trials from the kept arrays. */
  readonly answer: (kept: ReadonlyMap<string, Float64Array>) => (n: number) => MoneyColumns;
}

/**
 * The total of a trial without allotting bond and tax to each line, a quarter of the sheet: the owner's own cost, the
 * contract before them, and what they come to. That is the same total to the cent, because the allotted parts add up
 * to their amounts. A line's figure has its part unrounded, a cent off at most.
 */
export function lineCosts({ work, money, input }: WholeParts): LineCosts {
  const { columns } = money.lines;
  const own = work.rows.map(({ item }) =>
    idOf(item.contract ? columns.contractSubtotal : columns.direct, item.id),
  );
  const isContract = work.rows.map(({ item }) => item.contract);
  const onPrice = input.library.rateBook.markUps.filter(({ on }) => on === 'contract price');
  const [direct, contract, before] = [idOf(money.sums.direct), idOf(money.sums.contractCost), SUBTOTAL];
  const amounts = onPrice.map(({ id }) => `mark-ups/${id}-amount`);
  const single = [direct, contract, before, ...amounts];
  return {
    keep: [...own, ...single],
    answer: kept => {
      const of = (id: string) => known(kept, id);
      const [all, share] = [of(direct), of(contract)];
      const [subtotal, added] = [of(before), amounts.map(of)];
      const owns = own.map(of);
      const lines = owns.map(() => new Float64Array(TRIALS_PER_CHUNK));
      const total = new Float64Array(TRIALS_PER_CHUNK);
      const factor = new Float64Array(TRIALS_PER_CHUNK);
      return n => {
        for (let t = 0; t < n; t++) {
          const price = valueAt(subtotal, t);
          const onTop = added.reduce((sum, column) => sum + valueAt(column, t), 0);
          total[t] = toCents(valueAt(all, t) - valueAt(share, t) + price + onTop);
          factor[t] = price > 0 ? (price + onTop) / price : 1;
        }
        lines.forEach((line, l) => {
          const column = at(owns, l);
          if (isContract[l] === true) times(line, column, factor, n);
          else line.set(column.subarray(0, n));
        });
        return { total, lines };
      };
    },
  };
}

/** What the lines of the plan come to, told in the same way, in dollars. */
export function planLineCosts(parts: WholeParts): number[] {
  const { keep, answer } = lineCosts(parts);
  const { result } = parts.money;
  const exact = keep.map((id): [string, Float64Array] => [
    id,
    Float64Array.of(result.figure(id).number ?? Number.NaN),
  ]);
  return answer(new Map(exact))(1).lines.map(line => valueAt(line, 0));
}

/** The contract price before bond and tax, in the block of mark-ups. */
const SUBTOTAL = 'mark-ups/contract-subtotal';

function times(out: Float64Array, a: Float64Array, b: Float64Array, n: number): void {
  for (let t = 0; t < n; t++) out[t] = valueAt(a, t) * valueAt(b, t);
}

/** A sum of many doubles is a hair off the cent that it stands for. */
function toCents(dollars: number): number {
  return Math.round(dollars * 100) / 100;
}
