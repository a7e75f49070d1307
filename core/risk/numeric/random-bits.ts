import { hashText } from '../../base';

/** Where the random bits of one id begin: found once, used for every chunk. */
export interface BitsKey {
  readonly a: number;
  readonly b: number;
}

/** The key of an id under a seed. */
export function bitsKey(seed: number, id: string): BitsKey {
  return { a: hashText(id, seed), b: hashText(id, seed ^ 0x9e3779b9) };
}

/** Scrambles 32 bits. @source A. Appleby, MurmurHash3 finaliser. */
export function scrambled(bits: number): number {
  let x = bits >>> 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return (x ^ (x >>> 16)) >>> 0;
}

/** Steps before the state of the generator is mixed. */
const WARM_UP = 15;

/**
 * Fills with random 32-bit numbers that belong to the key and the chunk: the generator of core/base in bulk,
 * because a call for every number costs more than the number.
 * @source Chris Doty-Humphrey, PractRand, sfc32.
 */
export function fillBits(key: BitsKey, chunk: number, out: Uint32Array): void {
  let a = key.a;
  let b = key.b;
  let c = scrambled(chunk + 1);
  let counter = 1;
  for (let i = -WARM_UP; i < out.length; i++) {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + t) | 0;
    if (i >= 0) out[i] = t;
  }
}
