import { evaluate, prepareRisk, riskJson, riskView, whatIfs } from '../../../core/evaluation';
import { drainOnWorkers, simulation, trialRunner, type ChunkJob } from '../../../core/risk';
import { Stopped, UsageError, type Call, type Command, type Outcome } from '../command';
import { fileOf, loadProject, scenarioOf, todayOf } from '../load';
import { riskLines } from '../risk-lines';
import { RiskPool, usualThreads } from '../risk-pool';
import { SCENARIO_OPTION } from './estimate';

const TRIALS = 10_000;
const MOST_TRIALS = 1_000_000;
const MOST_THREADS = 64;

export const riskCommand: Command = {
  name: 'risk',
  words: 'How sure cost and finish are: percentiles, joint confidence and what drives them.',
  usage: 'reefwright risk FILE [--trials N] [--seed S] [--threads N] [--scenario ID] [--progress] [--json]',
  options: {
    ...SCENARIO_OPTION,
    trials: { type: 'string', words: `trials to run, ${TRIALS} unless told otherwise`, sample: 'N' },
    seed: {
      type: 'string',
      words: 'the same seed gives the same answer, 1 unless told otherwise',
      sample: 'S',
    },
    threads: {
      type: 'string',
      words: 'threads to run on, one a core unless told otherwise; the answer is the same',
      sample: 'N',
    },
    progress: { type: 'boolean', words: 'tells on standard error how many trials are done' },
  },
  run: simulated,
};

async function simulated(call: Call): Promise<Outcome> {
  const file = fileOf(call);
  const { project, findings } = loadProject(file);
  if (project === undefined) return { json: { findings }, lines: [], findings };
  const plan = {
    trials: wholeOption(call, 'trials', project.risk?.trials ?? TRIALS, 100, MOST_TRIALS),
    seed: wholeOption(call, 'seed', project.risk?.seed ?? 1, 0, 2 ** 31 - 1),
  };
  const chosen = scenarioOf(call, project);
  const today = todayOf(call, project);
  const threads = wholeOption(call, 'threads', usualThreads(), 1, MOST_THREADS);
  const pool = new RiskPool({ file, today, scenario: chosen.scenario, plan }, { threads });
  const stop = stopOnInterrupt();
  try {
    const evaluation = evaluate(project, { today, seed: 1, upright: false, ...chosen });
    const { prepared, findings: why } = prepareRisk(evaluation);
    const known = [...findings, ...evaluation.findings, ...why];
    if (prepared === undefined) return { json: { findings: known }, lines: [], findings: known };
    const runner = trialRunner(prepared.run, plan);
    await Promise.race([pool.ready, stop.asked]);
    pool.start(runner);
    const run = (job: ChunkJob) => pool.run(job);
    const watch = {
      shouldStop: stop.isAsked,
      ...(call.flag('progress') ? { onProgress: told(plan.trials) } : {}),
    };
    const { answer: result, seconds } = await timed(() =>
      Promise.race([drainOnWorkers(simulation(prepared.run, plan), run, watch, pool.hands), stop.asked]),
    );
    const { shouldStop } = watch;
    const trying = drainOnWorkers(whatIfs(prepared.run, plan), run, { shouldStop }, pool.hands);
    const tried = await Promise.race([trying, stop.asked]);
    if (result === undefined || tried === undefined)
      throw new Stopped('Stopped before the runs were done: there are no figures, and no file was changed.');
    const all = [...known, ...result.findings];
    const json = riskJson(evaluation, prepared, result, seconds, all, tried);
    return { json, lines: riskLines(riskView(evaluation, prepared, result, tried)), findings: all };
  } finally {
    stop.end();
    await pool.close();
  }
}

/** Hears Ctrl-C between two chunks of trials. */
function stopOnInterrupt() {
  let isAsked = false;
  let tell = (): void => undefined;
  const asked = new Promise<undefined>(resolve => {
    tell = () => {
      resolve(undefined);
    };
  });
  const hear = () => {
    isAsked = true;
    tell();
  };
  process.once('SIGINT', hear);
  return { isAsked: () => isAsked, asked, end: () => process.off('SIGINT', hear) };
}

/** Tells how many trials are done, about ten times. */
function told(trials: number): (done: number) => void {
  let next = 0;
  return done => {
    if (done < next) return;
    next = done + trials / 10;
    process.stderr.write(`${done} trials done, of ${trials} and those run again for the drivers\n`);
  };
}

async function timed<T>(run: () => Promise<T>): Promise<{ answer: T; seconds: number }> {
  const started = performance.now();
  const answer = await run();
  return { answer, seconds: Math.round(performance.now() - started) / 1000 };
}

function wholeOption(call: Call, name: string, otherwise: number, least: number, most: number): number {
  const text = call.option(name);
  if (text === undefined) return otherwise;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least || value > most)
    throw new UsageError(`--${name} takes a whole number from ${least} to ${most}, not "${text}".`);
  return value;
}
