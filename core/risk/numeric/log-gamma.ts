const LANCZOS = [
  676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
] as const;
const LANCZOS_FIRST = 0.9999999999998099;
const LANCZOS_G = 7;

/**
 * Natural logarithm of the gamma function for x of at least 0.5; about 15 figures.
 * @source C. Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86-96; coefficients of P. Godfrey for g = 7, n = 9.
 */
export function logGamma(x: number): number {
  const z = x - 1;
  const sum = LANCZOS.reduce((total, c, i) => total + c / (z + i + 1), LANCZOS_FIRST);
  const t = z + LANCZOS_G + 0.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}
