import { z } from 'zod';
import { figureSchema, key, provenanceSchema } from '../base';

/** A trade: the wage an hour before any burden, at its own price year. */
export const tradeSchema = z.strictObject({
  id: key,
  title: z.string(),
  occupation: z.string(),
  wage: figureSchema,
  maritime: z.boolean(),
});

/** What stands on top of a wage, each apart: shares of the wage, or dollars an hour. */
export const burdensSchema = z.strictObject({
  fringeAndPayroll: figureSchema,
  publicStaff: figureSchema,
  longshorePremium: figureSchema,
  smallTools: figureSchema,
  protectiveGear: figureSchema,
  overtimePremium: figureSchema,
});

/** A crew: its people by trade. The composite rate is worked out in the sheet, never given. */
export const crewSchema = z.strictObject({
  id: key,
  title: z.string(),
  members: z.array(z.strictObject({ trade: key, people: figureSchema })).min(1),
  /** How many such crews the yard can field at once, and the range of crew sizes that make sense. */
  available: figureSchema,
  /** Who employs them: a contractor (burdened, longshore where maritime) or the owner's public staff. */
  employer: z.enum(['contractor', 'owner']),
});

/** Whether a number of crews at once can be kept to: with fewer than one, no work of theirs could ever begin. */
export function isCrewLimit({ value }: Pick<z.infer<typeof figureSchema>, 'value'>): boolean {
  return Number(value) >= 1;
}

/** Other numbers of crews than the usual one, what crowding costs, and what it takes to hire a person and to let one go. */
export const crewSizesSchema = z.strictObject({
  /** Shares of the usual number of crews that may be planned instead, each with its name. */
  sizes: z.array(z.strictObject({ id: key, title: z.string(), share: figureSchema })).min(1),
  /** Hours more, as a share, when the crews of an item are doubled. */
  crowding: figureSchema,
  /** Paid hours for one person hired and released. */
  hireAndRelease: figureSchema,
});

/** Equipment: a rate by hour, work day or week, with mobilisation. */
export const equipmentSchema = z.strictObject({
  id: key,
  title: z.string(),
  rate: figureSchema,
  mobilisation: figureSchema.optional(),
  index: z.enum(['general', 'fuel']),
  available: figureSchema.optional(),
});

/** A disposal stream: how it is packed, priced and counted. */
export const streamSchema = z.strictObject({
  id: key,
  title: z.string(),
  unitPrice: figureSchema,
  containerTonnes: figureSchema,
  containerVolume: figureSchema.optional(),
  densityTonnesPerCubicMetre: figureSchema.optional(),
  containerFee: figureSchema,
  /** Call-out and loading of one load, whatever the distance. */
  haulPerContainer: figureSchema,
  /** On top of it, by road distance to the disposal site, there and back: dollars a metre a container. */
  haulPerMetre: figureSchema.optional(),
  minimumCharge: figureSchema.optional(),
  profileFee: figureSchema,
  manifestPerContainer: figureSchema,
  /** Whether it counts towards the hazardous-waste generator category, and why. */
  counts: z.boolean(),
  countsReason: z.string(),
  acute: z.boolean(),
  /** Escalated with the disposal index, except scrap, which is priced by the market. */
  index: z.enum(['disposal', 'general']),
});

/** An effect of the conditions of work on hours: a separate input, never inside a rate. */
export const conditionSchema = z.strictObject({ id: key, title: z.string(), factor: figureSchema });

/** Scrap in the market's own unit, with date, grade, deduction and freight. */
export const scrapSchema = z.strictObject({
  id: key,
  title: z.string(),
  price: figureSchema,
  freightAndProcessing: figureSchema,
  shareReceived: figureSchema,
});

/** A mark-up of the contractor, in the order it applies. */
export const markUpSchema = z.strictObject({
  id: key,
  title: z.string(),
  /** What it is a share of: direct cost, direct plus the mark-ups before it, or the whole contract price (itself included). */
  on: z.enum(['direct', 'direct and before', 'contract price']),
  share: figureSchema,
});

/** A price index: yearly values and where they come from. */
export const indexSchema = z.strictObject({
  id: key,
  title: z.string(),
  ...provenanceSchema.shape,
  years: z.array(z.strictObject({ year: z.int(), value: z.string(), months: z.int().min(1).max(12) })),
});

/** Yearly rates of change past the last published month: a judgement with a range, never called an index of prices. */
export const outlookSchema = z.strictObject({
  labour: figureSchema,
  fuel: figureSchema,
  disposal: figureSchema,
  general: figureSchema,
});

export const rateBookFile = z.strictObject({
  id: key,
  title: z.string(),
  region: z.string(),
  priceYear: z.int(),
  locationFactor: figureSchema,
  shiftHours: figureSchema,
  trades: z.array(tradeSchema),
  burdens: burdensSchema,
  crews: z.array(crewSchema),
  crewSizes: crewSizesSchema,
  equipment: z.array(equipmentSchema),
  streams: z.array(streamSchema),
  conditions: z.array(conditionSchema),
  scrap: z.array(scrapSchema),
  markUps: z.array(markUpSchema),
});
export const indicesFile = z.strictObject({ indices: z.array(indexSchema), outlook: outlookSchema });

export type RateBook = z.infer<typeof rateBookFile>;
export type Trade = z.infer<typeof tradeSchema>;
export type Crew = z.infer<typeof crewSchema>;
export type Equipment = z.infer<typeof equipmentSchema>;
export type WasteStream = z.infer<typeof streamSchema>;
export type MarkUp = z.infer<typeof markUpSchema>;
export type Indices = z.infer<typeof indicesFile>;
