import { z } from 'zod';
import risk from '../../../templates/risk.json';
import { BugError, decimalText, figureSchema, key, provenanceSchema } from '../../base';

const impact = z.strictObject({ stage: key, activity: key.optional() });

const eventSchema = z.strictObject({
  id: key,
  title: z.string().min(3),
  /** That such things happen, on record. */
  happened: provenanceSchema,
  probability: figureSchema,
  /** A share of the cost of the stage, on its largest line. */
  cost: impact.extend({ share: figureSchema }).optional(),
  /** Work days on the activity named, or on the longest of the stage. */
  delay: impact.extend({ workDays: figureSchema }).optional(),
  owner: z.string(),
  /** What can be done, its price, and what probability and share of the impact it leaves. */
  mitigation: z.strictObject({
    title: z.string().min(3),
    cost: figureSchema,
    probability: figureSchema,
    impactLeft: figureSchema,
  }),
  note: z.string(),
});

const driverSchema = z.strictObject({
  id: key,
  title: z.string().min(3),
  factor: figureSchema,
  /** What it multiplies: columns of the sheets, of some stages, some equipment, or materials of concern only. */
  moves: z
    .array(
      z.strictObject({
        columns: z.array(z.string()).min(1),
        stages: z.array(key).optional(),
        equipment: z.array(key).optional(),
        materials: z.literal(true).optional(),
      }),
    )
    .min(1),
  note: z.string(),
});

/** What part of the library’s ranges is drawn for some givens: the ends are the furthest seen of anything of the kind. */
const narrowingSchema = z.strictObject({
  id: key,
  title: z.string().min(3),
  /** By the column key of the sheets. */
  columns: z.array(z.string()).default([]),
  /** By the beginning of their ids. */
  held: z.array(z.string()).default([]),
  share: figureSchema,
});

const twelve = z.array(decimalText).length(12);

/** The template file of risk: register, drivers, correlations and weather, every figure with its basis. */
export const riskFile = z.strictObject({
  events: z.array(eventSchema),
  drivers: z.array(driverSchema),
  narrowings: z.array(narrowingSchema),
  /** Rank correlations between givens, by the column key of the sheet. */
  correlations: z.array(z.strictObject({ first: key, second: key, correlation: figureSchema })),
  weather: z.strictObject({
    /** By weather window of the work items: share of workable days, January to December. */
    series: z.array(
      z.strictObject({
        id: key,
        title: z.string(),
        workable: twelve,
        persistence: decimalText,
        ...provenanceSchema.shape,
      }),
    ),
    /** Days a spread stands by at most before it is released. */
    standbyDays: figureSchema,
  }),
});

export type RiskFile = z.infer<typeof riskFile>;
export type RiskEventRow = RiskFile['events'][number];
export type Narrowing = RiskFile['narrowings'][number];
export type RiskDriverRow = RiskFile['drivers'][number];

let shipped: RiskFile | undefined;

/** The risk file that is shipped with the program. @throws BugError when it does not fit: the tests see to it. */
export function shippedRisk(): RiskFile {
  if (shipped === undefined) {
    const read = riskFile.safeParse(risk);
    if (!read.success) throw new BugError(z.prettifyError(read.error));
    shipped = read.data;
  }
  return shipped;
}
