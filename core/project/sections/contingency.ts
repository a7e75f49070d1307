import { z } from 'zod';
import { figureSchema } from '../../base';
import { share } from './texts';

export const contingencySchema = z.strictObject({
  policy: z.enum(['percentage', 'confidence']),
  share: figureSchema.optional(),
  confidence: share.optional(),
});
