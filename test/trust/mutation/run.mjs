// npm run trust -- --mutation PART [--files a.ts,b.ts] [--sample N] [--changes N] [--missed] [--tests PLACES]: changes
// core/PART in a copy under dist, one place at a time, and counts the changes that its tests see; with --missed only those
// that the last run left unseen.
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { EQUIVALENT } from './equivalent.mjs';
import { instrument, TOOL } from './instrument.mjs';
import { leastOf, testsOf } from './parts.mjs';

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
  if (!fs.existsSync(path.join(shop, 'node_modules/@stryker-mutator/instrumenter'))) {
    fs.writeFileSync(path.join(shop, 'package.json'), '{"name":"mutation","private":true}\n');
    const words = ['i', '--no-save', '--no-package-lock', '--legacy-peer-deps', '--ignore-scripts', TOOL];
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

/**
 * The tests are collected and not run at once. Random tests of ten runs or more take a tenth of them here: what these
 * see, the whole of them sees too.
 */
function madeReady(copy, tests) {
  const tenth = (_, words, count) => `${words}${Math.ceil(Number(count.replaceAll('_', '')) / 10)}`;
  const collect = path.join(copy, 'test/trust/mutation/collect.mjs');
  for (const test of filesUnder(copy, 'test', name => /\.tsx?$/.test(name))) {
    const file = path.join(copy, test);
    const text = fs.readFileSync(file, 'utf8').replaceAll(`from 'vitest'`, `from '${collect}'`);
    const isAsked = tests.includes(test);
    fs.writeFileSync(file, isAsked ? text.replace(/(numRuns: |seed <= )(\d[\d_]+)/g, tenth) : text);
  }
}

const entriesOf = file =>
  fs.existsSync(file)
    ? fs
        .readFileSync(file, 'utf8')
        .split('\n')
        .filter(Boolean)
        .map(line => JSON.parse(line))
    : [];

/** Runs the asking process until it ends or is stuck; gives whether it is stuck, and what it said. */
function askOnce(copy, results, env) {
  const vitest = path.resolve('node_modules/vitest/vitest.mjs');
  const words = [vitest, 'run', '--config', 'test/trust/mutation/vitest.config.mjs', '--root', copy];
  return new Promise(resolve => {
    const child = spawn(process.execPath, words, { cwd: copy, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', bytes => (said += bytes));
    let isStuck = false;
    const watch = setInterval(() => {
      const last = entriesOf(results).at(-1);
      if (last?.state !== 'Begun') return;
      if (Date.now() - fs.statSync(results).mtimeMs < 1000 * last.seconds) return;
      isStuck = true;
      child.kill('SIGKILL');
    }, 2000);
    child.on('close', code => {
      clearInterval(watch);
      resolve({ isStuck, code, said });
    });
  });
}

/** Asks until every change has an answer: a process that is stuck or breaks down is begun anew behind that change. */
async function askAll(copy, place, changes, env) {
  const results = path.join(place, 'results.jsonl');
  fs.writeFileSync(path.join(place, 'changes.json'), JSON.stringify(changes.map(({ id }) => id)));
  for (;;) {
    const before = entriesOf(results).length;
    const { isStuck, code, said } = await askOnce(copy, results, { ...env, MUTATION_PLACE: place });
    const entries = entriesOf(results);
    const last = entries.at(-1);
    if (last?.state === 'Begun')
      fs.appendFileSync(
        results,
        `${JSON.stringify({ id: last.id, state: isStuck ? 'Timeout' : 'Broken' })}\n`,
      );
    else if (code !== 0 || entries.length === before) throw new Error(`The tests cannot be asked:\n${said}`);
    const states = new Map(entriesOf(results).map(({ id, state }) => [id, state]));
    if (changes.every(({ id }) => states.has(id) && states.get(id) !== 'Later')) return states;
  }
}

const SEEN = new Set(['Killed', 'Timeout', 'Broken']);
const MISSED = new Set(['Survived', 'NoCoverage']);

/** Counts, with the changes nobody saw and those listed as the same without being so. */
function told(rows) {
  const same = row =>
    EQUIVALENT.some(one => one.file === row.file && one.line === row.line && one.put === row.put);
  const seen = rows.filter(({ state }) => SEEN.has(state));
  const missed = rows.filter(({ state }) => MISSED.has(state));
  return {
    seen: seen.length,
    stuck: seen.filter(({ state }) => state !== 'Killed').length,
    missed: missed.filter(row => !same(row)),
    same: missed.filter(same).length,
    tooMany: seen.filter(same),
    unasked: rows.length - seen.length - missed.length,
  };
}

/** What the last run of the part left unseen: its numbers hold as long as nobody changes the files. */
const missedBefore = place =>
  new Set(
    [...new Map(entriesOf(path.join(place, 'results.jsonl')).map(({ id, state }) => [id, state]))]
      .filter(([, state]) => MISSED.has(state))
      .map(([id]) => id),
  );

const valueOf = (words, name) => (words.includes(name) ? words[words.indexOf(name) + 1] : undefined);

/** Files to change and tests to ask, as the words say. */
function asked(home, part, words) {
  const only = valueOf(words, '--files')?.split(',');
  const sample = Number(valueOf(words, '--sample') ?? Infinity);
  const files = filesUnder(
    home,
    `core/${part}`,
    name => name.endsWith('.ts') && !name.endsWith('/index.ts'),
  ).filter(name => only === undefined || only.some(each => name === `core/${part}/${each}`));
  const places = valueOf(words, '--tests')?.split(',') ?? testsOf(part);
  const found = places.flatMap(place => filesUnder(home, place, name => name.endsWith('.test.ts')));
  // A test that puts another module in the place of one cannot be collected.
  const tests = found.filter(name => !fs.readFileSync(path.join(home, name), 'utf8').includes('vi.mock('));
  return { all: files.length, files: shuffled(files, 20261128).slice(0, sample).sort(), tests };
}

/** Runs one part; prints its score and what was missed; gives whether the score is high enough. */
export async function mutate(home, words) {
  const part = valueOf(words, '--mutation') ?? '';
  const { all, files, tests } = asked(home, part, words);
  if (files.length === 0 || tests.length === 0) {
    console.error(`There is nothing to change or nothing to ask for ${part}.`);
    return false;
  }
  const begun = performance.now();
  const { shop, copy } = workshop(home, part);
  madeReady(copy, tests);
  const found = await instrument(shop, copy, files);
  const place = path.join(shop, part.replaceAll('/', '-'));
  const most = Number(valueOf(words, '--changes') ?? Infinity);
  const unseen = words.includes('--missed') ? missedBefore(place) : undefined;
  const changes = shuffled(found, 20261129)
    .filter(({ id }) => unseen?.has(id) ?? true)
    .slice(0, most)
    .sort((a, b) => a.id - b.id);
  fs.rmSync(place, { recursive: true, force: true });
  fs.mkdirSync(place, { recursive: true });
  const states = await askAll(copy, place, changes, {
    ...process.env,
    MUTATION_FILES: files.join('\n'),
    MUTATION_TESTS: tests.join('\n'),
  });
  fs.rmSync(copy, { recursive: true, force: true });
  const { leftOut } = JSON.parse(fs.readFileSync(path.join(place, 'reach.json'), 'utf8'));
  for (const name of leftOut) console.log(`left out, as it fails without a change: ${name}`);
  const { seen, stuck, missed, same, tooMany, unasked } = told(
    changes.map(each => ({ ...each, state: states.get(each.id) })),
  );
  for (const { state, file, at, was, put } of missed)
    console.log(`${state}  ${file}:${at}  ${was.replace(/\s+/g, ' ')}  ->  ${put.replace(/\s+/g, ' ')}`);
  for (const { file, at, put } of tooMany)
    console.log(`seen though listed as the same  ${file}:${at}  ${put}`);
  const score = (100 * seen) / (seen + missed.length);
  const seconds = ((performance.now() - begun) / 1000).toFixed(0);
  console.log(
    `core/${part}: ${score.toFixed(1)} % of ${seen + missed.length} changes in ${files.length} of ${all} files are seen` +
      ` (${stuck} without an end, ${same} are the same by list, ${unasked} not asked), at least ${leastOf(part)} % (${seconds} s)`,
  );
  return score >= leastOf(part) && tooMany.length === 0;
}
