import { z } from 'zod';
import { figureSchema } from '../base';

/** What the generator category costs: the duties of a month by category, and the call-out of one pick-up. */
export const generatorFile = z.strictObject({
  fees: z.strictObject({
    verySmall: figureSchema,
    small: figureSchema,
    large: figureSchema,
    pickUp: figureSchema,
  }),
});
export type GeneratorFile = z.infer<typeof generatorFile>;
