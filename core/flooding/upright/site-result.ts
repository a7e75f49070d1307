import {
  canTurnOver,
  clearanceOver,
  endGroundingAngle,
  GRAVITY,
  halfDiagonal,
  submergedWeight,
  waveForces,
} from '../../stability';
import type { SimulationResult } from '../simulate/ship';
import { massAfter } from './resolved';
import type { UprightInput, UprightSiteResult } from './types';

/** Bed slope up to which a wreck is likely to settle upright. Judgement. */
const GENTLE_SLOPE = 1 / 50;

function firstEnd(run: SimulationResult): 'bow' | 'stern' | 'neither' {
  const touch = run.history.find(({ event }) => event?.endsWith('on the bottom') === true);
  if (touch?.event?.startsWith('bow') === true) return 'bow';
  if (touch?.event?.startsWith('stern') === true) return 'stern';
  return 'neither';
}

function turning(input: UprightInput, depth: number): { notes: string[]; canTurn: boolean; half: number } {
  const { breadth, depth: height } = input.particulars;
  const top = input.site?.highestPoint ?? height;
  const half = halfDiagonal(breadth, top);
  const canTurn = canTurnOver(depth, breadth, top);
  const note = canTurn
    ? `The water (${depth.toFixed(1)} m) is deeper than half the diagonal of the section (${half.toFixed(1)} m): she could turn over on the way down. No credit is given for coming upright.`
    : `The water (${depth.toFixed(1)} m) is shallower than half the diagonal of the section (${half.toFixed(1)} m): she cannot turn right over, but can still come to rest on her side. Shallow water does not replace preparation.`;
  return { notes: [note], canTurn, half };
}

function clearanceNotes(clearance: number, permit: number | undefined): string[] {
  if (permit === undefined)
    return [`Clear water over the wreck ${clearance.toFixed(1)} m; the permit's figure is not given.`];
  const verdict = clearance >= permit ? 'meets' : 'is less than';
  return [
    `Clear water over the wreck ${clearance.toFixed(1)} m ${verdict} the permit's ${permit.toFixed(1)} m.`,
  ];
}

/** Depth and site: turning over, the end that grounds first, clearance, slope, and wave factors for the annex. */
export function siteOf(input: UprightInput, run: SimulationResult): UprightSiteResult {
  const { site, particulars } = input;
  const depth = site?.waterDepth;
  if (depth === undefined)
    return { notes: ['The depth of the site is not given: nothing is said about it.'] };
  const { notes, canTurn, half } = turning(input, depth);
  const end = firstEnd(run);
  const angle = endGroundingAngle(depth, particulars.length);
  if (angle !== undefined)
    notes.push(
      `She is longer than the water is deep: with one end on the bottom and the other at the surface she stands at ${angle.toFixed(1)} degrees${end === 'neither' ? '' : `; the ${end} grounds first`}.`,
    );
  const clearance = site?.highestPoint === undefined ? undefined : clearanceOver(depth, site.highestPoint);
  if (clearance !== undefined) notes.push(...clearanceNotes(clearance, site?.permitClearance));
  if (site?.bottomSlope !== undefined && site.bottomSlope > GENTLE_SLOPE)
    notes.push(
      `The bed slopes 1 in ${(1 / site.bottomSlope).toFixed(0)}, steeper than 1 in 50: she may settle with a list.`,
    );
  const wave = site?.wave && {
    ...site.wave,
    depth,
  };
  const forces =
    wave &&
    waveForces(wave, {
      length: particulars.length,
      breadth: particulars.breadth,
      height: particulars.depth,
      submergedWeight: submergedWeight(massAfter(input, input.displacement.likely)) * GRAVITY,
    });
  if (forces)
    notes.push('Wave loads need a coastal engineer; both factors against sliding stand in the annex.');
  return {
    canTurnOver: canTurn,
    halfDiagonal: half,
    firstEnd: end,
    ...(angle === undefined ? {} : { endAngleDegrees: angle }),
    ...(clearance === undefined ? {} : { clearance }),
    ...(forces ? { waveFactors: { dragOnly: forces.dragOnlyFactor, inertia: forces.inertiaFactor } } : {}),
    notes,
  };
}
