import type { MarkUp } from '../rate-book';
import {
  dollars,
  givenFrom,
  grossedUp,
  maximum,
  none,
  over,
  rounded,
  runningBefore,
  runningThrough,
  scaled,
  share,
  sum,
  total,
  unity,
  when,
  type Block,
  type Recipe,
  type Sheet,
  type Step,
} from '../sheet';
import type { DirectColumns } from './line-table';
import { rateAt, type EstimateInput } from './inputs';
import type { ItemFields } from './item-fields';

/** Shares of the contractor's mark-ups, as single values, in the order they apply. */
export interface MarkUpShares {
  readonly block: Block;
  readonly steps: readonly { readonly markUp: MarkUp; readonly share: Step<'1'> }[];
}

export function markUpShares(sheet: Sheet, input: EstimateInput): MarkUpShares {
  const block = sheet.block('mark-ups', 'Mark-ups of the contractor');
  const steps = input.library.rateBook.markUps.map(markUp => {
    const { figure, place } = rateAt(input, `markUps/${markUp.id}/share`, markUp.share);
    return { markUp, share: block.given(markUp.id, markUp.title, '1', givenFrom(figure, '1', place)) };
  });
  return { block, steps };
}

export interface MarkedUpColumns {
  /** Direct cost of contract work; nothing of the owner’s own. */
  readonly direct: Step<'USD'>;
  /** Mark-ups on the line itself, in their order. */
  readonly own: readonly Step<'USD'>[];
  /** Direct cost with those, of contract lines; nothing of the owner's. */
  readonly subtotal: Step<'USD'>;
}

/** Overheads, profit and the like on each contract line, rounded to the cent, in the order they apply. */
export function lineMarkUps(
  t: Recipe<ItemFields>,
  shares: MarkUpShares,
  lines: DirectColumns,
): MarkedUpColumns {
  const direct = t.place(
    'contract-direct',
    'Direct cost of contract work',
    when(lines.contract, lines.direct, none('USD')),
  );
  const own: Step<'USD'>[] = [];
  for (const { markUp, share: part } of shares.steps) {
    if (markUp.on === 'contract price') continue;
    const before = markUp.on === 'direct' ? direct : sum(direct, ...own);
    own.push(t.place(markUp.id, markUp.title, dollars(scaled(before, part))));
  }
  return {
    direct,
    own,
    subtotal: t.place('subtotal', 'Contract price before bond and tax', sum(direct, ...own)),
  };
}

export interface TotalColumns {
  readonly markUp: Step<'USD'>;
  readonly total: Step<'USD'>;
}

/**
 * Bond and tax on the whole contract price, themselves included: (subtotal ÷ (1 − all such shares)) × share, allotted
 * to the lines by cumulative rounding, so that they add up to the cent and stay live in a workbook.
 */
export function contractMarkUps(
  t: Recipe<ItemFields>,
  shares: MarkUpShares,
  subtotal: Step<'USD'>,
): Step<'USD'>[] {
  const { block } = shares;
  const onPrice = shares.steps.filter(({ markUp }) => markUp.on === 'contract price');
  const before = block.place('contract-subtotal', 'Contract price before bond and tax', total(subtotal));
  const parts = block.place(
    'share-of-price',
    'Bond, tax and the like',
    sum(none('1'), ...onPrice.map(row => row.share)),
  );
  const price = block.place('contract-price', 'Contract price', grossedUp(before, parts, 2));
  const least = block.place('contract-divisor', 'Contract price to divide by', maximum(before, unity('USD')));
  const from = t.place(
    'share-before',
    'Share of the contract before this line',
    rounded(over(runningBefore(subtotal), least), 10),
  );
  const to = t.place(
    'share-through',
    'Share of the contract through this line',
    rounded(over(runningThrough(subtotal), least), 10),
  );
  return onPrice.map(({ markUp, share: part }) => {
    const amount = block.place(`${markUp.id}-amount`, markUp.title, dollars(scaled(price, part)));
    return t.place(markUp.id, markUp.title, share(amount, from, to));
  });
}
