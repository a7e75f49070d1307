import { z } from 'zod';
import { figureSchema } from '../../base';

/** The planner's own choices of the upright screen; what is absent follows from its defaults. */
export const uprightSchema = z.strictObject({
  /** Greatest heel in degrees still called "stays up", and still called "leans". */
  staysUp: figureSchema.optional(),
  leans: figureSchema.optional(),
  /** Time from the release to gone that the openings are sized for. Faster is not safer. */
  sinkTime: figureSchema.optional(),
  /** How much slower one side may fill than the other, as a share. */
  unevenness: figureSchema.optional(),
  /** Area of the air escapes over that of the openings. */
  ventShare: figureSchema.optional(),
});
