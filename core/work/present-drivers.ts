import { presenceOf, type Material, type Presence, type ShipYears } from '../materials';
import type { HullType, Plant } from '../vessel';
import type { Driver } from './schema';

/** The ship as far as it decides which drivers there are at all. */
export interface ShipKind {
  readonly type: HullType;
  readonly plant: Plant;
  readonly years: ShipYears;
  /** Drivers that a survey measured: present unless measured as none. */
  readonly measured: ReadonlyMap<string, string>;
  /** Presence by material where a survey or the intake says more than the era. */
  readonly presence?: ReadonlyMap<string, Presence>;
}

/**
 * The drivers that the ship has at all. A driver is left out when the plant is another, when the hull type has none
 * of it, when its material was out of use before the deciding year (even at the high end), when a survey measured
 * none, or when the driver it scales from is left out.
 */
export function presentDrivers(
  drivers: readonly Driver[],
  materials: readonly Material[],
  ship: ShipKind,
): ReadonlySet<string> {
  const present = new Set<string>();
  const known = new Set(drivers.map(driver => driver.id));
  for (const driver of drivers) {
    const measured = ship.measured.get(driver.id);
    const there =
      measured === undefined ? isPresent(driver, materials, ship, known, present) : Number(measured) !== 0;
    if (there) present.add(driver.id);
  }
  return present;
}

function isPresent(
  driver: Driver,
  materials: readonly Material[],
  ship: ShipKind,
  known: ReadonlySet<string>,
  present: ReadonlySet<string>,
): boolean {
  if (driver.plant !== undefined && driver.plant !== ship.plant) return false;
  if (known.has(driver.base) && !present.has(driver.base)) return false;
  const fixed = driver.fixed !== undefined && Number(driver.fixed.value) !== 0;
  const reference =
    'hullQuantity' in driver.atReference
      ? ship.type.quantities[driver.atReference.hullQuantity]?.value
      : driver.atReference.value;
  if (!fixed && Number(reference ?? 0) === 0) return false;
  const material = materials.find(candidate => candidate.id === driver.material);
  if (material === undefined) return true;
  const presence = ship.presence?.get(material.id) ?? presenceOf(material, ship.years);
  return (presence?.likely ?? 0) > 0;
}
