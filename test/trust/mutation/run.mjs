// npm run trust -- --mutation PART [--files a.ts,b.ts] [--sample N] [--tests PLACES]: changes core/PART in a copy under dist, one place at
// a time, and counts the changes that its tests see. The tool is fetched into the copy and is no package of the project.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { EQUIVALENT } from './equivalent.mjs';
import { leastOf, testsOf } from './parts.mjs';

const TOOLS = ['@stryker-mutator/core@9.6.1', '@stryker-mutator/vitest-runner@9.6.1'];
const PARTS = ['core', 'electron', 'renderer', 'templates', 'test', 'demo', 'package.json', 'tsconfig.json'];
const NEVER_A_TEST = /\/(out|node_modules|dist)$/;

/** A seeded order, so that a sample is the same on every machine. */
function shuffled(list, seed) {
  let state = seed;
  const next = () => (state = (Math.imul(state, 1103515245) + 12345) >>> 0) / 2 ** 32;
  return list
    .map(each => [next(), each])
    .sort(([a], [b]) => a - b)
    .map(([, each]) => each);
}

function filesUnder(home, place, wanted) {
  const full = path.join(home, place);
  if (!fs.existsSync(full)) return [];
  if (fs.statSync(full).isFile()) return [place];
  return fs
    .readdirSync(full, { recursive: true, encoding: 'utf8' })
    .map(name => `${place}/${name}`)
    .filter(wanted)
    .sort();
}

/** The folder with the tool beside the copy: what the copy imports is found above it. */
function workshop(home, part) {
  const shop = path.join(home, 'dist/mutation');
  fs.mkdirSync(shop, { recursive: true });
  if (!fs.existsSync(path.join(shop, 'node_modules/@stryker-mutator/vitest-runner'))) {
    fs.writeFileSync(path.join(shop, 'package.json'), '{"name":"mutation","private":true}\n');
    const words = ['i', '--no-save', '--no-package-lock', '--legacy-peer-deps', '--ignore-scripts', ...TOOLS];
    const fetched = spawnSync('npm', words, { cwd: shop, encoding: 'utf8' });
    if (fetched.status !== 0) throw new Error(`The mutation tool cannot be fetched:\n${fetched.stderr}`);
  }
  const copy = path.join(shop, `tree-${part.replaceAll('/', '-')}`);
  fs.rmSync(copy, { recursive: true, force: true });
  for (const each of PARTS)
    fs.cpSync(path.join(home, each), path.join(copy, each), {
      recursive: true,
      filter: from => !NEVER_A_TEST.test(from.slice(home.length)),
    });
  return { shop, copy };
}

/** Random tests of a hundred runs or more take a tenth of them here: what these see, the whole of them sees too. */
function thinned(copy, tests) {
  const tenth = (_, words, count) => `${words}${Math.ceil(Number(count.replaceAll('_', '')) / 10)}`;
  for (const test of tests) {
    const file = path.join(copy, test);
    fs.writeFileSync(
      file,
      fs.readFileSync(file, 'utf8').replace(/(numRuns: |seed <= )(\d[\d_]{2,})/g, tenth),
    );
  }
}

const textOf = ({ location: { start, end } }, source) => {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return lines.join('\n');
};

const SEEN = new Set(['Killed', 'Timeout']);
const MISSED = new Set(['Survived', 'NoCoverage']);

/** Counts of a report, with the changes nobody saw and those listed as the same without being so. */
function told(report) {
  const rows = Object.entries(report.files).flatMap(([file, { source, mutants }]) =>
    mutants.map(mutant => ({
      file,
      state: mutant.status,
      at: mutant.location.start.line,
      line: source.split('\n')[mutant.location.start.line - 1].trim(),
      was: textOf(mutant, source),
      put: mutant.replacement,
    })),
  );
  const same = row =>
    EQUIVALENT.some(one => one.file === row.file && one.line === row.line && one.put === row.put);
  const seen = rows.filter(({ state }) => SEEN.has(state));
  const missed = rows.filter(({ state }) => MISSED.has(state));
  return {
    seen: seen.length,
    missed: missed.filter(row => !same(row)),
    same: missed.filter(same).length,
    tooMany: seen.filter(same),
    unasked: rows.length - seen.length - missed.length,
  };
}

const valueOf = (words, name) => (words.includes(name) ? words[words.indexOf(name) + 1] : undefined);

/** Runs one part; prints its score and what was missed; gives whether the score is high enough. */
export function mutate(home, words) {
  const part = valueOf(words, '--mutation') ?? '';
  const only = valueOf(words, '--files')?.split(',');
  const sample = Number(valueOf(words, '--sample') ?? Infinity);
  const files = filesUnder(
    home,
    `core/${part}`,
    name => name.endsWith('.ts') && !name.endsWith('/index.ts'),
  ).filter(name => only === undefined || only.some(each => name === `core/${part}/${each}`));
  const chosen = shuffled(files, 20261128).slice(0, sample).sort();
  const places = valueOf(words, '--tests')?.split(',') ?? testsOf(part);
  const tests = places.flatMap(place => filesUnder(home, place, name => name.endsWith('.test.ts')));
  if (chosen.length === 0 || tests.length === 0) {
    console.error(`There is nothing to change or nothing to ask for ${part}.`);
    return false;
  }
  const begun = performance.now();
  const { shop, copy } = workshop(home, part);
  thinned(copy, tests);
  const report = path.join(shop, `${part.replaceAll('/', '-')}.json`);
  fs.rmSync(report, { force: true });
  spawnSync(
    process.execPath,
    [
      path.join(shop, 'node_modules/@stryker-mutator/core/bin/stryker.js'),
      'run',
      'test/trust/mutation/stryker.config.mjs',
    ],
    {
      cwd: copy,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: {
        ...process.env,
        MUTATION_FILES: chosen.join('\n'),
        MUTATION_TESTS: tests.join('\n'),
        MUTATION_REPORT: report,
      },
    },
  );
  fs.rmSync(copy, { recursive: true, force: true });
  if (!fs.existsSync(report)) return false;
  const { seen, missed, same, tooMany, unasked } = told(JSON.parse(fs.readFileSync(report, 'utf8')));
  for (const { file, at, state, was, put } of missed)
    console.log(`${state}  ${file}:${at}  ${was.replace(/\s+/g, ' ')}  ->  ${put.replace(/\s+/g, ' ')}`);
  for (const { file, at, put } of tooMany)
    console.log(`seen though listed as the same  ${file}:${at}  ${put}`);
  const score = (100 * seen) / (seen + missed.length);
  const seconds = ((performance.now() - begun) / 1000).toFixed(0);
  console.log(
    `core/${part}: ${score.toFixed(1)} % of ${seen + missed.length} changes in ${chosen.length} of ${files.length} files are seen` +
      ` (${same} are the same by list, ${unasked} not asked), at least ${leastOf(part)} % (${seconds} s)`,
  );
  return score >= leastOf(part) && tooMany.length === 0;
}
