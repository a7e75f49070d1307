import { bookBugs } from '../planted/books';
import { foundationBugs } from '../planted/foundation';
import { paperBugs } from '../planted/papers';
import { riskBugs } from '../planted/risk';
import { scheduleBugs } from '../planted/schedule';
import { scopeBugs } from '../planted/scope';
import { trustBugs } from '../planted/trust';
import { uprightBugs } from '../planted/upright';
import { windowBugs } from '../planted/window';

/** Faults put into a copy of the source one at a time; each must turn its named test red. */
export const PLANTED_BUGS = [
  ...foundationBugs,
  ...scopeBugs,
  ...scheduleBugs,
  ...windowBugs,
  ...uprightBugs,
  ...bookBugs,
  ...riskBugs,
  ...paperBugs,
  ...trustBugs,
];
