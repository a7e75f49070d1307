import type { Block, Given, Sheet, SheetUnit, Step } from '../sheet';
import { fetchable } from './bare-numbers';
import { geometry } from './geometry';
import type { HullType } from './hull-types';
import { MEASURES, type MeasureKey } from './measures';
import { openingMeasures, type OpeningMeasure } from './opening-measures';
import { tankMeasures } from './tank-measures';

/** A particular that the document may give; an absent one follows from the hull type. */
export type Particular =
  'length' | 'beam' | 'depth' | 'draughtLight' | 'draughtFull' | 'blockCoefficient' | 'lightship';

/** What is known of the ship, the site and the plan. */
export interface ShipGivens {
  readonly type: HullType;
  /** A given that is there but faulty has no value: nothing is worked out from it, and nothing stands in for it. */
  readonly particulars: Readonly<Partial<Record<Particular, Given>>>;
  readonly tanks: readonly TankGiven[];
  readonly waterDepth: Given;
  readonly towDistance: Given;
  readonly yardDistance: Given;
  /** Share of the topside weight taken off, and years of monitoring, as the options choose. */
  readonly topsideShare: Given;
  readonly monitoringYears: Given;
  /** Openings as the sizing found them; without it they follow from the compartments. */
  readonly openings: Readonly<Partial<Record<OpeningMeasure, Given>>>;
}

/** A tank of the tank table. */
export interface TankGiven {
  readonly id: string;
  readonly title: string;
  readonly place: string;
  readonly capacity: Given;
  /** Whether it held oil, and so has to be cleaned. */
  readonly oily: boolean;
}

/** The take-off: each measure as a step of the sheet, and their bare numbers by key for the drivers. */
export interface TakeOff {
  readonly measures: Readonly<Record<MeasureKey, Step<SheetUnit>>>;
  /** The number of each measure in its own unit, fetched by key. */
  readonly numbers: Block;
}

/**
 * Takes off the quantities of a ship: from particulars to areas, volumes, tanks and openings. Every measure is a
 * named value of the sheet with its derivation; absent particulars make what depends on them absent.
 */
export function takeOff(sheet: Sheet, ship: ShipGivens): TakeOff {
  const block = sheet.block('ship', 'The ship and the site');
  const shape = geometry(block, ship);
  const tanks = tankMeasures(sheet, block, ship, shape);
  const measures: Record<MeasureKey, Step<SheetUnit>> = {
    ...shape,
    ...tanks,
    ...openingMeasures(block, ship, tanks['compartment-count']),
    ...planMeasures(block, ship),
  };
  return { measures, numbers: fetchable(sheet, measures) };
}

type PlanKey = 'tow-distance' | 'yard-distance' | 'water-depth' | 'monitoring-years' | 'one';

function planMeasures(block: Block, ship: ShipGivens): Record<PlanKey, Step<SheetUnit>> {
  const one: Given = { value: '1', unit: 'each', basis: 'common practice', source: 'One project' };
  return {
    'tow-distance': block.given('tow-distance', MEASURES['tow-distance'].title, 'nmi', ship.towDistance),
    'yard-distance': block.given('yard-distance', MEASURES['yard-distance'].title, 'm', ship.yardDistance),
    'water-depth': block.given('water-depth', MEASURES['water-depth'].title, 'm', ship.waterDepth),
    'monitoring-years': block.given(
      'monitoring-years',
      MEASURES['monitoring-years'].title,
      'year',
      ship.monitoringYears,
    ),
    one: block.given('one', MEASURES.one.title, 'each', one),
  };
}
