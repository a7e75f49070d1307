import { known } from '../base';
import { minus, dollarsOf, type Money } from '../money';
import {
  compareChoices,
  type UprightChoice,
  type UprightChoiceResult,
  type UprightChoices,
  type UprightInput,
  type UprightWeight,
} from '../flooding';
import type { Change, Project } from '../project';
import { evaluate, type EvaluateOptions, type Evaluation } from './evaluate';
import type { TowView } from './tow';
import { listedChoices, type ChoiceLeftOut, type ListedChoice } from './upright-choice-list';
import { screenedInput } from './upright';

/** The choices side by side, each with its direct cost and work days from the estimate itself. */
export interface PricedChoices extends UprightChoices {
  /** What to change in the document to take a choice, by its id. */
  readonly changes: Readonly<Record<string, readonly Change[]>>;
  readonly leftOut: readonly ChoiceLeftOut[];
  /** The cheapest set estimated as a whole: the parts share cranes, crews and days. */
  readonly cheapestPrice?: ChoicePrice;
  /** Propellers taken off before the tow, or left locked: what it costs and the bollard pull it changes. */
  readonly propellers?: PropellerChoice;
}

/** The other way with the propellers, against the plan as it stands. */
export interface PropellerChoice extends ChoicePrice {
  readonly title: string;
  readonly changes: readonly Change[];
  /** Bollard pull the tug needs more (below zero: less), tonnes. */
  readonly bollardPull: number;
}

/** What a plan with a choice costs and takes more than the plan without it. */
export interface ChoicePrice {
  /** Direct cost, dollars: before mark-ups; what costs less is below zero. */
  readonly cost: number;
  /** Work days from start to finish of the whole plan. */
  readonly days: number;
}

/** Passes spent on each schedule of the choices; the plan as it stands is scheduled with as many. */
const PASSES = 60;

/**
 * The choices of a scenario: more topside off, a bulkhead cut, low ballast, a length kept buoyant until late, the
 * other way of sinking. Each is laid over the project and the whole estimate is run again, so that its cost and days
 * are those of the estimate; its weights are those its work items take off and put aboard. Screening only.
 * @returns nothing without a screen, a price or a schedule to compare with.
 */
export function uprightChoices(evaluation: Evaluation, options: EvaluateOptions): PricedChoices | undefined {
  const { project, estimate: parts, upright } = evaluation;
  const input = parts && screenedInput(project, parts);
  if (parts === undefined || input === undefined || upright === undefined || upright.stages.length === 0)
    return undefined;
  const { listed, leftOut } = listedChoices({ project, parts, input, upright });
  const run = (changes: readonly Change[]) => rerun(project, changes, options);
  const plain = run([]);
  if (plain === undefined) return undefined;
  const priced = listed.flatMap(choice => {
    const changed = run(choice.changes);
    return changed === undefined ? [] : [pricedChoice(choice, plain, changed)];
  });
  const compared = compareChoices({ ...input, choices: priced }, upright.verdict);
  if (compared === undefined) return undefined;
  const changes = new Map(listed.map(choice => [choice.id, choice.changes]));
  const set = together(compared.cheapest, changes, plain, run);
  return {
    ...compared,
    changes: Object.fromEntries(changes),
    leftOut,
    ...set,
    ...propellerChoice(evaluation, plain, run),
  };
}

function propellerChoice(
  { tow }: Evaluation,
  plain: Ran,
  run: (changes: readonly Change[]) => Ran | undefined,
): Pick<PricedChoices, 'propellers'> {
  if (tow === undefined) return {};
  const to = tow.propellersLocked ? 'removed' : 'locked';
  const changes = [{ at: '/options/propellers', to }];
  const changed = run(changes);
  if (changed?.tow === undefined || plain.tow === undefined) return {};
  const title = tow.propellersLocked
    ? 'Propellers taken off before the tow'
    : 'Propellers left in place and locked';
  const bollardPull = changed.tow.bollardPull - plain.tow.bollardPull;
  return { propellers: { title, changes, bollardPull, ...priceOf(plain, changed) } };
}

/** An evaluation with the priced choices in its screen. */
export function withChoices(evaluation: Evaluation, options: EvaluateOptions): Evaluation {
  const choices = evaluation.upright && uprightChoices(evaluation, options);
  if (evaluation.upright === undefined || choices === undefined) return evaluation;
  return { ...evaluation, upright: { ...evaluation.upright, choices } };
}

/** What an estimate comes to, as far as choices ask. */
interface Ran {
  readonly direct: Money;
  readonly workDays: number;
  readonly input: UprightInput;
  readonly tow: TowView | undefined;
}

function rerun(project: Project, changes: readonly Change[], options: EvaluateOptions): Ran | undefined {
  const id = 'choice';
  const alone = { ...project, scenarios: [{ id, title: 'A choice', changes: [...changes] }] };
  const {
    estimate,
    tow,
    project: seen,
  } = evaluate(alone, {
    ...options,
    scenario: id,
    schedules: Math.min(options.schedules ?? PASSES, PASSES),
    upright: false,
  });
  const direct = estimate?.money && estimate.money.result.money(estimate.money.sums.direct);
  const workDays = estimate?.schedule.workDays;
  const input = estimate && screenedInput(seen, estimate);
  return direct === undefined || workDays === undefined || input === undefined
    ? undefined
    : { direct, workDays, input, tow };
}

function priceOf(plain: Ran, changed: Ran): ChoicePrice {
  return { cost: dollarsOf(minus(changed.direct, plain.direct)), days: changed.workDays - plain.workDays };
}

function pricedChoice({ id, title, group, effect }: ListedChoice, plain: Ran, changed: Ran): UprightChoice {
  return {
    id,
    title,
    ...(group === undefined ? {} : { group }),
    ...priceOf(plain, changed),
    effect: { ...effect, removedWeights: weightChange(plain.input, changed.input) },
  };
}

/** What the changed plan takes off that the plain one does not, and the other way round with the sign turned. */
function weightChange(plain: UprightInput, changed: UprightInput): UprightWeight[] {
  const key = (weight: UprightWeight) => JSON.stringify(weight);
  const [before, after] = [new Set(plain.removedWeights.map(key)), new Set(changed.removedWeights.map(key))];
  return [
    ...changed.removedWeights.filter(weight => !before.has(key(weight))),
    ...plain.removedWeights
      .filter(weight => !after.has(key(weight)))
      .map(weight => ({ ...weight, mass: -weight.mass })),
  ];
}

/** The price of the cheapest set as one plan; of a single choice it is known. */
function together(
  cheapest: UprightChoiceResult | undefined,
  changes: ReadonlyMap<string, readonly Change[]>,
  plain: Ran,
  run: (changes: readonly Change[]) => Ran | undefined,
): Pick<PricedChoices, 'cheapestPrice'> {
  if (cheapest === undefined) return {};
  if (cheapest.ids.length === 1) return { cheapestPrice: { cost: cheapest.cost, days: cheapest.days } };
  const changed = run(cheapest.ids.flatMap(id => known(changes, id)));
  return changed === undefined ? {} : { cheapestPrice: priceOf(plain, changed) };
}
