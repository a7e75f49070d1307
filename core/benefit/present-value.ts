/**
 * The value today of one dollar at the end of a year.
 * @param rate a year, such as 0.07. @param year 0 is today.
 */
export function presentValueFactor(rate: number, year: number): number {
  return Math.pow(1 + rate, -year);
}

/** The value today of one dollar at the end of each year from the first to the last, both counted. */
export function annuityFactor(rate: number, firstYear: number, lastYear: number): number {
  let sum = 0;
  for (let year = firstYear; year <= lastYear; year++) sum += presentValueFactor(rate, year);
  return sum;
}
