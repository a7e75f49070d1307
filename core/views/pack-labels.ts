/** A thing with a name to place on a time axis: its ends, and the width its name takes, all in drawing units. */
export interface ToPack {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly nameWidth: number;
}

export interface Packed {
  readonly id: string;
  /** The sub-lane, from the top. */
  readonly lane: number;
  /** Where the name begins. */
  readonly nameAt: number;
}

/**
 * Places names on the row of their own bars without ever shortening one: each bar with its name after it goes to the
 * first sub-lane where both are free; a name that would pass the right edge stands before its bar instead.
 * @param gap least room between neighbours in a sub-lane.
 */
export function packNames(
  all: readonly ToPack[],
  right: number,
  gap: number,
): { packed: readonly Packed[]; lanes: number } {
  const ends: number[] = [];
  const ordered = [...all].sort((a, b) => a.from - b.from || a.to - b.to || a.id.localeCompare(b.id));
  const packed = ordered.map(one => {
    const isBefore = one.to + NEAR + one.nameWidth > right;
    const nameAt = isBefore ? one.from - NEAR - one.nameWidth : one.to + NEAR;
    const start = Math.min(nameAt, one.from);
    const end = Math.max(nameAt + one.nameWidth, one.to);
    const free = ends.findIndex(taken => taken + gap <= start);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = end;
    return { id: one.id, lane, nameAt };
  });
  return { packed, lanes: Math.max(1, ends.length) };
}

/** Room between a bar and its name. */
const NEAR = 5;
