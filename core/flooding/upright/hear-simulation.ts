import type { SimulationResult } from '../simulate/ship';
import type { ScreenCase } from './cases';
import { UPRIGHT_DEFAULTS } from './defaults';
import type { UprightInput, UprightVerdict } from './types';
import type { Judged } from './verdict';

/** Share of the depth up to which a list in the simulation counts: beyond it the deck is nearly under. Judgement. */
const NEARLY_UNDER = 0.9;
const RISING: readonly UprightVerdict[] = ['stays up', 'leans', 'may roll over'];

/** Greatest list of the simulation, degrees, while there is freeboard left. */
export function listBeforeUnder(run: SimulationResult, depth: number): number {
  return run.history
    .filter(({ draught }) => draught < NEARLY_UNDER * depth)
    .reduce((most, { heel }) => Math.max(most, Math.abs(heel)), 0);
}

function standingOf(list: number, input: UprightInput): UprightVerdict {
  const limits = input.limits ?? UPRIGHT_DEFAULTS.limits.value;
  if (list > limits.leans) return 'may roll over';
  return list > limits.staysUp ? 'leans' : 'stays up';
}

/**
 * Hears the simulation of the likely values too: it has what the section check leaves out (a low side that fills
 * faster because she lists, trim, air). It can make a verdict worse, never better; "cannot tell" it only explains.
 */
export function hearSimulation(
  judged: Judged,
  likely: ScreenCase,
  run: SimulationResult,
  input: UprightInput,
): Judged {
  if (run.outcome === 'afloat' && likely.standing !== 'does not sink') {
    const why = 'The flooding simulation ends afloat: air or openings above the water hold her up.';
    return { verdict: 'does not sink', reasons: [why, ...judged.reasons] };
  }
  const list = listBeforeUnder(run, input.particulars.depth);
  const shown = standingOf(list, input);
  const words =
    list > 60
      ? 'The flooding simulation of the likely values rolls over.'
      : `The flooding simulation of the likely values lists up to ${list.toFixed(1)} degrees.`;
  if (judged.verdict === 'cannot tell') return { ...judged, reasons: [...judged.reasons, words] };
  if (RISING.indexOf(shown) <= RISING.indexOf(judged.verdict) || judged.verdict === 'does not sink')
    return judged;
  return { verdict: shown, reasons: [words, ...judged.reasons] };
}
