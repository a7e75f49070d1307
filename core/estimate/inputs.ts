import type { Figure } from '../base';
import type { Presence, ShipYears } from '../materials';
import { isCrewLimit } from '../rate-book';
import { SheetMemory, type Given } from '../sheet';
import type { Plant, ShipGivens } from '../vessel';
import type { Library } from '../work';
import type { CalendarChoices } from './calendars';

/** What the planner changed about one item. */
export interface Adjustment {
  readonly item: string;
  readonly include?: boolean | undefined;
  readonly quantity?: Figure | undefined;
  readonly hoursPerUnit?: Figure | undefined;
  readonly crewsAtOnce?: Figure | undefined;
  readonly crews?: Figure | undefined;
  readonly duration?: Figure | undefined;
  readonly notBefore?: string | undefined;
  readonly actualStart?: string | undefined;
  readonly actualFinish?: string | undefined;
  readonly remaining?: Figure | undefined;
}

/** Everything the estimate of one scenario is worked out from. */
export interface EstimateInput {
  readonly library: Library;
  readonly ship: ShipGivens;
  readonly years: ShipYears;
  readonly plant: Plant;
  /** Presence by material: of the survey where it decides, else by era. */
  readonly presence: ReadonlyMap<string, Presence>;
  /** The chosen value of every option. */
  readonly options: Readonly<Record<string, string>>;
  /** Measured quantities by driver, as numbers in the driver's unit. */
  readonly measured: ReadonlyMap<string, Given>;
  readonly adjustments: ReadonlyMap<string, Adjustment>;
  /** Overrides of the rate book, by place such as `trades/burner/wage`. */
  readonly overrides: ReadonlyMap<string, Figure>;
  readonly calendars: CalendarChoices;
  /** Hours of a shift and share of hours paid at the overtime premium, from the shift pattern. */
  readonly shiftHours: Given;
  readonly overtimeShare: Given;
  /** Factor on hours because people tire under the shift pattern. */
  readonly shiftFactor: Given;
  readonly prices: PriceChoices;
  /** Contingency as a share of the total, where the policy is a percentage. */
  readonly contingencyShare?: Given | undefined;
  readonly statusDate?: string | undefined;
}

const MEMORIES = new WeakMap<Library, SheetMemory>();

/** What the sheets of a library read when they were last built. */
export function memoryOf(library: Library): SheetMemory {
  const known = MEMORIES.get(library) ?? new SheetMemory();
  MEMORIES.set(library, known);
  return known;
}

/** At what prices: the day whose prices the rates are brought to, or one year whose mean holds for everything. */
export interface PriceChoices {
  readonly priceDate: string;
  readonly fixedYear?: number | undefined;
}

/** The place of the rate book a figure is held at, and the figure that holds: an override stands before it. */
export function rateAt(
  input: Pick<EstimateInput, 'overrides'>,
  place: string,
  figure: Figure,
): { figure: Figure; place: string } {
  const override = input.overrides.get(place);
  return override === undefined
    ? { figure, place: `templates/rates/${place}` }
    : { figure: override, place: `/rates/overrides/${place}` };
}

/**
 * How many of a crew the project says can be fielded at once, and where it says so; none where the rate book holds,
 * which it does where the project names fewer than one.
 */
export function crewsAvailable(
  overrides: EstimateInput['overrides'],
  crew: string,
): { readonly figure: Figure; readonly place: string } | undefined {
  const at = `crews/${crew}/available`;
  const figure = overrides.get(at);
  return figure && isCrewLimit(figure) ? { figure, place: `/rates/overrides/${at}` } : undefined;
}
