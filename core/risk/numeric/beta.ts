import { BugError } from '../../base';
import { logGamma } from './log-gamma';

/** A beta distribution on 0 to 1 with its constant worked out once. */
export interface Beta {
  readonly a: number;
  readonly b: number;
  /** Logarithm of 1/B(a, b). */
  readonly logConstant: number;
}

export function beta(a: number, b: number): Beta {
  return { a, b, logConstant: logGamma(a + b) - logGamma(a) - logGamma(b) };
}

/** Density of the beta distribution at x, 0 < x < 1. */
export function betaDensity({ a, b, logConstant }: Beta, x: number): number {
  return Math.exp(logConstant + (a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x));
}

/** Share of the beta distribution up to x. @source NIST Digital Library of Mathematical Functions 8.17. */
export function betaShare(d: Beta, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(d.logConstant + d.a * Math.log(x) + d.b * Math.log1p(-x));
  if (x <= (d.a + 1) / (d.a + d.b + 2)) return (front * continuedFraction(d.a, d.b, x)) / d.a;
  return 1 - (front * continuedFraction(d.b, d.a, 1 - x)) / d.b;
}

/** The continued fraction 8.17.22 by the modified method of Lentz. */
function continuedFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 1000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) return value;
    if (m > 60 && Math.abs(d * c - 1) < 1e-14) return value;
  }
  throw new BugError(`the incomplete beta fraction did not settle for a = ${a}, b = ${b}, x = ${x}`);
}

/** Keeps a denominator of Lentz's method away from zero. */
function away(x: number): number {
  return Math.abs(x) < 1e-300 ? 1e-300 : x;
}

/** The x that a share p of the beta distribution does not exceed; safeguarded Newton steps from a start. */
export function betaQuantile(d: Beta, p: number, start = d.a / (d.a + d.b)): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let low = 0;
  let high = 1;
  let x = start;
  for (let i = 0; i < 200; i++) {
    const miss = betaShare(d, x) - p;
    if (miss > 0) high = x;
    else low = x;
    let next = x - miss / betaDensity(d, x);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - x) <= 1e-15 * x) return next;
    x = next;
  }
  return x;
}
