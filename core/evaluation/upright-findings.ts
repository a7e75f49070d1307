import type { Finding } from '../base';
import type { UprightInput } from '../flooding';
import type { Project } from '../project';
import { isWholeShip, listTotals, WHOLE_SHIP } from './upright-kg';

/** Places of the screen's input and the places of the document they come from. */
const PLACES: readonly (readonly [string, string])[] = [
  ['/particulars/length', '/vessel/length'],
  ['/particulars/breadth', '/vessel/beam'],
  ['/particulars/depth', '/vessel/depth'],
  ['/particulars/lightDraught', '/vessel/draughtLight'],
  ['/displacement', '/vessel/lightship'],
  ['/kg', '/vessel/kg'],
  ['/facts/list', '/vessel/observedList'],
  ['/removedWeights', '/items'],
];

/** A finding of the screen at its place in the document, so that it can be put right there. */
export function atDocument(finding: Finding, input: UprightInput): Finding {
  const [start, index] = /^\/compartments\/(\d+)/.exec(finding.place) ?? [];
  const space = start === undefined ? undefined : input.compartments[Number(index)];
  if (start !== undefined && space !== undefined)
    return { ...finding, place: finding.place.replace(start, `/vessel/compartments/${space.id}`) };
  if (finding.place === '/compartments') return { ...finding, place: '/vessel/compartments' };
  const known = PLACES.find(([start]) => finding.place.startsWith(start));
  return known === undefined ? finding : { ...finding, place: known[1] };
}

/** Findings about the weight list: one that cannot be read, and one that is not all of the ship. */
export function weightListFindings(project: Project, lightship: number): Finding[] {
  const { weights } = project.vessel;
  if (weights.length === 0) return [];
  const totals = listTotals(project);
  const frame = { code: 'upright/weight-list', weight: 'warns', place: '/vessel/weights' } as const;
  if (totals === undefined)
    return [
      {
        ...frame,
        message: 'The weight list holds an item without a mass above zero or a height above the keel.',
        meaning: 'No KG is taken from it; the one of the hull type stands in.',
        remedy: 'Give every item its mass and height, with how far each may be out.',
      },
    ];
  if (isWholeShip(totals, lightship)) return [];
  return [
    {
      ...frame,
      message: `The weight list adds up to ${totals.mass.likely.toFixed(0)} t and the lightship is ${lightship.toFixed(0)} t.`,
      meaning: `Only a list within ${100 * WHOLE_SHIP} % of the lightship tells KG; the one of the hull type stands in.`,
      remedy: 'Complete the list (hull steel too), or correct the lightship.',
    },
  ];
}
