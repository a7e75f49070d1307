import type { OutsideCheck } from './check';
import { dateChecks } from './dates';
import { distributionChecks } from './distributions';
import { floodingChecks } from './flooding';
import { grantChecks } from './grants';
import { hullChecks } from './hull';
import { networkChecks } from './networks';
import { ruleChecks } from './rules';
import { scheduleChecks } from './schedules';
import { staticsChecks } from './statics';
import { towingChecks } from './towing';
import { unitChecks } from './units';

export { holds, type OutsideCheck } from './check';

/** Every outside check, by subject, in the order of the page. */
export const OUTSIDE_CHECKS: readonly (readonly [subject: string, checks: readonly OutsideCheck[]])[] = [
  ['Hull, materials and cutting', hullChecks],
  ['Statics and the roll-over section', staticsChecks],
  ['Flooding', floodingChecks],
  ['Towing', towingChecks],
  ['Networks and floats', networkChecks],
  ['Schedules, levelling, time and cost', scheduleChecks],
  ['Distributions', distributionChecks],
  ['Rules of waste, asbestos, PCB, and prices', ruleChecks],
  ['Grants and procurement', grantChecks],
  ['Dates', dateChecks],
  ['Units', unitChecks],
];
