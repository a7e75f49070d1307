import { freeSurfaceCorrection } from '../../stability';
import type { UprightTank } from './types';

/** Shares of the capacity between which a tank is slack: emptier or fuller, its surface counts for nothing. */
const EMPTY = 0.02;
const PRESSED = 0.98;
/** The correction of a ship of one tonne is the moment itself. */
const ONE_TONNE = 1;

function isSlack({ volume, capacity }: UprightTank): boolean {
  return volume > EMPTY * capacity && volume < PRESSED * capacity;
}

/**
 * Moment of the free surfaces of slack tanks, t m: over the displacement it is the virtual rise of the centre of
 * gravity. Tanks nearly empty or pressed full do not count.
 * @param isSinking whether tanks that the plan empties are empty by now.
 */
export function slackMoment(tanks: readonly UprightTank[], isSinking: boolean): number {
  return tanks
    .filter(tank => isSlack(tank) && !(isSinking && tank.emptied))
    .reduce((sum, tank) => sum + freeSurfaceCorrection(tank, ONE_TONNE, tank.parts), 0);
}
