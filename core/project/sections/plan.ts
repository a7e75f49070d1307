import { z } from 'zod';
import { figureSchema, isoDate, key } from '../../base';
import { share, titleText, words } from './texts';

/** A quote: what it covers, until when, and whether it is the one relied on. */
export const quoteSchema = z.strictObject({
  id: key,
  vendor: titleText,
  dated: isoDate,
  validUntil: isoDate,
  covers: z.array(z.strictObject({ item: key, share })).min(1),
  exclusions: z.array(words).default([]),
  /** A lump sum in USD, or a price per unit of the one item it covers. */
  amount: figureSchema,
  chosen: z.boolean(),
  /** What is missing from it against the scope asked for (positive), or more than asked (negative), in USD. */
  adjustments: z.array(z.strictObject({ title: titleText, amount: figureSchema })).optional(),
  /** Why it was chosen though it is not the lowest. */
  reason: words.optional(),
  attachment: z.string().optional(),
  note: words.optional(),
});

/** What the planner changes about one work item; every change keeps its note. */
export const adjustmentSchema = z.strictObject({
  item: key,
  include: z.boolean().optional(),
  quantity: figureSchema.optional(),
  hoursPerUnit: figureSchema.optional(),
  crewsAtOnce: figureSchema.optional(),
  /** Crews planned for it, in place of those that its hours ask for: more than those crowd each other. */
  crews: figureSchema.optional(),
  duration: figureSchema.optional(),
  notBefore: isoDate.optional(),
  actualStart: isoDate.optional(),
  actualFinish: isoDate.optional(),
  remaining: figureSchema.optional(),
  note: words,
});

/** A day that a project could be planned or priced on: a year beyond these is a slip of the hand. */
export const plannedDate = isoDate.refine(
  date => date >= '1970-01-01' && date <= '2100-12-31',
  'write a date from 1970-01-01 to 2100-12-31',
);

export const calendarsSchema = z.strictObject({
  start: plannedDate,
  deadline: plannedDate.optional(),
  federalHolidays: z.boolean(),
  closures: z
    .array(
      z.strictObject({
        id: key,
        title: titleText,
        from: isoDate,
        to: isoDate,
        calendars: z.array(z.enum(['office', 'yard', 'sea', 'continuous'])),
      }),
    )
    .default([]),
});

/** A relationship between two work items: the second after, with, or until the first. */
export const relationshipSchema = z.strictObject({
  from: key,
  to: key,
  kind: z.enum(['FS', 'SS', 'FF', 'SF']),
  lag: figureSchema.optional(),
  maximumLag: figureSchema.optional(),
  note: words.optional(),
});

/** One difference of a scenario: where in the document, and what stands there instead. */
export const changeSchema = z.strictObject({
  at: z.string().regex(/^(\/[A-Za-z0-9-]+)+$/),
  to: z.json(),
  note: words.optional(),
});
export const scenarioSchema = z.strictObject({
  id: key,
  title: titleText,
  note: words.optional(),
  changes: z.array(changeSchema),
});
