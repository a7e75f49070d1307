import type { Provenance } from '../base';
import type { Material } from './schema';

/** The years of a ship's life that decide which materials it carries. */
export interface ShipYears {
  readonly built: number;
  readonly lastRefit?: number | undefined;
  readonly lastCoating?: number | undefined;
}

/** How much of a material a ship of these years carries, as a share of what a ship of the full era carries. */
export interface Presence extends Provenance {
  readonly low: number;
  /** The mode, which the deterministic estimate uses. */
  readonly likely: number;
  readonly high: number;
  /** The year that decided it; none for a material without an era rule. */
  readonly decidedBy?: number;
}

/** The year that decides the presence of a material: of the last refit or coating where one is known, else of the build. */
export function decidingYear(material: Material, years: ShipYears): number | undefined {
  switch (material.decidedBy) {
    case 'built':
      return years.built;
    case 'last-refit':
      return years.lastRefit ?? years.built;
    case 'last-coating':
      return years.lastCoating ?? years.lastRefit ?? years.built;
    case 'none':
      return undefined;
  }
}

/** The presence of a material by the years of the ship: the last row of its era table that has begun. */
export function presenceOf(material: Material, years: ShipYears): Presence | undefined {
  const year = decidingYear(material, years);
  const row = material.eras.findLast(era => era.from <= (year ?? 0)) ?? material.eras[0];
  if (row === undefined) return undefined;
  const { share, basis, source } = row;
  return {
    ...share,
    basis,
    source,
    ...(row.year === undefined ? {} : { year: row.year }),
    ...(year === undefined ? {} : { decidedBy: year }),
  };
}
