import { at, BugError, intAt } from '../../base';

/**
 * Several resources side by side in one 32-bit word. Each has a lane wide enough for its capacity and one
 * guard bit above it. With `free` holding what is left plus the guard bits, a demand fits into every lane at
 * once when `(free - demand) & guards` still has every guard bit: a lane that runs short borrows its guard.
 */
export interface Lanes {
  /** Words needed for all resources. */
  readonly words: number;
  /** The word and the lowest bit of each resource's lane. */
  readonly wordOf: Int32Array;
  readonly shiftOf: Int32Array;
  /** The guard bits of each word. */
  readonly guards: Int32Array;
}

const WORD_BITS = 32;

/**
 * Lays out lanes for the given largest capacities, in the given order: each in the word with room whose resources are
 * most often used together with it, the first of equal ones.
 * @param together how often two resources are used together; absent: never, so it is first fit.
 */
export function layLanes(
  capacities: readonly number[],
  together: (a: number, b: number) => number = () => 0,
): Lanes {
  const wordOf = new Int32Array(capacities.length);
  const shiftOf = new Int32Array(capacities.length);
  const used: number[] = [0];
  const guards: number[] = [0];
  capacities.forEach((capacity, resource) => {
    const width = 33 - Math.clz32(capacity);
    if (!Number.isInteger(capacity) || capacity < 0 || width > WORD_BITS) {
      throw new BugError(`A capacity of ${capacity} does not fit a lane`);
    }
    let word = bestWord(used, width, w => {
      let sum = 0;
      for (let other = 0; other < resource; other++)
        if (wordOf[other] === w) sum += together(resource, other);
      return sum;
    });
    if (word < 0) word = used.push(0) - 1;
    const shift = at(used, word);
    wordOf[resource] = word;
    shiftOf[resource] = shift;
    used[word] = shift + width;
    guards[word] = (guards[word] ?? 0) | (1 << (shift + width - 1));
  });
  return { words: used.length, wordOf, shiftOf, guards: Int32Array.from(guards) };
}

/** The word with room whose worth is largest, the first of equal ones; -1 when none has room. */
function bestWord(used: readonly number[], width: number, worth: (word: number) => number): number {
  let best = -1;
  let most = -1;
  used.forEach((bits, word) => {
    if (bits + width > WORD_BITS) return;
    const value = worth(word);
    if (value <= most) return;
    [best, most] = [word, value];
  });
  return best;
}

/** The units of every resource as packed words, without guard bits. */
export function packUnits(lanes: Lanes, units: ArrayLike<number>): Int32Array {
  const packed = new Int32Array(lanes.words);
  for (let resource = 0; resource < units.length; resource++) {
    const word = at(lanes.wordOf, resource);
    packed[word] = intAt(packed, word) + (at(units, resource) << at(lanes.shiftOf, resource));
  }
  return packed;
}
