/** A point of a drawing in metres: along the ship from the stern, and up from the keel or out from the centreline. */
export interface Point {
  readonly along: number;
  readonly up: number;
}

/** Stations along the ship at which the outline is drawn. */
const STATIONS = 80;

/**
 * Outline of a hull in profile for drawing only, from length and depth: a usual merchant form with a cut-up stern and a
 * raked stem. It starts at the stern on deck and goes round by the keel. Nothing is calculated from it.
 */
export function profileOutline(length: number, depth: number): readonly Point[] {
  const keel = curve(share => ({
    along: length * (0.015 + 0.985 * share),
    up: depth * keelHeight(share),
  }));
  const sheer = curve(share => ({ along: length * (1 - share), up: depth * deckHeight(1 - share) }));
  return [{ along: 0, up: depth * deckHeight(0) }, { along: 0, up: depth * 0.72 }, ...keel, ...sheer];
}

/** Height of the lower edge over depth: rising to the stern, flat keel, curved up into a raked stem. */
function keelHeight(share: number): number {
  if (share < 0.13) return 0.66 * ((0.13 - share) / 0.13) ** 1.6;
  if (share < 0.9) return 0;
  return deckHeight(1) * ((share - 0.9) / 0.1) ** 1.7;
}

/** Height of the deck at side over depth: a little sheer to the ends. */
function deckHeight(share: number): number {
  return share > 0.5 ? 1 + 0.14 * ((share - 0.5) / 0.5) ** 2.4 : 1 + 0.04 * ((0.5 - share) / 0.5) ** 2;
}

/** Half breadth of the deck at a share of the length from the stern, over half the beam: for drawing only. */
export function deckBreadth(share: number): number {
  if (share < 0.2)
    return (
      Math.sqrt(Math.max(0, 1 - ((0.2 - share) / 0.2) ** 2.6)) * 0.4 + 0.6 * Math.min(1, (share / 0.2) ** 0.5)
    );
  if (share < 0.68) return 1;
  return 1 - ((share - 0.68) / 0.32) ** 2.1;
}

/** Outline of the deck from above, starboard side and back by port, for drawing only. */
export function planOutline(length: number, beam: number): readonly Point[] {
  const side = (sign: 1 | -1) =>
    curve(share => ({ along: length * share, up: sign * (beam / 2) * deckBreadth(share) }));
  return [...side(1), ...[...side(-1)].reverse()];
}

function curve(at: (share: number) => Point): readonly Point[] {
  return Array.from({ length: STATIONS + 1 }, (_, station) => at(station / STATIONS));
}

/** Section of a hull amidships with a turn of bilge, for drawing only: from port deck edge round to starboard. */
export function sectionOutline(beam: number, depth: number): readonly Point[] {
  const half = beam / 2;
  const bilge = Math.min(half, depth) * 0.22;
  const corner = (side: 1 | -1) =>
    Array.from({ length: 9 }, (_, step) => {
      const angle = (Math.PI / 2) * (step / 8);
      return { along: side * (half - bilge + bilge * Math.cos(angle)), up: bilge - bilge * Math.sin(angle) };
    });
  return [
    { along: -half, up: depth },
    ...corner(-1),
    ...[...corner(1)].reverse(),
    { along: half, up: depth },
  ];
}
