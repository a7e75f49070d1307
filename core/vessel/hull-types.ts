import { z } from 'zod';
import { figureSchema, key } from '../base';

/**
 * A hull type sets physical quantities only: ratios of particulars and how much of a thing a ship of the
 * kind carries. No rate, factor, exponent or productivity may be keyed to it.
 */
export const hullTypeSchema = z.strictObject({
  id: key,
  title: z.string(),
  /** The real kinds it stands for, in words. */
  standsFor: z.array(z.string()).min(1),
  /** Lengths overall between which ships of the kind usually lie: relationships are set up for these. */
  usualLengths: z.strictObject({ from: figureSchema, to: figureSchema }),
  /** Propulsion plant when the document does not say, by build year: the first entry whose `until` is not passed. */
  plants: z.array(z.strictObject({ until: z.int(), plant: z.enum(['steam', 'diesel', 'none']) })).min(1),
  /** Physical quantities by key, such as `beam-per-length`; the keys are the same for every hull type. */
  quantities: z.record(key, figureSchema),
});
export type HullType = z.infer<typeof hullTypeSchema>;
export const hullTypesFile = z.strictObject({ hullTypes: z.array(hullTypeSchema) });
