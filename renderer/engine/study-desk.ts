import {
  crewPlanStudy,
  evaluate,
  levelledPlan,
  prepareRisk,
  riskRun,
  simulatedContingency,
  trialsOfReview,
  withChoices,
  type CrewPlanAnswer,
  type EvaluateOptions,
  type Evaluation,
  type RiskRun,
  type RiskView,
  type SimulatedContingency,
} from '../../core/evaluation';
import type { PreparedRun, SimulationResult } from '../../core/risk';
import { compareScenarios, factsOf, type RiskFacts } from '../../core/scenario';
import {
  choiceRows,
  compareRows,
  crewAnswer,
  crewPlanRows,
  decisionRows,
  LEAST_QUESTION,
  LEVEL_QUESTION,
  riskRows,
  type CrewAnswer,
} from '../../core/views';
import type { RunFound, StudyAnswers, StudyAsk, StudyName } from './study-protocol';

/** The seed of the window's searches, the same as for the views: the figures are the same too. */
const SEED = 1;
/** The most scenarios that are set side by side. */
const MOST = 6;
/** Progress is told this often at most, in milliseconds. */
const OFTEN = 80;

/** How a study speaks to the window. */
export interface StudyWork {
  readonly say: (done: number, of: number, words: string) => void;
  /** Lets messages by. @returns false when the study was stopped. */
  readonly pause: () => Promise<boolean>;
  readonly now: () => number;
}

/** A study that was stopped by the reader or overtaken by a newer one. */
export class StudyStopped extends Error {}

/** The last run of a scenario. */
interface Run {
  readonly plan: number | undefined;
  readonly view: RiskView;
  readonly facts: RiskFacts;
  readonly found: RunFound;
  /** Mitigations and surveys were tried as well. */
  readonly isWhole: boolean;
}

type Makers = {
  readonly [N in StudyName]: (ask: StudyAsk, work: StudyWork) => Promise<StudyAnswers[N] | undefined>;
};

/** Answers the long questions one step at a time; what one study has worked out the others take. */
export class StudyDesk {
  #document = '';
  #revision = -1;
  #evaluations = new Map<string, Evaluation>();
  #runs = new Map<string, Run>();
  readonly #told = new WeakMap<
    Evaluation,
    { readonly simulated: SimulatedContingency; readonly evaluation: Evaluation }
  >();
  #plans = new Map<
    string,
    { readonly plan: number | undefined; readonly answer: CrewPlanAnswer | undefined }
  >();

  readonly #makers: Makers = {
    risk: (ask, work) => this.#risk(ask, work),
    compare: async (ask, work) => {
      const { comparison, views, isStale } = await this.#compared(ask, work);
      return compareRows({ comparison, views, isStale, chosen: ask.scenario, measures: ask.measures });
    },
    decision: async (ask, work) => {
      const { comparison } = await this.#compared(ask, work);
      const own = comparison.evaluations.find(one => one.scenario.id === ask.scenario);
      return own === undefined ? undefined : decisionRows(own, comparison);
    },
    choices: async (ask, work) => {
      const evaluation = await this.#evaluated(ask, ask.scenario, work);
      await step(work);
      return choiceRows(withChoices(evaluation, optionsOf(ask, ask.scenario)), ask.measures);
    },
    levelling: async (ask, work) => {
      const evaluation = await this.#evaluated(ask, ask.scenario, work);
      const even = await levelledAnswer(evaluation, LEVEL_QUESTION, undefined, work);
      const finish = evaluation.estimate?.schedule.finish;
      if (finish === undefined) return { answers: [even] };
      return { answers: [even, await levelledAnswer(evaluation, LEAST_QUESTION, finish, work)] };
    },
    crewPlans: (ask, work) => this.#crewPlans(ask, work),
  };

  answer(ask: StudyAsk, work: StudyWork): Promise<StudyAnswers[StudyName] | undefined> {
    if (ask.document !== this.#document) {
      this.#document = ask.document;
      this.#evaluations = new Map();
      this.#runs = new Map();
      this.#plans = new Map();
    }
    return this.#makers[ask.name](ask, work);
  }

  async #crewPlans(ask: StudyAsk, work: StudyWork): Promise<StudyAnswers['crewPlans']> {
    if (ask.runs) {
      const evaluation = await this.#evaluated(ask, ask.scenario, work);
      const study = crewPlanStudy(evaluation, optionsOf(ask, ask.scenario), {});
      const answer = await stepped(study, work, ({ words }) => `Estimating plans: ${words.toLowerCase()}`);
      this.#plans.set(ask.scenario, { plan: ask.plans[ask.scenario], answer });
    }
    const last = this.#plans.get(ask.scenario);
    return crewPlanRows(last?.answer, last !== undefined && last.plan !== ask.plans[ask.scenario]);
  }

  async #risk(ask: StudyAsk, work: StudyWork): Promise<StudyAnswers['risk']> {
    const evaluation = await this.#evaluated(ask, ask.scenario, work);
    if (ask.runs) await this.#run(ask, evaluation, 'Running the trials', true, work);
    const { prepared, findings } = prepareRisk(evaluation);
    const last = this.#runs.get(ask.scenario);
    const rows = riskRows({
      evaluation,
      prepared,
      findings,
      view: last?.view,
      isStale: last !== undefined && last.plan !== ask.plans[ask.scenario],
      isWhole: last?.isWhole === true,
    });
    return last === undefined ? rows : { ...rows, leaves: last.found };
  }

  /** All scenarios evaluated, and simulated when that was asked for; runs of an older document count only as they are. */
  async #compared(ask: StudyAsk, work: StudyWork) {
    const scenarios = ask.project.scenarios;
    const shown = scenarios.slice(0, MOST);
    if (!shown.some(one => one.id === ask.scenario)) {
      const own = scenarios.filter(one => one.id === ask.scenario);
      shown.splice(MOST - own.length, own.length, ...own);
    }
    const evaluations: Evaluation[] = [];
    for (const { id } of shown) {
      work.say(evaluations.length, shown.length, 'Working out every scenario');
      evaluations.push(await this.#evaluated(ask, id, work));
    }
    if (ask.runs) {
      for (const one of evaluations) {
        if (this.#current(ask, one.scenario.id) !== undefined) continue;
        await this.#run(ask, one, `Running the trials of ${one.letter}`, false, work);
      }
    }
    const current = shown.flatMap(({ id }) => this.#current(ask, id) ?? []);
    const isStale = shown.some(({ id }) => this.#runs.has(id) && this.#current(ask, id) === undefined);
    return {
      comparison: compareScenarios(
        evaluations.map(one => this.#withItsRun(ask, one)),
        current.map(run => run.facts),
      ),
      views: current.map(run => run.view),
      isStale,
    };
  }

  /** The last run of a scenario, when it is of the plan that is asked about. */
  #current(ask: StudyAsk, scenario: string): Run | undefined {
    const run = this.#runs.get(scenario);
    return run?.plan === ask.plans[scenario] ? run : undefined;
  }

  /** An evaluation with the contingency that the last run of its plan has set, as the views and papers have it. */
  #withItsRun(ask: StudyAsk, evaluation: Evaluation): Evaluation {
    const { id } = evaluation.scenario;
    const { found } = this.#current(ask, id) ?? {};
    if (found?.simulated === undefined) return evaluation;
    const known = this.#told.get(evaluation);
    if (known?.simulated === found.simulated) return known.evaluation;
    const told = evaluate(ask.project, { ...optionsOf(ask, id), simulated: found.simulated });
    this.#told.set(evaluation, { simulated: found.simulated, evaluation: told });
    return told;
  }

  async #evaluated(ask: StudyAsk, scenario: string, work: StudyWork): Promise<Evaluation> {
    await step(work);
    if (ask.revision < this.#revision) return evaluate(ask.project, optionsOf(ask, scenario));
    if (ask.revision > this.#revision) {
      this.#revision = ask.revision;
      this.#evaluations = new Map();
    }
    const known = this.#evaluations.get(scenario);
    if (known !== undefined) return known;
    const evaluation = evaluate(ask.project, optionsOf(ask, scenario));
    this.#evaluations.set(scenario, evaluation);
    return evaluation;
  }

  /** Carries a simulation on chunk by chunk; stopped, the run before stands. */
  async #run(
    ask: StudyAsk,
    evaluation: Evaluation,
    words: string,
    triesWhatIfs: boolean,
    work: StudyWork,
  ): Promise<void> {
    const { run } = riskRun(evaluation, { triesWhatIfs });
    if (run === undefined) return;
    const { view, facts, found } = await carriedOn(ask, run, evaluation, words, work);
    this.#runs.set(evaluation.scenario.id, {
      plan: ask.plans[evaluation.scenario.id],
      view,
      facts,
      found,
      isWhole: triesWhatIfs,
    });
  }
}

