/** A stream of doubles in [0, 1): the same seed and id give the same stream on every machine. */
export type RandomStream = () => number;

/** FNV-1a over the UTF-16 units of a text, folded with a seed. @source Fowler, Noll, Vo; IETF draft-eastlake-fnv. */
export function hashText(text: string, seed: number): number {
  let hash = (0x811c9dc5 ^ seed) >>> 0;
  for (let i = 0; i < text.length; i++) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  hash ^= hash >>> 16;
  hash = Math.imul(hash, 0x85ebca6b) >>> 0;
  hash ^= hash >>> 13;
  hash = Math.imul(hash, 0xc2b2ae35) >>> 0;
  return (hash ^ (hash >>> 16)) >>> 0;
}

/**
 * A random stream that belongs to an id, not to a position: adding a line moves no other line's draws.
 * The generator is sfc32 (128 bit state), warmed up by 15 steps.
 * @source Chris Doty-Humphrey, PractRand, sfc32.
 */
export function randomStream(seed: number, id: string): RandomStream {
  let a = hashText(id, seed);
  let b = hashText(id, seed ^ 0x9e3779b9);
  let c = hashText(id, (seed * 2654435761) >>> 0);
  let counter = 1;
  const step: RandomStream = () => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + t;
    c = c | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 15; i++) step();
  return step;
}
