import { dayOf } from '../../calendar';
import type { RiskView, Evaluation } from '../../evaluation';
import {
  decisionOf,
  isPermittable,
  pairedRisks,
  summaryOf,
  USUAL_WEIGHTS,
  type Comparison,
} from '../../scenario';
import type { Measures } from '../measures';
import { shownNumber } from '../number-text';
import { frontierPicture, type FrontierOf } from '../risk/frontier';
import { inHundred, simulatedDollars } from '../risk/words';
import type { TableRows } from '../rows';
import { Derivations } from '../simulated';
import { roundedDollars } from '../whole-dollars';
import { bridgeRows } from './bridge';
import { comparedOrigin, totalSteps } from './origin';
import { differencesTable } from './differences';
import { factTable } from './facts';
import type { ComparedScenario, CompareRows } from './rows';
import { rankingWords, weightTable } from './weights';

/** What the comparison is made from. */
export interface CompareStudy {
  readonly comparison: Comparison;
  /** Runs of the scenarios, for their lines of equal chance. */
  readonly views: readonly RiskView[];
  readonly isStale: boolean;
  readonly chosen: string;
  readonly measures: Measures;
}

const APART = 'The totals of the scenarios, one taken from the other.';

/** Two to six scenarios side by side. */
export function compareRows({ comparison, views, isStale, chosen, measures }: CompareStudy): CompareRows {
  const { evaluations, risks } = comparison;
  const table = decisionOf(comparison);
  const told = new Derivations('compare');
  const about = { comparison, views, chosen };
  const open = (rows: TableRows) => told.table(rows, comparedOrigin(rows, about));
  const say = (name: string, text: string) =>
    told.sentence(name, text, { path: 'Compare', home: 'compare' }, APART, totalSteps(about));
  const frontier = frontierOf(evaluations, views, chosen);
  return {
    whys: told.whys,
    sentence: say('sentence', sentenceOf(evaluations)),
    scenarios: evaluations.map(one => comparedScenario(one, chosen)),
    facts: open(factTable(comparison, chosen, measures)),
    bridges: bridgeRows(comparison).map(bridge => ({
      ...bridge,
      words: say(bridge.id, bridge.words),
      table: open(bridge.table),
    })),
    differences: differencesTable(comparison, measures),
    frontier: frontier === undefined ? undefined : { ...frontier, table: open(frontier.table) },
    paired: pairedWords(comparison),
    hasRuns: risks.length > 0,
    ...waitingWords(comparison, isStale),
    isStale,
    weights: open(weightTable(comparison, table)),
    ranking: rankingWords(table),
    usualWeights: table.isBoardsOwn ? undefined : USUAL_WEIGHTS,
  };
}

function comparedScenario(one: Evaluation, chosen: string): ComparedScenario {
  const { scenario, letter, upright } = one;
  const heel = upright?.greatestHeelDegrees;
  return {
    id: scenario.id,
    letter,
    title: scenario.title,
    isChosen: scenario.id === chosen,
    isPermittable: isPermittable(one),
    verdict: upright?.verdict,
    verdictWords:
      heel === undefined ? 'no heel worked out' : `greatest heel ${shownNumber(heel.toFixed(6), 0)}\u00b0`,
  };
}

function dollarsOfTotal(one: Evaluation): number | undefined {
  const cents = summaryOf(one)?.total?.cents;
  return cents === undefined ? undefined : roundedDollars(cents);
}

/** The sentence of the comparison: amounts and days of each scenario against the first, and who may not be chosen. */
function sentenceOf(evaluations: readonly Evaluation[]): string {
  const [first, ...others] = evaluations;
  if (first === undefined) return 'There is nothing to compare yet.';
  const start = dollarsOfTotal(first);
  if (others.length === 0)
    return `There is one scenario, ${first.letter}${start === undefined ? '' : `, at ${simulatedDollars(start)}`}; a second one would be compared with it.`;
  const barred = evaluations.filter(one => !isPermittable(one)).map(({ letter }) => letter);
  const said = barred.length === 0 ? '' : ` ${barred.join(' and ')} may not be carried out.`;
  const told =
    others.length <= 2 ? others.map(other => against(first, other)).join('; ') : ends(evaluations, first);
  return `${told}.${said}`;
}

