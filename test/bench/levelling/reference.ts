import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { plainNetOf } from '../../../core/scheduling/search/compile-plain';
import { Dice } from '../../../core/scheduling/search/dice';
import type { PlainNet } from '../../../core/scheduling/search/plain-net';
import { Ready, sampledOrder } from '../../../core/scheduling/search/random-order';
import { passMemoryOf, serialPass } from '../../../core/scheduling/search/serial-pass';
import { tailsOf } from '../../../core/scheduling/search/tails';
import type { Instance } from './instances';
import { cpuSeconds } from './measure';
import type { BenchOptions } from './options';

const LISTS = 20;
const ROUNDS = 200;
const SOURCE = 'test/bench/levelling/reference.c';

interface Job {
  readonly net: PlainNet;
  readonly lists: readonly Int32Array[];
}

/** Bare serial schedule generation here and in C at -O2: the same lists, no search. */
export function compareReference(instances: readonly Instance[], options: BenchOptions) {
  const jobs = instances
    .map(({ problem }) => jobOf(plainNetOf(problem)))
    .filter(({ net }) => net.words === 1);
  decodeAll(jobs, 10);
  const before = cpuSeconds();
  const sum = decodeAll(jobs, ROUNDS);
  const here = (jobs.length * LISTS * ROUNDS) / (cpuSeconds() - before);
  const inC = runC(jobs);
  if (!inC) {
    return {
      here,
      text: `${options.set}: ${Math.round(here)} schedules a second; no gcc for the reference`,
      exitCode: 0,
    };
  }
  const share = here / inC.perSecond;
  const text =
    `${options.set}: bare schedule generation ${Math.round(here)} a second here, ${Math.round(inC.perSecond)} in C, ` +
    `share ${share.toFixed(2)}; same finishes: ${sum === inC.sum ? 'yes' : 'NO'}`;
  return { here, inC: inC.perSecond, share, text, exitCode: sum === inC.sum ? 0 : 1 };
}

/** Lists drawn with a bias towards small latest finishes, as the first population has them. */
function jobOf(net: PlainNet): Job {
  const dice = new Dice(1, 'reference');
  const priorities = tailsOf(net).map(tail => -tail);
  const ready = new Ready(net);
  const lists = Array.from({ length: LISTS }, () => {
    const order = new Int32Array(net.count);
    sampledOrder(ready, priorities, 2, dice, order);
    return order;
  });
  return { net, lists };
}

function decodeAll(jobs: readonly Job[], rounds: number): number {
  let sum = 0;
  for (const { net, lists } of jobs) {
    const memory = passMemoryOf(net);
    const made = new Int32Array(net.count);
    for (let round = 0; round < rounds; round++) {
      for (const list of lists) sum += serialPass(net, memory, list, made);
    }
  }
  return sum;
}

function runC(jobs: readonly Job[]): { perSecond: number; sum: number } | null {
  const folder = mkdtempSync(join(tmpdir(), 'reference-'));
  const program = join(folder, 'reference');
  const compiled = spawnSync('gcc', ['-O2', '-o', program, SOURCE]);
  const ran = compiled.status === 0 ? spawnSync(program, { input: inputOf(jobs), encoding: 'utf8' }) : null;
  rmSync(folder, { recursive: true });
  if (ran?.status !== 0) return null;
  const [decoded = 0, seconds = 1, sum = 0] = ran.stdout.trim().split(' ').map(Number);
  return { perSecond: decoded / seconds, sum };
}

function inputOf(jobs: readonly Job[]): string {
  const networks = jobs.map(({ net, lists }) => {
    const rows = Array.from(net.durations, (duration, i) => {
      const { first, list } = net.predecessors;
      const before = list.subarray(first[i] ?? 0, first[i + 1] ?? 0);
      return [duration, net.demands[i] ?? 0, before.length, ...before].join(' ');
    });
    const head = [net.count, net.guards[0] ?? 0, net.freeDay[0] ?? 0].join(' ');
    return [head, ...rows, lists.length, ...lists.map(list => list.join(' ')), ROUNDS].join('\n');
  });
  return [jobs.length, ...networks].join('\n');
}
