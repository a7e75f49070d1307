import type { Leg } from '../leg';

export const plantedBugs: readonly Leg[] = [];
