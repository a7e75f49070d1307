import { z } from 'zod';
import { BugError, figureSchema, key, type Figure } from '../base';
import type { Cents } from '../cash-flow';

/** Every figure of benefit and life is a planning figure; whatever shows it shows this with it. */
export const PLANNING_FIGURE = 'planning figure: a range for a decision, not a forecast';

export const CORROSION_IDS = ['slow', 'wreck-low', 'wreck-high'] as const;
export type CorrosionId = (typeof CORROSION_IDS)[number];
export const ALTERNATIVE_IDS = ['reef', 'recycle', 'keep-laid-up', 'do-nothing'] as const;
export type AlternativeId = (typeof ALTERNATIVE_IDS)[number];

/** Schema of the file of benefits: corrosion, alternatives, usual obligations, a discount rate. */
export const benefitFile = z.strictObject({
  corrosion: z.array(z.strictObject({ id: z.enum(CORROSION_IDS), title: z.string(), figure: figureSchema })),
  alternatives: z.array(
    z.strictObject({
      id: z.enum(ALTERNATIVE_IDS),
      title: z.string(),
      /** Absent where nobody has published a cost; `why` says what is known. */
      figure: figureSchema.optional(),
      /** Over how many ships the figure is a mean. */
      ships: z.int().min(1).optional(),
      why: z.string().optional(),
    }),
  ),
  obligations: z.array(
    z.strictObject({
      id: key,
      title: z.string(),
      party: z.string(),
      firstYear: z.int().min(0),
      years: z.int().min(1),
      figure: figureSchema,
    }),
  ),
  discountRate: figureSchema,
});
export type BenefitRules = z.infer<typeof benefitFile>;

/** Reads the file of benefits. @throws ZodError when the file is not of that shape. */
export function readBenefitRules(data: unknown): BenefitRules {
  return benefitFile.parse(data);
}

/** A published rate of corrosion, mm a year. @throws BugError when the file has none of that name. */
export function corrosionOf(rules: BenefitRules, id: CorrosionId): Figure {
  const rate = rules.corrosion.find(entry => entry.id === id);
  if (!rate) throw new BugError(`the benefit file has no corrosion rate ${id}`);
  return rate.figure;
}

/** A figure in dollars as cents. */
export function dollarsToCents(dollars: string): Cents {
  return Math.round(Number(dollars) * 100);
}
