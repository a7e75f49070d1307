import { evaluate, prepareRisk, riskJson, riskView, whatIfs } from '../../../core/evaluation';
import { drainOnWorkers, simulation, trialRunner, type ChunkJob } from '../../../core/risk';
import { UsageError, type Call, type Command, type Outcome } from '../command';
import { fileOf, loadProject, scenarioOf, todayOf } from '../load';
import { riskLines } from '../risk-lines';
import { RiskPool } from '../risk-pool';
import { SCENARIO_OPTION } from './estimate';

const TRIALS = 10_000;
const MOST_TRIALS = 1_000_000;

export const riskCommand: Command = {
  name: 'risk',
  words: 'How sure cost and finish are: percentiles, joint confidence and what drives them.',
  usage: 'reefwright risk FILE [--trials N] [--seed S] [--scenario ID] [--json]',
  options: {
    ...SCENARIO_OPTION,
    trials: { type: 'string', words: `trials to run, ${TRIALS} unless told otherwise`, sample: 'N' },
    seed: {
      type: 'string',
      words: 'the same seed gives the same answer, 1 unless told otherwise',
      sample: 'S',
    },
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
  const pool = new RiskPool({ file, today, scenario: chosen.scenario, plan });
  try {
    const evaluation = evaluate(project, { today, seed: 1, upright: false, ...chosen });
    const { prepared, findings: why } = prepareRisk(evaluation);
    const known = [...findings, ...evaluation.findings, ...why];
    if (prepared === undefined) return { json: { findings: known }, lines: [], findings: known };
    const runner = trialRunner(prepared.run, plan);
    await pool.ready;
    pool.start(runner);
    const run = (job: ChunkJob) => pool.run(job);
    const { answer: result, seconds } = await timed(() =>
      drainOnWorkers(simulation(prepared.run, plan), run, {}),
    );
    const tried = await drainOnWorkers(whatIfs(prepared.run, plan), run, {});
    if (result === undefined) return { json: { findings: known }, lines: [], findings: known };
    const all = [...known, ...result.findings];
    const found = tried ?? {};
    const json = riskJson(evaluation, prepared, result, seconds, all, found);
    return { json, lines: riskLines(riskView(evaluation, prepared, result, found)), findings: all };
  } finally {
    await pool.close();
  }
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
