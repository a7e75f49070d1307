import { anyBlocks } from '../../base';
import { applyEffect } from './apply-effect';
import { checkUprightInput } from './check-input';
import { hearFacts } from './kg-facts';
import { hearSimulation } from './hear-simulation';
import { resolveShip } from './resolved';
import { runLikely } from './run-likely';
import { screenRanges, type Screened } from './screen-ranges';
import type {
  UprightChoice,
  UprightChoiceResult,
  UprightChoices,
  UprightInput,
  UprightVerdict,
} from './types';
import { worstCase } from './verdict';

/** Verdicts from the worst to the best; a step is one place in this list. */
const STEPS: readonly UprightVerdict[] = [
  'does not sink',
  'may roll over',
  'cannot tell',
  'leans',
  'stays up',
];

/** Most sets looked at, and most choices in a set: the search is small on purpose. */
const MOST_SETS = 80;
const LARGEST_SET = 3;
/** Flood levels of the quick look at a set. */
const QUICK_STEPS = 16;

/** Greatest difference between port and starboard along the path as a share of a wholly one-sided filling. */
function unevenness({ likely }: Screened): number {
  const { plan, levels } = likely.path;
  return Math.max(
    0,
    ...levels.map(({ state }) => {
      const total = state.volumes.reduce((sum, v) => sum + v, 0);
      const moment = state.volumes.reduce((sum, v, i) => sum + v * (plan.spaces[i]?.y ?? 0), 0);
      return total > 0 ? Math.abs(moment) / (total * (plan.breadth / 2)) : 0;
    }),
  );
}

/**
 * What a set of choices comes to: the section check over the ranges, and the simulation of the likely values
 * unless the check alone shows that the set is no better than `unlessBetterThan`.
 */
function lookAt(
  input: UprightInput,
  choices: readonly UprightChoice[],
  unlessBetterThan?: UprightVerdict,
): UprightChoiceResult | undefined {
  const changed = choices.reduce((now, { effect }) => applyEffect(now, effect), input);
  if (anyBlocks(checkUprightInput(changed))) return undefined;
  const ship = resolveShip(changed);
  const screened = screenRanges(ship, hearFacts(ship), QUICK_STEPS);
  if (!screened) return undefined;
  const worst = worstCase(screened.cases) ?? screened.likely;
  const likelyHeel = screened.likely.greatestHeel;
  const isWorthIt = unlessBetterThan === undefined || isStepBetter(screened.judged.verdict, unlessBetterThan);
  const judged = isWorthIt
    ? hearSimulation(screened.judged, screened.likely, runLikely(ship, screened.likely).run, changed)
    : screened.judged;
  return {
    ids: choices.map(({ id }) => id),
    titles: choices.map(({ title }) => title),
    cost: choices.reduce((sum, { cost }) => sum + cost, 0),
    days: choices.reduce((sum, { days }) => sum + days, 0),
    verdict: judged.verdict,
    ...(worst.greatestHeel === undefined ? {} : { greatestHeelDegrees: worst.greatestHeel }),
    ...(likelyHeel === undefined ? {} : { likelyHeelDegrees: likelyHeel }),
    lowestGmMetres: worst.lowestGm.gm,
    unevenness: unevenness(screened),
  };
}

/** Sets of up to three choices, cheapest first; equal cost, fewer days first. */
function setsByCost(choices: readonly UprightChoice[]): UprightChoice[][] {
  let sets: UprightChoice[][] = [[]];
  for (const choice of choices)
    sets = sets.concat(sets.filter(set => set.length < LARGEST_SET).map(set => [...set, choice]));
  const sum = (set: readonly UprightChoice[], key: 'cost' | 'days'): number =>
    set.reduce((total, choice) => total + choice[key], 0);
  return sets
    .filter(set => set.length > 0)
    .sort((a, b) => sum(a, 'cost') - sum(b, 'cost') || sum(a, 'days') - sum(b, 'days'));
}

function isStepBetter(verdict: UprightVerdict, now: UprightVerdict): boolean {
  return STEPS.indexOf(verdict) > STEPS.indexOf(now);
}

/**
 * The choices side by side, each on its own, and the cheapest set of up to three that improves the verdict by a
 * step; or the words that no set does. Money and days are the caller's.
 */
export function compareChoices(input: UprightInput, now: UprightVerdict): UprightChoices | undefined {
  const choices = input.choices ?? [];
  if (choices.length === 0) return undefined;
  const each = choices.flatMap(choice => lookAt(input, [choice]) ?? []);
  const sets = setsByCost(choices);
  const looked = sets.slice(0, MOST_SETS);
  for (const set of looked) {
    const [only] = set;
    const known = set.length === 1 ? each.find(({ ids }) => ids[0] === only?.id) : undefined;
    const result = known ?? lookAt(input, set, now);
    if (result && isStepBetter(result.verdict, now))
      return {
        each,
        cheapest: result,
        message: `The cheapest set that improves the verdict from "${now}" to "${result.verdict}": ${result.titles.join(', ')}.`,
      };
  }
  const scope =
    sets.length > looked.length ? `the ${MOST_SETS} cheapest sets` : `any set of up to ${LARGEST_SET}`;
  return { each, message: `None of ${scope} of the choices improves the verdict "${now}".` };
}
