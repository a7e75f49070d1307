import { z } from 'zod';
import { figureSchema, key, provenanceSchema } from '../base';

/** Stages, in the order of the work. */
export const STAGES = [
  'title-and-assessment',
  'permits',
  'procurement',
  'yard',
  'clean-up',
  'topside',
  'openings',
  'acceptance',
  'tow',
  'sinking',
  'after-sinking',
  'management',
] as const;
export type StageKey = (typeof STAGES)[number];

/** Places of work: zones of the ship and where work happens ashore and at sea. */
export const placeSchema = z.strictObject({
  id: key,
  title: z.string(),
  kind: z.enum(['office', 'ship', 'yard', 'sea', 'site']),
  /** People who can work there at once. */
  crewLimit: figureSchema.optional(),
  /** A larger ship has room for more: the limit is at least this many people per unit of a driver. */
  crewLimitGrows: z.strictObject({ driver: key, perUnit: figureSchema }).optional(),
  touches: z.array(key),
});

/**
 * A driver: a quantity that work items scale from.
 * value = at reference × (base ÷ reference)^exponent × presence + fixed, rounded to `decimals`.
 */
export const driverSchema = z.strictObject({
  id: key,
  title: z.string(),
  unit: z.string(),
  decimals: z.int().min(0).max(4),
  /** A measure of the take-off, or another driver listed before it. */
  base: key,
  /** The value when the base equals the reference: a figure, or the key of a hull type's physical quantity. */
  atReference: z.union([figureSchema, z.strictObject({ hullQuantity: key })]),
  reference: figureSchema,
  exponent: figureSchema.optional(),
  fixed: figureSchema.optional(),
  /** The material whose presence by era scales it. */
  material: key.optional(),
  /** Only ships with this propulsion plant have it. */
  plant: z.enum(['steam', 'diesel']).optional(),
});

/** When an item is in a scenario: every condition must hold. */
export const conditionOfUse = z.union([
  z.strictObject({ option: key, is: z.array(z.string()).min(1) }),
  z.strictObject({ driver: key, present: z.literal(true) }),
  z.strictObject({ plant: z.array(z.enum(['steam', 'diesel', 'none'])).min(1) }),
  /** Another item of the scenario fills this waste stream. */
  z.strictObject({ stream: key, filled: z.literal(true) }),
]);

/** A relationship to an earlier item; items that are not in the scenario are passed through to their own predecessors. */
export const afterSchema = z.strictObject({
  item: key,
  kind: z.enum(['FS', 'SS', 'FF', 'SF']).default('FS'),
  lag: figureSchema.optional(),
  maximumLag: figureSchema.optional(),
});

