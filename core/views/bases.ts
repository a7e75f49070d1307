import { UNCHECKED_BASES, weakerBasis, type Basis } from '../base';
import { basesOf, idOf } from '../sheet';
import type { EstimateContext } from './context';
import { elementStep, ELEMENTS, type ElementKey } from './elements';

/** The basis of every element of every line, and of the lines. */
export interface LineBases {
  readonly element: (line: string, element: ElementKey) => Basis | undefined;
  readonly line: (line: string) => Basis | undefined;
}

/** A mark-up follows the element it stands on: it takes the weakest of the line’s own elements. */
export function lineBases({ parts }: EstimateContext): LineBases {
  const { money } = parts;
  if (money === undefined) return { element: () => undefined, line: () => undefined };
  const below = basesOf(money.result);
  const { columns } = money.lines;
  const own = (line: string, element: ElementKey): Basis | undefined => {
    const cents = money.result.money(elementStep(columns, element), line)?.cents;
    return cents === undefined || cents === 0 ? undefined : below(idOf(elementStep(columns, element), line));
  };
  const weakest = (line: string) =>
    ELEMENTS.filter(element => element !== 'mark-up')
      .map(element => own(line, element))
      .reduce((a, b) => (a === undefined ? b : b === undefined ? a : weakerBasis(a, b)), undefined);
  return {
    element: (line, element) => (element === 'mark-up' ? weakest(line) : own(line, element)),
    line: weakest,
  };
}

/** Whether nobody has checked a figure of this basis. */
export function isUnchecked(basis: Basis | undefined): boolean {
  return basis !== undefined && UNCHECKED_BASES.includes(basis);
}
