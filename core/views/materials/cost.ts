import type { EstimateContext } from '../context';
import type { ShownMoney } from '../shown-money';

/** The family an item counts for: that of the first material whose goal it meets. */
export function familyOfItem({ evaluation, parts }: EstimateContext, item: string): string | undefined {
  const material = parts.items.find(one => one.id === item)?.meets[0];
  return evaluation.library.materials.find(one => one.id === material)?.family;
}

/** Whole dollars of the lines that meet the goals of a family, or of any of them; absent when one of them is, or none has a price. */
export function familyCost(
  context: EstimateContext,
  money: ShownMoney,
  family: string | undefined,
): number | undefined {
  if (context.summary === undefined) return undefined;
  const own = money.lines.filter(line => {
    const of = familyOfItem(context, line.id);
    return of !== undefined && (family === undefined || of === family);
  });
  let sum = 0;
  for (const line of own) {
    const dollars = money.line(line.id, 'total');
    if (dollars === undefined) return undefined;
    sum += dollars;
  }
  return sum;
}
