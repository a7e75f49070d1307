import { anyBlocks, at } from '../../base';
import { applyEffect } from './apply-effect';
import { checkUprightInput } from './check-input';
import { hearFacts } from './kg-facts';
import { hearSimulation, listBeforeUnder } from './hear-simulation';
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
      const moment = state.volumes.reduce((sum, v, i) => sum + v * at(plan.spaces, i).y, 0);
      return total > 0 ? Math.abs(moment) / (total * (plan.breadth / 2)) : 0;
    }),
  );
}

/** The worst standing of the cases. */
function worstStanding({ cases }: Screened): UprightVerdict {
  return at(
    STEPS.filter(step => cases.some(({ standing }) => standing === step)),
    0,
  );
}

/** Whether a set is worth a simulation, told by what the section check alone comes to. */
type Worth = (verdict: UprightVerdict, worst: UprightVerdict) => boolean;

/** What a set of choices comes to: the section check over the ranges, and the simulation of the likely values. */
function lookAt(
  input: UprightInput,
  choices: readonly UprightChoice[],
  isWorthIt: Worth = () => true,
): UprightChoiceResult | undefined {
  const changed = choices.reduce((now, { effect }) => applyEffect(now, effect), input);
  if (anyBlocks(checkUprightInput(changed))) return undefined;
  const ship = resolveShip(changed);
  const screened = screenRanges(ship, hearFacts(ship), QUICK_STEPS);
  const greatest = worstCase(screened.cases);
  const likelyHeel = screened.likely.greatestHeel;
  const worst = worstStanding(screened);
  const run = isWorthIt(screened.judged.verdict, worst) ? runLikely(ship, screened.likely).run : undefined;
  const judged = run ? hearSimulation(screened.judged, screened.likely, run, changed) : screened.judged;
  return {
    ids: choices.map(({ id }) => id),
    titles: choices.map(({ title }) => title),
    cost: choices.reduce((sum, { cost }) => sum + cost, 0),
    days: choices.reduce((sum, { days }) => sum + days, 0),
    verdict: judged.verdict,
    worst: judged.verdict === 'does not sink' ? judged.verdict : worst,
    ...(greatest.greatestHeel === undefined ? {} : { greatestHeelDegrees: greatest.greatestHeel }),
    ...(likelyHeel === undefined ? {} : { likelyHeelDegrees: likelyHeel }),
    lowestGmMetres: greatest.lowestGm.gm,
    unevenness: unevenness(screened),
    ...(run === undefined ? {} : { peakListDegrees: listBeforeUnder(run, changed.particulars.depth) }),
  };
}

/** A result with what it changes against the plan as it stands. */
function against(now: UprightChoiceResult, result: UprightChoiceResult): UprightChoiceResult {
  const [before, after] = [now.greatestHeelDegrees, result.greatestHeelDegrees];
  return {
    ...result,
    ...(before === undefined || after === undefined ? {} : { heelChangeDegrees: after - before }),
    unevennessChange: result.unevenness - now.unevenness,
  };
}

function isOneOfEachGroup(set: readonly UprightChoice[]): boolean {
  const groups = set.flatMap(({ group }) => (group === undefined ? [] : [group]));
  return new Set(groups).size === groups.length;
}

/** Sets of up to three choices that do not exclude each other, cheapest first; equal cost, fewer days first. */
function setsByCost(choices: readonly UprightChoice[]): UprightChoice[][] {
  let sets: UprightChoice[][] = [[]];
  for (const choice of choices)
    sets = sets.concat(sets.filter(set => set.length < LARGEST_SET).map(set => [...set, choice]));
  const sum = (set: readonly UprightChoice[], key: 'cost' | 'days'): number =>
    set.reduce((total, choice) => total + choice[key], 0);
  return sets
    .filter(set => set.length > 0 && isOneOfEachGroup(set))
    .sort((a, b) => sum(a, 'cost') - sum(b, 'cost') || sum(a, 'days') - sum(b, 'days'));
}

function isStepBetter(verdict: UprightVerdict, now: UprightVerdict): boolean {
  return STEPS.indexOf(verdict) > STEPS.indexOf(now);
}

interface Found {
  readonly cheapest?: UprightChoiceResult;
  readonly narrows?: UprightChoiceResult;
}

/** The cheapest set that improves the verdict; without one, the cheapest that improves the worst standing. */
function search(
  input: UprightInput,
  now: UprightChoiceResult,
  each: readonly UprightChoiceResult[],
  sets: readonly UprightChoice[][],
): Found {
  let narrows: UprightChoiceResult | undefined;
  for (const set of sets) {
    const [only] = set;
    const known = set.length === 1 ? each.find(({ ids }) => ids[0] === only?.id) : undefined;
    const result = known ?? lookAt(input, set, verdict => isStepBetter(verdict, now.verdict));
    if (result === undefined) continue;
    if (isStepBetter(result.verdict, now.verdict)) return { cheapest: against(now, result) };
    const isNarrower = result.verdict === now.verdict && isStepBetter(result.worst, now.worst);
    if (isNarrower && narrows === undefined) narrows = against(now, result);
  }
  return narrows === undefined ? {} : { narrows };
}

function messageOf(now: UprightChoiceResult, { cheapest, narrows }: Found, scope: string): string {
  if (cheapest !== undefined)
    return `The cheapest set that improves the verdict from "${now.verdict}" to "${cheapest.verdict}": ${cheapest.titles.join(', ')}.`;
  const none = `None of ${scope} of the choices improves the verdict "${now.verdict}".`;
  if (narrows === undefined) return none;
  return `${none} The cheapest set that takes "${now.worst}" out of the ranges: ${narrows.titles.join(', ')}.`;
}

/**
 * The choices side by side, each on its own, and the cheapest set of up to three that improves the verdict by a
 * step; or the words that no set does. Money and days are the caller's.
 * @param verdict of the plan as it stands, where the caller knows it.
 */
export function compareChoices(input: UprightInput, verdict?: UprightVerdict): UprightChoices | undefined {
  const choices = input.choices ?? [];
  if (choices.length === 0) return undefined;
  const plain = lookAt(input, []);
  if (plain === undefined) return undefined;
  const now = verdict === undefined ? plain : { ...plain, verdict };
  const each = choices.flatMap(choice => {
    const result = lookAt(input, [choice]);
    return result === undefined ? [] : [against(now, result)];
  });
  const sets = setsByCost(choices);
  const found = search(input, now, each, sets.slice(0, MOST_SETS));
  const scope =
    sets.length > MOST_SETS ? `the ${MOST_SETS} cheapest sets` : `any set of up to ${LARGEST_SET}`;
  return { now, each, ...found, message: messageOf(now, found, scope) };
}
