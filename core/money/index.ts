/** Money in whole cents, half away from zero, and its splits that add up to the cent. */
export { Money, dollarsOf, fromCents, moneyText, parseMoney, roundToCents } from './money';
export { compareMoney, minus, negated, plus, sumMoney } from './arithmetic';
export { allocate } from './allocate';
export { cumulativeShares } from './cumulative-shares';
