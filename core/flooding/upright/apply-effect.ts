import { withCuts } from './cross-flooding';
import type { UprightEffect, UprightInput } from './types';

/** The input with what a choice changes. Effects of several choices are applied one after the other. */
export function applyEffect(input: UprightInput, effect: UprightEffect): UprightInput {
  const tight = new Set(effect.keepTight ?? []);
  const compartments = input.compartments.map(compartment => {
    const added = (effect.openings ?? []).filter(opening => opening.compartment === compartment.id);
    const openings = [...compartment.openings, ...added.map(({ compartment: _, ...opening }) => opening)];
    const late = effect.late?.find(({ compartment: id }) => id === compartment.id);
    return {
      ...compartment,
      openings,
      ...(late === undefined ? {} : { entry: late.entry }),
      ...(tight.has(compartment.id) ? { floods: false } : {}),
    };
  });
  const { sizes, targetSinkTime, ...rest } = input;
  const isSizedAnew =
    effect.method !== undefined || effect.late !== undefined || effect.openings !== undefined;
  const changed: UprightInput = {
    ...rest,
    ...(sizes === undefined || isSizedAnew ? {} : { sizes }),
    ...(targetSinkTime === undefined || effect.method !== undefined ? {} : { targetSinkTime }),
    compartments,
    removedWeights: [...input.removedWeights, ...(effect.removedWeights ?? [])],
    ...(effect.kg === undefined ? {} : { kg: effect.kg }),
    ...(effect.openingsMismatch === undefined ? {} : { openingsMismatch: effect.openingsMismatch }),
    ...(effect.method === undefined ? {} : { method: effect.method }),
  };
  return effect.cuts === undefined ? changed : withCuts(changed, effect.cuts);
}