/** One work item: a cost-estimating relationship with crew, waste, equipment, relationships and basis. */
export const workItemSchema = z.strictObject({
  id: key,
  stage: z.enum(STAGES),
  title: z.string(),
  /** What is done, in one sentence a contractor would write. */
  does: z.string(),
  /** Contract work, or the owner's own cost. */
  contract: z.boolean(),
  when: z.array(conditionOfUse).default([]),
  driver: key,
  /** Quantity = factor × reference × (driver ÷ reference)^exponent + fixed, in the driver's unit. */
  factor: figureSchema.optional(),
  exponent: figureSchema.optional(),
  reference: figureSchema.optional(),
  fixed: figureSchema.optional(),
  decimals: z.int().min(0).max(3),
  /** Range of the driver over which the relationship is meant to hold, in the driver's unit. */
  valid: z.strictObject({ from: figureSchema, to: figureSchema }).optional(),
  hoursPerUnit: figureSchema.optional(),
  setupHours: figureSchema.optional(),
  crew: key.optional(),
  /** The most such crews that work on it at once; one when it is left out. */
  crewsAtOnce: figureSchema.optional(),
  /** Hours of work that bring one crew more: crews = whole-up(hours ÷ this), at least one, at most `crewsAtOnce`. */
  hoursPerCrew: figureSchema.optional(),
  conditions: z.array(key).default([]),
  place: key,
  /** Time that is not hours over crew: permits, notices, tows. In work days or calendar days. */
  duration: z.union([figureSchema, z.strictObject({ driver: key, perUnit: figureSchema })]).optional(),
  /**
   * A time-dependent item: its quantity is how long the span of the schedule lasts, from the start of the first
   * to the finish of the last of the named stages or items, in work days, calendar days or months. The relationship
   * of the driver multiplies it: `length` gives metre-days, `one-project` with a factor of 2 two of a thing a day.
   */
  span: z
    .strictObject({
      from: z.array(key).min(1),
      to: z.array(key).min(1),
      unit: z.enum(['work-day', 'day', 'month']),
    })
    .optional(),
  calendar: z.enum(['office', 'yard', 'sea', 'continuous']),
  /** Season closures that stop it, and the consecutive-day window it needs. */
  closures: z.array(key).default([]),
  window: key.optional(),
  wastes: z.array(z.strictObject({ stream: key, perUnit: figureSchema })).default([]),
  equipment: z
    .array(
      z.strictObject({
        equipment: key,
        count: figureSchema,
        by: z.enum(['work-day', 'hour', 'unit', 'lump']),
      }),
    )
    .default([]),
  materialPerUnit: figureSchema.optional(),
  subcontractPerUnit: figureSchema.optional(),
  subcontractFixed: figureSchema.optional(),
  feePerUnit: figureSchema.optional(),
  feeFixed: figureSchema.optional(),
  /** The stream whose whole tonnage this item hauls and disposes of; its driver is then `stream`. */
  disposes: key.optional(),
  /** The stream whose prices, fees and containers apply to it instead, when an option chooses another route. */
  pricedAs: key.optional(),
  /** Scrap it yields, in tonnes a unit. */
  scrap: z.strictObject({ grade: key, perUnit: figureSchema }).optional(),
  /** Weight it takes off the ship, in tonnes a unit, and at what share of the depth above keel. */
  removes: z.strictObject({ perUnit: figureSchema, heightOverDepth: figureSchema }).optional(),
  after: z.array(afterSchema).default([]),
  /** State of the zone: hot work needs gas-free; these two exclude each other in the zone and those that touch it. */
  hazard: z.enum(['hot-work', 'fuel-cleaning', 'asbestos-enclosure']).optional(),
  gasFree: z.enum(['needs', 'opens', 'loses']).optional(),
  /** What it disturbs beside what it is there to remove: hidden asbestos, or a load-bearing member it takes out. */
  disturbs: z.array(z.enum(['asbestos', 'load-bearing member'])).optional(),
  /** The materials whose clean-up goal this item meets. */
  meets: z.array(key).default([]),
  cautions: z.array(key).default([]),
  /** Nothing after it may start before it is finished: written acceptance, approvals. */
  holdPoint: z.boolean().default(false),
  /** What a month of work of the grant forms and a bid call it. */
  formLine: z.strictObject({ construction: z.string(), objectClass: z.string() }),
  bidItem: z.string(),
});

/** An option a planner chooses: its values and what each does, in words. */
export const optionSchema = z.strictObject({
  id: key,
  title: z.string(),
  default: z.string(),
  values: z
    .array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        effect: z.string(),
        /** Season closures that this value lifts. */
        lifts: z.array(key).optional(),
        /**
         * A shift pattern: hours a work day, work days a week, the share of the hours paid at the overtime premium, and
         * the factor on all hours because people tire.
         */
        shift: z
          .strictObject({
            hours: figureSchema,
            daysAWeek: figureSchema,
            overtimeShare: figureSchema,
            hoursFactor: figureSchema,
          })
          .optional(),
      }),
    )
    .min(2),
});

export const workItemsFile = z.strictObject({ items: z.array(workItemSchema) });
export const driversFile = z.strictObject({ drivers: z.array(driverSchema) });
export const placesFile = z.strictObject({ places: z.array(placeSchema) });
export const optionsFile = z.strictObject({ options: z.array(optionSchema) });

export type WorkItem = z.infer<typeof workItemSchema>;
export type Driver = z.infer<typeof driverSchema>;
export type Place = z.infer<typeof placeSchema>;
export type PlannerOption = z.infer<typeof optionSchema>;

/** A yearly closure of the sea or the site: from and to as `MM-DD`. */
export const seasonSchema = z.strictObject({
  id: key,
  title: z.string(),
  from: z.string().regex(/^\d{2}-\d{2}$/),
  to: z.string().regex(/^\d{2}-\d{2}$/),
  ...provenanceSchema.shape,
});

/** A window of consecutive days: what is added to the activity's own days for weather. */
export const windowSchema = z.strictObject({
  id: key,
  title: z.string(),
  weatherShare: figureSchema,
  weatherDays: figureSchema,
});
export const seasonsFile = z.strictObject({
  closures: z.array(seasonSchema),
  windows: z.array(windowSchema),
});
export type SeasonClosure = z.infer<typeof seasonSchema>;
export type WeatherWindow = z.infer<typeof windowSchema>;

/** The quantity a choice stands for: a share of the topside, years of monitoring. */
export const optionAmountsFile = z.strictObject({
  amounts: z.array(z.strictObject({ option: key, value: z.string(), figure: figureSchema })),
});
export type OptionAmount = z.infer<typeof optionAmountsFile>['amounts'][number];
