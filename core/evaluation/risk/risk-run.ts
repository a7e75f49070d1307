import type { Finding } from '../../base';
import {
  COMPARED_TRIALS,
  mitigationValues,
  planGap,
  simulation,
  surveyValues,
  trialRunner,
  type ChunkResult,
  type PreparedRun,
  type SimulationResult,
  type TrialPlan,
  type TrialRunner,
  type Waves,
} from '../../risk';
import type { Evaluation } from '../evaluate';
import { prepareRisk, type PreparedEstimate } from './prepare';
import { riskView, type RiskView, type WhatIfs } from './risk-view';

/** How a simulation is run; what is absent follows the risk section of the project. */
export interface RiskRunChoices {
  readonly trials?: number;
  readonly seed?: number;
  /** Whether mitigations and surveys are tried as well; they are unless told otherwise. */
  readonly triesWhatIfs?: boolean;
}

/** How a run stands: what is done, of how much, and the answer once it is there. */
export interface RiskProgress {
  readonly done: number;
  readonly of: number;
  readonly result?: { readonly view: RiskView; readonly simulation: SimulationResult };
}

/** A simulation that is carried on step by step, and stops when nobody asks for the next one. */
export interface RiskRun {
  readonly prepared: PreparedEstimate;
  readonly findings: readonly Finding[];
  /**
   * Runs one chunk of trials, a hundredth of a second or two, and tells how far it is. A worker calls it from a timer,
   * so that a message to cancel is heard between two chunks: then it is simply not called again, and whatever was
   * shown before stands.
   */
  step(): RiskProgress;
}

/**
 * Makes a simulation ready to be carried on step by step, in a window’s worker or any other thread.
 * @returns no run where the estimate cannot be simulated; the findings say why.
 * @example const { run } = riskRun(evaluation); let p = run.step(); while (p.result === undefined) p = run.step();
 */
export function riskRun(
  evaluation: Evaluation,
  choices: RiskRunChoices = {},
): { readonly run?: RiskRun; readonly findings: readonly Finding[] } {
  const { prepared, findings } = prepareRisk(evaluation);
  if (prepared === undefined) return { findings };
  const { section } = prepared;
  const plan = { trials: choices.trials ?? section.trials, seed: choices.seed ?? section.seed };
  const waves = wavesOf(prepared, plan, choices.triesWhatIfs !== false);
  const walk = stepper(waves, trialRunner(prepared.run, plan));
  return {
    findings,
    run: {
      prepared,
      findings,
      step: () => {
        const { done, of, answer } = walk();
        if (answer === undefined) return { done, of };
        const view = riskView(evaluation, prepared, answer.simulation, answer.whatIfs);
        return { done, of, result: { view, simulation: answer.simulation } };
      },
    },
  };
}

/** What a whole run answers. */
interface Answer {
  readonly simulation: SimulationResult;
  readonly whatIfs: WhatIfs;
}

function* wavesOf({ run }: PreparedEstimate, plan: TrialPlan, triesWhatIfs: boolean): Waves<Answer> {
  const found = yield* simulation(run, plan);
  return { simulation: found, whatIfs: triesWhatIfs ? yield* whatIfs(run, plan) : {} };
}

/** What mitigations and surveys are worth, and why the runs differ from the plan, by trials with the same draws. */
export function* whatIfs(run: PreparedRun, plan: TrialPlan): Waves<WhatIfs> {
  const mitigations = yield* mitigationValues(run, plan, COMPARED_TRIALS);
  const surveys = yield* surveyValues(run, plan, COMPARED_TRIALS);
  const gap = yield* planGap(run, plan, COMPARED_TRIALS);
  return { mitigations, surveys, gap };
}

function stepper(waves: Waves<Answer>, { run }: TrialRunner) {
  let next = waves.next();
  let results: ChunkResult[] = [];
  let [done, of] = [0, next.done === true ? 0 : next.value.length];
  return (): { done: number; of: number; answer?: Answer } => {
    if (next.done === true) return { done, of, answer: next.value };
    const job = next.value[results.length];
    if (job !== undefined) {
      results.push(run(job));
      done++;
    }
    if (results.length < next.value.length) return { done, of };
    const answers = results;
    results = [];
    next = waves.next(answers);
    if (next.done === true) return { done, of, answer: next.value };
    of += next.value.length;
    return { done, of };
  };
}
