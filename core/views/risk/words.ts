import type { AwardChance } from '../../evaluation';
import { inHundred } from '../../units';
import { dollars, shownNumber } from '../number-text';

/** Dollars of a simulation as whole dollars in words. */
export function simulatedDollars(amount: number): string {
  return dollars(Math.round(amount * 100));
}

/** The same for a column that names its unit. */
export function bareDollars(amount: number): string {
  return simulatedDollars(amount).replace('$', '');
}

/** A change of simulated dollars for a column, always with its sign. */
export function signedDollars(amount: number): string {
  const text = bareDollars(amount);
  return amount > 0 && text !== '0' ? `+${text}` : text;
}

export { inHundred };

/** A share in per cent with one decimal. */
export function perCent(share: number): string {
  return shownNumber((share * 100).toFixed(6), 1);
}

/** Staying inside the cost that a grant has a part in, in words: the total, with the contingency only where it is allowable. */
export function awardWords({ budget, holdsContingency }: Omit<AwardChance, 'chance'>): string {
  return holdsContingency
    ? `Inside ${simulatedDollars(budget)}, the total with the contingency`
    : `Inside ${simulatedDollars(budget)}, the total without the contingency`;
}
