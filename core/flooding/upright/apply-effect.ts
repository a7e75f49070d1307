import { withCuts } from './cross-flooding';
import type { UprightEffect, UprightInput } from './types';

/** The input with what a choice changes. Effects of several choices are applied one after the other. */
export function applyEffect(input: UprightInput, effect: UprightEffect): UprightInput {
  const tight = new Set(effect.keepTight ?? []);
  const compartments = input.compartments.map(compartment => {
    const added = (effect.openings ?? []).filter(opening => opening.compartment === compartment.id);
    const openings = [...compartment.openings, ...added.map(({ compartment: _, ...opening }) => opening)];
    return { ...compartment, openings, ...(tight.has(compartment.id) ? { floods: false } : {}) };
  });
  const changed: UprightInput = {
    ...input,
    compartments,
    removedWeights: [...input.removedWeights, ...(effect.removedWeights ?? [])],
    ...(effect.kg === undefined ? {} : { kg: effect.kg }),
    ...(effect.openingsMismatch === undefined ? {} : { openingsMismatch: effect.openingsMismatch }),
    ...(effect.method === undefined ? {} : { method: effect.method }),
  };
  return effect.cuts === undefined ? changed : withCuts(changed, effect.cuts);
}
