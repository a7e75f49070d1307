import { z } from 'zod';
import { key } from '../../base';
import { share, words } from './texts';

/** What a board may weigh scenarios by. */
export const CRITERIA = ['cost', 'finish', 'confidence', 'upright', 'checked', 'benefit'] as const;

/** How the board decides: how much each criterion counts, as it set it. */
export const decisionSchema = z.strictObject({
  weights: z.array(z.strictObject({ criterion: z.enum(CRITERIA), weight: share })).default([]),
  /** Who set the weights and why. */
  note: words.optional(),
  /** The scenario the board has chosen, once it has. */
  chosen: key.optional(),
});

export type DecisionChoices = z.infer<typeof decisionSchema>;
export type Criterion = (typeof CRITERIA)[number];
