/** Density of sea water, t/m3. @source Common practice: standard sea water 1.025 t/m3 (1.0252 at 15 C). */
export const SEA_WATER = 1.025;
/** Acceleration of gravity, m/s2. @source Handbook value; standard gravity is 9.80665 (CGPM 1901). */
export const GRAVITY = 9.81;
/** Density of steel, t/m3. @source Handbook value for structural steel. */
export const STEEL = 7.85;
export const DEGREE = Math.PI / 180;
