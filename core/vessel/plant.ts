import { at } from '../base';
import type { HullType } from './hull-types';

export type Plant = 'steam' | 'diesel' | 'none';

/** The propulsion plant: as the document says, else by the hull type's table of build years. */
export function plantOf(stated: Plant | undefined, type: HullType, built: number): Plant {
  if (stated !== undefined) return stated;
  const { plants } = type;
  return (plants.find(row => built <= row.until) ?? at(plants, plants.length - 1)).plant;
}
