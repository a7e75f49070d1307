import type { HullType } from './hull-types';

export type Plant = 'steam' | 'diesel' | 'none';

/** The propulsion plant: as the document says, else by the hull type's table of build years. */
export function plantOf(stated: Plant | undefined, type: HullType, built: number): Plant {
  if (stated !== undefined) return stated;
  return (type.plants.find(row => built <= row.until) ?? type.plants.at(-1))?.plant ?? 'diesel';
}
