import { setImmediate, setTimeout } from 'node:timers/promises';

/** How much of what is written may wait for its packing, in bytes. */
const MOST_WAITING = 2 ** 20;
/** The blocks in which the writer keeps what no one takes yet, in bytes. */
const BLOCK = 2 ** 16;
/** How often it is looked whether the packing has come along, a millisecond apart, before writing goes on all the same. */
const LOOKS = 10_000;

/**
 * Waits until the packing has caught up with a sheet that is being written. The writer itself never waits: it would keep
 * a whole large sheet as text until its packing.
 * @param sheet a sheet of the writer of rows, whose stream its types leave out.
 */
export async function packedUpTo(sheet: object): Promise<void> {
  await setImmediate();
  const stream: unknown = Reflect.get(sheet, 'stream');
  for (let look = 0; look < LOOKS && waiting(stream) > MOST_WAITING; look++) await setTimeout(1);
}

/**
 * Lets go of the formulas that a sheet has written: the writer keeps each for those that would share it, and none of ours
 * shares another's.
 */
export function forgetFormulas(sheet: object): void {
  if (Reflect.has(sheet, '_formulae')) Reflect.set(sheet, '_formulae', {});
}

/** The bytes that wait, in the stream of a sheet and in what takes from it. */
function waiting(stream: unknown): number {
  if (typeof stream !== 'object' || stream === null) return 0;
  const blocks: unknown = Reflect.get(stream, 'buffers');
  const takers: unknown = Reflect.get(stream, 'pipes');
  const inBlocks = Array.isArray(blocks) ? blocks.length * BLOCK : 0;
  return (
    inBlocks + (Array.isArray(takers) ? takers.reduce<number>((sum, taker) => sum + lengthOf(taker), 0) : 0)
  );
}

function lengthOf(taker: unknown): number {
  const length: unknown =
    typeof taker === 'object' && taker !== null ? Reflect.get(taker, 'writableLength') : 0;
  return typeof length === 'number' ? length : 0;
}
