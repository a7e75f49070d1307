import { GRAVITY, SEA_WATER, STEEL } from '../constants';

/** A wave of the design storm: height m, period s, over a depth m. */
export interface Wave {
  readonly height: number;
  readonly period: number;
  readonly depth: number;
}

/** Wave number, 1/m, of linear theory: omega^2 = g k tanh(k d), by Newton from deep water. */
export function waveNumber(wave: Wave): number {
  const omega2 = ((2 * Math.PI) / wave.period) ** 2;
  let k = omega2 / GRAVITY;
  for (let i = 0; i < 60; i++) {
    const t = Math.tanh(k * wave.depth);
    const slope = GRAVITY * t + GRAVITY * k * wave.depth * (1 - t * t);
    k -= (GRAVITY * k * t - omega2) / slope;
  }
  return k;
}

export function waveLength(wave: Wave): number {
  return (2 * Math.PI) / waveNumber(wave);
}

/** Greatest horizontal water speed, m/s, at a height above the bed. @source Airy linear wave theory. */
export function orbitalSpeed(wave: Wave, aboveBed: number): number {
  const k = waveNumber(wave);
  return (((Math.PI * wave.height) / wave.period) * Math.cosh(k * aboveBed)) / Math.sinh(k * wave.depth);
}

/** Weight of steel under sea water, t, of a mass in air, t. */
export function submergedWeight(mass: number): number {
  return mass * (1 - SEA_WATER / STEEL);
}

/** A wreck beam-on to the waves: metres, submerged weight in kN. */
export interface Wreck {
  readonly length: number;
  readonly breadth: number;
  readonly height: number;
  readonly submergedWeight: number;
}

/** Coefficients of the wave force, all judgement within ranges from memory. */
export const WAVE_COEFFICIENTS = { drag: 1.2, lift: 0.6, inertia: 2, friction: 0.5 } as const;

/** Forces on a wreck, kN, and the two factors against sliding. Never a verdict: needs a coastal engineer. */
export interface WaveForces {
  readonly drag: number;
  readonly lift: number;
  readonly inertia: number;
  readonly dragOnlyFactor: number;
  readonly inertiaFactor: number;
}

/**
 * Wave force on a wreck treated as a solid box, beam-on, speeds at half its height: drag and lift, and inertia a
 * quarter of a period apart. A flooded, pierced hull lies between the two factors.
 * @source Morison, O'Brien, Johnson and Schaaf 1950 for the form; greatest sum of drag and inertia from its phase.
 */
export function waveForces(wave: Wave, wreck: Wreck): WaveForces {
  const c = WAVE_COEFFICIENTS;
  const speed = orbitalSpeed(wave, wreck.height / 2);
  const side = wreck.length * wreck.height;
  const plan = wreck.length * wreck.breadth;
  const drag = 0.5 * SEA_WATER * c.drag * side * speed ** 2;
  const lift = 0.5 * SEA_WATER * c.lift * plan * speed ** 2;
  const acceleration = (2 * Math.PI * speed) / wave.period;
  const inertia = SEA_WATER * c.inertia * plan * wreck.height * acceleration;
  const greatest = inertia >= 2 * drag ? inertia : drag + inertia ** 2 / (4 * drag);
  const hold = c.friction * (wreck.submergedWeight - lift);
  return { drag, lift, inertia, dragOnlyFactor: hold / drag, inertiaFactor: hold / greatest };
}