async function carriedOn(
  ask: StudyAsk,
  run: RiskRun,
  evaluation: Evaluation,
  words: string,
  work: StudyWork,
) {
  let told = work.now();
  for (;;) {
    const { done, of, result } = run.step();
    if (result !== undefined) {
      const { prepared } = run;
      const { told, found } = foundBy(ask, evaluation, prepared.run, result.simulation);
      return { view: result.view, facts: factsOf(told, result.simulation, prepared.first), found };
    }
    if (work.now() - told >= OFTEN) {
      told = work.now();
      work.say(done, of, words);
      await step(work);
    }
  }
}

/** What a run leaves for the estimate that it was made of, and that estimate with it. */
function foundBy(
  ask: StudyAsk,
  evaluation: Evaluation,
  run: PreparedRun,
  simulation: SimulationResult,
): { readonly told: Evaluation; readonly found: RunFound } {
  const simulated = simulatedContingency(evaluation.project, run, simulation);
  // A contingency that the run itself sets is held against the run, too.
  const options = { ...optionsOf(ask, evaluation.scenario.id), upright: false };
  const told = simulated === undefined ? evaluation : evaluate(ask.project, { ...options, simulated });
  const trials = trialsOfReview(told, simulation);
  return { told, found: { ...(simulated && { simulated }), ...(trials && { trials }) } };
}

/** A question about the crews, answered a round at a time. */
async function levelledAnswer(
  evaluation: Evaluation,
  question: string,
  leastCrewBy: string | undefined,
  work: StudyWork,
): Promise<CrewAnswer> {
  const ask = { seed: SEED, ...(leastCrewBy === undefined ? {} : { leastCrewBy }) };
  return crewAnswer(evaluation, question, await stepped(levelledPlan(evaluation, ask), work, () => question));
}

/** Work in steps to its end; every now and then it tells how far it is and lets a stop be heard. */
async function stepped<P extends { readonly done: number; readonly of: number }, R>(
  steps: Generator<P, R>,
  work: StudyWork,
  words: (progress: P) => string,
): Promise<R> {
  let told = work.now();
  for (let taken = steps.next(); ; taken = steps.next()) {
    if (taken.done === true) return taken.value;
    if (work.now() - told < OFTEN) continue;
    told = work.now();
    work.say(taken.value.done, taken.value.of, words(taken.value));
    await step(work);
  }
}

async function step(work: StudyWork): Promise<void> {
  if (!(await work.pause())) throw new StudyStopped('The study was stopped.');
}

function optionsOf({ project, today }: StudyAsk, scenario: string): EvaluateOptions {
  return { today: project.statusDate ?? today, seed: SEED, scenario };
}
