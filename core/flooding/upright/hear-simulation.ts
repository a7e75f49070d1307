import type { SimulationResult, Snapshot } from '../simulate/ship';
import type { ScreenCase } from './cases';
import { UPRIGHT_DEFAULTS } from './defaults';
import type { UprightInput, UprightVerdict } from './types';
import type { Judged } from './verdict';

/** Share of the depth up to which a list in the simulation counts: beyond it the deck is nearly under. Judgement. */
const NEARLY_UNDER = 0.9;
/** Degrees beyond which a list in the simulation is a roll. */
const ROLLED = 60;
const RISING: readonly UprightVerdict[] = ['stays up', 'leans', 'may roll over'];

/** The moment of the greatest list of the simulation while there is freeboard left; none where she never has any. */
export function worstBeforeUnder(history: readonly Snapshot[], depth: number): Snapshot | undefined {
  const before = history.filter(({ draught }) => draught < NEARLY_UNDER * depth);
  return before.reduce<Snapshot | undefined>(
    (worst, one) => (worst !== undefined && Math.abs(worst.heel) >= Math.abs(one.heel) ? worst : one),
    undefined,
  );
}

/** Greatest list of the simulation, degrees, while there is freeboard left. */
export function listBeforeUnder(run: SimulationResult, depth: number): number {
  return Math.abs(worstBeforeUnder(run.history, depth)?.heel ?? 0);
}

/** What the simulation lists, and what it shows once the deck is nearly under, which is judged no more. */
function listWords(run: SimulationResult, list: number): string {
  if (list > ROLLED) return 'The flooding simulation of the likely values rolls over.';
  const later = run.history.reduce((most, { heel }) => Math.max(most, Math.abs(heel)), 0);
  const beyond =
    later.toFixed(1) === list.toFixed(1)
      ? ''
      : `; the ${later.toFixed(1)} degrees it shows with the deck nearly under are not judged`;
  return `The flooding simulation of the likely values lists up to ${list.toFixed(1)} degrees while there is freeboard left${beyond}.`;
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
  const words = listWords(run, list);
  if (judged.verdict === 'cannot tell') return { ...judged, reasons: [...judged.reasons, words] };
  if (RISING.indexOf(shown) <= RISING.indexOf(judged.verdict) || judged.verdict === 'does not sink')
    return judged;
  return { verdict: shown, reasons: [words, ...judged.reasons] };
}
