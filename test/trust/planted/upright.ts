import { bugs } from './bug';

/** Statics, flooding, the verdict. */
export const uprightBugs = bugs(
  [
    'the statics of the box barge are those of the handbooks',
    'core/stability/statics/metacentric-height.ts',
    'box.breadth ** 2 / (12 * box.draught)',
    'box.breadth ** 2 / (6 * box.draught)',
    'test/reference/statics.test.ts',
    'has GM 3.3333 m',
  ],
  [
    'the flooded barge heels as worked out twice elsewhere',
    'core/stability/body/equilibrium-heel.ts',
    'disturbance: 0.1 * DEGREE',
    'disturbance: 40 * DEGREE',
    'test/core/stability/box-heel.test.ts',
    'flooded over its whole length',
  ],
  [
    'an afloat ship is told not to sink',
    'core/flooding/upright/cases.ts',
    "if (!path.end.sinks) return 'does not sink';",
    '',
    'test/core/flooding/upright-screen.test.ts',
    'does not sink',
  ],
  [
    'a symmetric ship stays at no list',
    'core/stability/geometry/polygon.ts',
    'kept.push([py + s * (y - py), pz + s * (z - pz)]);',
    'kept.push([py + 1.01 * s * (y - py), pz + s * (z - pz)]);',
    'test/core/stability/other-sections.test.ts',
    'equilibrium heel of other sections',
  ],
  [
    'openings pass what the orifice formula says',
    'core/flooding/hydraulics/orifice.ts',
    'export const SHARP_EDGE = 0.6;',
    'export const SHARP_EDGE = 0.62;',
    'test/reference/hydraulics.test.ts',
    '0.5 m2 under 3 m',
  ],
  [
    'fill times are the closed form',
    'core/flooding/hydraulics/fill-times.ts',
    '((2 * filling.plan) / k)',
    '((1.9 * filling.plan) / k)',
    'test/reference/hydraulics.test.ts',
    'a floor of 50 m2',
  ],
  [
    'weight taken off the top changes GM by the formula',
    'core/stability/statics/metacentric-height.ts',
    '(displacement * kg - mass * vcg) / (displacement - mass)',
    '(displacement * kg - mass * vcg) / displacement',
    'test/reference/statics.test.ts',
    'once 200 t at 15 m are off',
  ],
  [
    'every result says that it is a screening',
    'core/flooding/upright/words.ts',
    "Screening, not a naval architect's study.",
    'A study.',
    'test/core/flooding/upright-screen.test.ts',
    'says that it is screening',
  ],
);
