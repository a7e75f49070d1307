import { anyBlocks } from '../../base';
import { checkUprightInput } from './check-input';
import { UPRIGHT_DEFAULTS } from './defaults';
import { floodPlan, resolveShip } from './resolved';
import { targetSeconds } from './run-likely';
import { sizeOpenings } from './sizing';
import type { UprightInput, UprightSizing } from './types';

/**
 * The openings alone, without the screen: so many for each compartment, that it fills in the target time, port and
 * starboard alike. For the take-off, which needs their number and their cut before anything is priced.
 * @returns nothing for an input that cannot be a ship; the screen says why.
 */
export function sizedOpenings(input: UprightInput): UprightSizing[] {
  if (anyBlocks(checkUprightInput(input))) return [];
  const ship = resolveShip(input);
  const share = input.ventShare ?? UPRIGHT_DEFAULTS.ventShare.value;
  return sizeOpenings(ship, floodPlan(ship, input.displacement.likely, 0), targetSeconds(input), share);
}
