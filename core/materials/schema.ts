import { z } from 'zod';
import { figureSchema, isoDate, key, provenanceSchema } from '../base';

/** The six families of the national guidance for preparing vessels as artificial reefs (EPA 842-B-06-002, 2006). */
export const FAMILIES = ['oil-and-fuel', 'asbestos', 'pcb', 'paint', 'solids', 'other'] as const;
export type FamilyKey = (typeof FAMILIES)[number];

/** A share of presence, 0 to 1: low, likely (the mode) and high. */
const shareSchema = z.strictObject({
  low: z.number().min(0).max(1),
  likely: z.number().min(0).max(1),
  high: z.number().min(0).max(1),
});

/** Presence from one date on, until the next row of the table: a step table over a year of the ship's life. */
const eraSchema = z.strictObject({ from: z.int(), share: shareSchema, ...provenanceSchema.shape });

/** A material of concern: where it is found, since when it was no longer used, and what must become of it. */
export const materialSchema = z.strictObject({
  id: key,
  family: z.enum(FAMILIES),
  title: z.string(),
  /** The date of the ship's life that decides presence; none means the material has no era rule. */
  decidedBy: z.enum(['built', 'last-refit', 'last-coating', 'none']),
  /** Presence by the deciding year; the first row's `from` is 0. */
  eras: z.array(eraSchema).min(1),
  /** The clean-up goal as a paraphrase; `goalBasis` says so. */
  goal: z.string(),
  goalBasis: z.string(),
  found: z.array(z.string()).min(1),
  steps: z.array(z.string()).min(1),
  evidence: z.array(z.string()).min(1),
  cautions: z.array(key),
});
export type Material = z.infer<typeof materialSchema>;
export const materialsFile = z.strictObject({
  families: z.array(
    z.strictObject({ id: z.enum(FAMILIES), title: z.string(), goal: z.string(), goalBasis: z.string() }),
  ),
  materials: z.array(materialSchema),
});

/** A caution: the danger, the usual care, who decides, and a pointer to the rule. Printed wherever the danger is. */
export const cautionSchema = z.strictObject({
  id: key,
  work: z.string(),
  danger: z.string(),
  care: z.string(),
  decides: z.string(),
  pointer: z.string(),
  pointerBasis: provenanceSchema,
});
export type Caution = z.infer<typeof cautionSchema>;
export const cautionsFile = z.strictObject({ closing: z.string(), cautions: z.array(cautionSchema) });

/** A threshold of a rule, with its source and the day somebody last compared it with the text. */
export const tripPointSchema = z.strictObject({
  id: key,
  title: z.string(),
  figure: figureSchema,
  /** How a value is held against it. */
  trips: z.enum(['at or above', 'above', 'below']),
  rule: z.string(),
  consequence: z.string(),
  checkedOn: isoDate,
});
export type TripPoint = z.infer<typeof tripPointSchema>;
export const tripPointsFile = z.strictObject({ tripPoints: z.array(tripPointSchema) });

/** Items of the guidance's work plan: what an unknown of each does to the ranges of which families. */
export const intakeFile = z.strictObject({
  intake: z.array(
    z.strictObject({
      item: key,
      families: z.array(z.enum(FAMILIES)).min(1),
      /** Share of the likely amount by which the range grows below and above. */
      widening: figureSchema,
    }),
  ),
});

/** Materials whose waste goes one of two ways by its leach test: the stream when it is hazardous, and otherwise. */
export const wasteClassesFile = z.strictObject({
  wasteClasses: z.array(
    z.strictObject({ material: key, hazardous: key, otherwise: key, ...provenanceSchema.shape }),
  ),
});
