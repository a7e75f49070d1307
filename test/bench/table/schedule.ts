import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate } from '../../../core/evaluation';
import { schedule } from '../../../core/scheduling';
import { exampleProject, TODAY } from '../large-project';
import { solveByChuffed } from '../levelling/chuffed';
import { readInstances } from '../levelling/instances';
import { measureAll } from '../levelling/measure';
import { readOptions, type BenchOptions } from '../levelling/options';
import { compareReference } from '../levelling/reference';
import { measured } from '../times';
import type { BenchRow } from './row';

const RUNS = 15;
const PEER_SECONDS = 10;

/** The example again in each of its scenarios, with 1,000 schedules at most. */
function exampleRows(): BenchRow[] {
  const project = exampleProject();
  return project.scenarios.map(({ id, title }) => {
    const { estimate } = evaluate(project, {
      today: TODAY,
      seed: 1,
      schedules: 1,
      upright: false,
      scenario: id,
    });
    if (estimate === undefined) throw new Error(`the scenario "${id}" cannot be estimated`);
    const { problem } = estimate;
    const times = measured(title, RUNS, 5, run => void schedule(problem, { schedules: 1000, seed: run + 1 }));
    return {
      name: `schedule of the example, ${title}`,
      figure: times.median,
      unit: 'ms',
      said: `median, p95 ${times.p95.toFixed(1)} ms; ${problem.activities.length} activities, at most 1,000 schedules`,
    };
  });
}

function optionsFor(set: string, words: readonly string[]): BenchOptions {
  const options = readOptions(['--set', set, ...words]);
  if (typeof options === 'string') throw new Error(options);
  return options;
}

/** Bare schedule generation beside the same in C, for each public set. */
function generationRows(): BenchRow[] {
  return ['j30', 'j60', 'j120'].map((set): BenchRow => {
    const name = `bare schedule generation, ${set}`;
    const unit = 'schedules/s';
    const options = optionsFor(set, ['--every', '8', '--reference']);
    if (!existsSync(join(options.dir, set))) return { name, unit, said: `there is no ${options.dir}/${set}` };
    const instances = readInstances(options);
    if ('missing' in instances) return { name, unit, said: `there is no ${instances.missing}` };
    const found = compareReference(instances, options);
    if (!('inC' in found)) return { name, figure: found.here, unit, said: 'gcc is not on this machine' };
    const { here, inC } = found;
    return {
      name,
      figure: here,
      unit,
      peer: 'C at -O2',
      peerFigure: inC,
      ratio: { words: 'of its speed', value: here / inC },
    };
  });
}

/** Hard instances beside Chuffed with the same seconds; finishes in days, summed. */
async function peerRow(): Promise<BenchRow> {
  const options = optionsFor('j60', ['--hard', '--every', '60', '--seconds', String(PEER_SECONDS)]);
  const name = `finishes of hard j60 networks, ${PEER_SECONDS} s each`;
  const unit = 'days in all';
  const instances = readInstances(options);
  if ('missing' in instances) return { name, unit, said: `there is no ${instances.missing}` };
  const ours = measureAll(instances, options).reduce((sum, run) => sum + (run.finish ?? Number.NaN), 0);
  let theirs = 0;
  for (const { problem } of instances)
    theirs += (await solveByChuffed(problem, PEER_SECONDS)).finish ?? Number.NaN;
  return {
    name,
    figure: ours,
    unit,
    peer: 'Chuffed',
    peerFigure: theirs,
    said: `${instances.length} networks, one after the other`,
  };
}

/** What the schedule search takes, and its peers. */
export async function scheduleRows(): Promise<BenchRow[]> {
  return [...exampleRows(), ...generationRows(), await peerRow()];
}
