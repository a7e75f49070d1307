import { z } from 'zod';
import { figureSchema, isoDate, key } from '../../base';
import { STAGES } from '../../work';
import { titleText, words } from './texts';

const said = z.string().min(1).max(4000);

/** What was agreed, kept to compare with, checked by others and learned: the record that a reviewer asks for. */
export const recordSchema = z.strictObject({
  /** Who in charge has read the estimate and agreed. */
  approval: z
    .strictObject({ by: titleText, role: titleText.optional(), on: isoDate, note: words.optional() })
    .optional(),
  /** The approved plan that progress is compared with. */
  baseline: z
    .strictObject({
      keptOn: isoDate,
      finish: isoDate,
      total: figureSchema.optional(),
      note: words.optional(),
    })
    .optional(),
  /** An estimate of the same work by somebody who had no part in this one. */
  independent: z
    .strictObject({ by: titleText, on: isoDate, total: figureSchema, explanation: words.optional() })
    .optional(),
  /** Set when there was no estimate before this one. */
  isFirstEstimate: z.boolean().optional(),
  /** The estimate before this one, and the named steps from it to this one. */
  earlier: z
    .strictObject({
      on: isoDate,
      total: figureSchema,
      steps: z.array(z.strictObject({ title: titleText, amount: figureSchema })),
    })
    .optional(),
  /** Lines worked out a second way. */
  crossChecks: z.array(z.strictObject({ item: key, amount: figureSchema, how: said })).default([]),
  /** Stages left out of the estimate, and who pays for them. */
  leftOut: z.array(z.strictObject({ stage: z.enum(STAGES), reason: said })).default([]),
  /** Why an activity is long, floats far or has a fixed date. */
  reasons: z.array(z.strictObject({ item: key, reason: said })).default([]),
  /** What went otherwise than planned, for the next estimate. */
  lessons: z.array(z.strictObject({ id: key, on: isoDate, title: titleText, lesson: said })).default([]),
});

export type ProjectRecord = z.infer<typeof recordSchema>;
