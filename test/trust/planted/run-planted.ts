import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Leg, Outcome } from '../leg';
import type { PlantedBug } from './bug';

const HOME = process.cwd();
/** What a run of the tests needs beside the packages. */
const PARTS = [
  'core',
  'electron',
  'renderer',
  'templates',
  'test',
  'demo',
  'package.json',
  'package-lock.json',
  '.npmrc',
  'vitest.config.ts',
  'tsconfig.json',
];

let copy: string | undefined;

/** A copy of the tree, so that a fault never stands in the working one. */
function scratch(): string {
  if (copy !== undefined) return copy;
  copy = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-planted-'));
  for (const part of PARTS)
    fs.cpSync(path.join(HOME, part), path.join(copy, part), {
      recursive: true,
      filter: from => !/\/(out|node_modules|dist)$/.test(from),
    });
  fs.symlinkSync(path.join(HOME, 'node_modules'), path.join(copy, 'node_modules'));
  const made = copy;
  process.on('exit', () => fs.rmSync(made, { recursive: true, force: true }));
  return copy;
}

interface Told {
  readonly testResults: readonly {
    readonly name: string;
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[];
  }[];
}

const escaped = (words: string) => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Runs test files, and of them the tests whose names hold any of the words; gives the state of each by file and name. */
function statesOf(list: readonly Pick<PlantedBug, 'test' | 'name'>[]): (readonly [string, string, string])[] {
  const report = path.join(scratch(), 'report.json');
  fs.rmSync(report, { force: true });
  const files = [...new Set(list.map(({ test }) => test))];
  const words = [...new Set(list.map(({ name }) => escaped(name)))].join('|');
  const vitest = path.join(HOME, 'node_modules/vitest/vitest.mjs');
  spawnSync(
    process.execPath,
    [
      vitest,
      'run',
      ...files,
      '-t',
      words,
      '--maxWorkers=1',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { cwd: scratch(), stdio: 'ignore', timeout: 280_000 },
  );
  if (!fs.existsSync(report)) return [];
  const { testResults } = JSON.parse(fs.readFileSync(report, 'utf8')) as Told;
  return testResults.flatMap(({ name: file, assertionResults }) =>
    assertionResults
      .filter(({ status }) => status === 'passed' || status === 'failed')
      .map(
        ({ fullName, status }) =>
          [path.relative(fs.realpathSync(scratch()), file), fullName, status] as const,
      ),
  );
}

const isOf =
  ({ test, name }: PlantedBug) =>
  ([file, fullName]: readonly [string, string, string]) =>
    file === test && fullName.includes(name);

/** How many faults share one run of their tests on the clean tree. */
const TOGETHER = 12;
const cleanRuns = new Map<number, readonly (readonly [string, string, string])[]>();

/** Why the named test proves nothing: it is not there, or it is red before any fault is planted. */
function faultOfTest(list: readonly PlantedBug[], at: number): string | undefined {
  const from = at - (at % TOGETHER);
  const clean = cleanRuns.get(from) ?? statesOf(list.slice(from, from + TOGETHER));
  cleanRuns.set(from, clean);
  const bug = list[at];
  const states = bug === undefined ? [] : clean.filter(isOf(bug));
  if (states.length === 0) return `no test "${bug?.name ?? ''}" runs in ${bug?.test ?? ''}`;
  const red = states.find(([, , state]) => state !== 'passed');
  return red === undefined ? undefined : `red without the fault: ${red[1]}`;
}

/** Plants one fault, runs its test, and takes the fault out again. */
function planted(list: readonly PlantedBug[], at: number): Outcome {
  const bug = list[at];
  if (bug === undefined) return { ok: false, words: 'there is no such fault' };
  const file = path.join(scratch(), bug.file);
  const right = fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : '';
  const times = right.split(bug.find).length - 1;
  if (times !== 1)
    return {
      ok: false,
      words: `the text to change stands ${times} times in ${bug.file}: bring the list up to date`,
    };
  const unfit = faultOfTest(list, at);
  if (unfit !== undefined) return { ok: false, words: unfit };
  fs.writeFileSync(
    file,
    right.replace(bug.find, () => bug.put),
  );
  try {
    const states = statesOf([bug]).filter(isOf(bug));
    const red = states.find(([, , state]) => state === 'failed');
    if (red !== undefined) return { ok: true, words: `red: ${red[1]}` };
    return states.length === 0
      ? { ok: true, words: `red: ${bug.test} does not load any more` }
      : { ok: false, words: `SURVIVED: ${bug.test} stays green` };
  } finally {
    fs.writeFileSync(file, right);
  }
}

/** A fault under the number it has in the whole list. */
export interface NumberedBug {
  readonly name: string;
  readonly bug: PlantedBug;
}

export function numbered(list: readonly PlantedBug[]): NumberedBug[] {
  return list.map((bug, at) => ({ name: `${at + 1} ${bug.promise}`, bug }));
}

/** Each of the faults asked for as a leg of its own. */
export function legsOf(asked: readonly NumberedBug[]): Leg[] {
  const list = asked.map(({ bug }) => bug);
  return asked.map(({ name }, at) => ({ name, run: () => Promise.resolve(planted(list, at)) }));
}
