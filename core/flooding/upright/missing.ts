import type { UprightInput } from './types';

type Missing = readonly [isMissing: (input: UprightInput) => boolean, words: string];

const ASKED: readonly Missing[] = [
  [i => i.kg.basis === 'assumed', 'a measured height of the centre of gravity (inclining, or a weight list)'],
  [i => i.kg.low === i.kg.high, 'the range of KG'],
  [i => i.displacement.low === i.displacement.high, 'the range of the displacement (draught survey)'],
  [
    i => i.particulars.stations === undefined,
    'the lines of the hull (an offset table); a form with its coefficients stands in',
  ],
  [i => i.openingsMismatch === undefined, 'how unevenly the sides may fill (bulkhead and opening survey)'],
  [i => i.compartments.length === 0, 'the compartments'],
  [i => i.compartments.every(c => c.openings.length === 0), 'the openings, existing and planned'],
  [i => i.compartments.every(c => c.vents.length === 0), 'the air escapes'],
  [i => i.site?.waterDepth === undefined, 'the depth of the water at the site'],
  [i => i.site?.highestPoint === undefined, 'the highest point of the ship after removal'],
  [i => i.site?.permitClearance === undefined, "the permit's least clear water over the wreck"],
  [i => i.facts === undefined, 'what is seen of her afloat: upright or listing, a timed roll'],
  [
    i => i.removedWeights.some(w => w.lcg === undefined || w.tcg === undefined),
    'length and side of the removed weights',
  ],
];

/** What the screen would want and did not get. */
export function missingInputs(input: UprightInput): string[] {
  return ASKED.flatMap(([isMissing, words]) => (isMissing(input) ? [words] : []));
}