/** Among many: which costs least and which most, each against the first. */
function ends(evaluations: readonly Evaluation[], first: Evaluation): string {
  const known = evaluations.flatMap(one => {
    const total = dollarsOfTotal(one);
    return total === undefined ? [] : [{ one, total }];
  });
  const rising = known.toSorted((a, b) => a.total - b.total);
  const [least, most] = [rising[0], rising.at(-1)];
  const start = dollarsOfTotal(first);
  if (least === undefined || most === undefined || start === undefined)
    return `${evaluations.length} scenarios stand side by side; a total is not known`;
  const apart = (total: number) =>
    total === start
      ? simulatedDollars(total)
      : `${simulatedDollars(Math.abs(total - start))} ${total < start ? 'less' : 'more'} than ${first.letter}`;
  return `Of ${evaluations.length} scenarios ${least.one.letter} costs least, ${apart(least.total)}; ${most.one.letter} costs most, ${apart(most.total)}`;
}

function against(first: Evaluation, other: Evaluation): string {
  const [start, end] = [dollarsOfTotal(first), dollarsOfTotal(other)];
  if (start === undefined || end === undefined)
    return `${other.letter} cannot be set against ${first.letter}: a total is not known`;
  const money =
    end === start
      ? `${other.letter} costs as much as ${first.letter}`
      : `${other.letter} costs ${simulatedDollars(Math.abs(end - start))} ${end > start ? 'more' : 'less'} than ${first.letter}`;
  const [a, b] = [first.estimate?.schedule.finish, other.estimate?.schedule.finish];
  if (a === undefined || b === undefined) return money;
  const days = dayOf(b) - dayOf(a);
  if (days === 0) return `${money} and ends the same day`;
  const count = `${Math.abs(days)} calendar day${Math.abs(days) === 1 ? '' : 's'}`;
  return `${money} and ends ${count} ${days > 0 ? 'later' : 'earlier'}`;
}

function frontierOf(evaluations: readonly Evaluation[], views: readonly RiskView[], chosen: string) {
  const scenarios = evaluations.flatMap((one): FrontierOf[] => {
    const [total, finish] = [dollarsOfTotal(one), one.estimate?.schedule.finish];
    if (total === undefined || finish === undefined) return [];
    return [
      {
        letter: one.letter,
        isChosen: one.scenario.id === chosen,
        isPermittable: isPermittable(one),
        total,
        finish,
        line: views.find(view => view.scenario === one.scenario.id)?.frontier ?? [],
      },
    ];
  });
  if (scenarios.length === 0) return undefined;
  const [view] = views;
  const project = evaluations[0]?.project;
  return frontierPicture(scenarios, {
    confidence: view?.confidence ?? 0.8,
    inHand: undefined,
    lastDate: project?.calendars.deadline,
  });
}

/** What the scenarios without trials wait for. */
function waitingWords({ evaluations, risks }: Comparison, isStale: boolean): Pick<CompareRows, 'waiting'> {
  const without = evaluations.filter(one => !risks.some(risk => risk.scenario === one.scenario.id));
  if (without.length === 0) return {};
  const letters = without.map(one => one.letter).join(', ');
  const waiting = isStale
    ? `The trials of ${letters} are of an older document, or were not run.`
    : `The trials of ${letters} have not been run; the others keep theirs.`;
  if (risks.length > 0) return { waiting };
  const none = isStale
    ? 'The runs before are of an older document.'
    : 'They add P80 and the lines of equal chance.';
  return { waiting: none };
}

function pairedWords(comparison: Comparison): readonly string[] {
  const letterOf = (id: string) =>
    comparison.evaluations.find(({ scenario }) => scenario.id === id)?.letter ?? id;
  return pairedRisks(comparison).map(
    ({ from, to, firstCheaper }) =>
      `With the same luck ${letterOf(from)} costs less than ${letterOf(to)} in ${inHundred(firstCheaper)} of 100 runs.`,
  );
}
