/**
 * Runs in the copy of the tree: asks the tests about one change after another, in one process. A change that is seen is
 * asked again without it, so that nothing is laid to it that an earlier one left behind; one that the tests
 * reached at first and do not reach now (its answer was kept), or meet while they are read, is asked in a process of its
 * own, from before they are read.
 */
import fs from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { it } from 'vitest';
import { beginFile, runOnce, tests } from './collect.mjs';

const place = process.env.MUTATION_PLACE;
const lines = name => (process.env[name] ?? '').split('\n').filter(line => line !== '');
const read = name => JSON.parse(fs.readFileSync(path.join(place, name), 'utf8'));
const results = path.join(place, 'results.jsonl');
const note = entry => fs.appendFileSync(results, `${JSON.stringify(entry)}\n`);

/** A change in an endless loop is met more often than this many times what it was met at first. */
const MOST_HITS = 100;
const space = (globalThis.__stryker__ ??= {});
const FILES = lines('MUTATION_TESTS');

/**
 * What each change is met by, and how long each test takes: found once, before anything is changed. A test that fails
 * already here (it counts what whole random tests draw) is left out.
 */
async function reach() {
  const file = path.join(place, 'reach.json');
  if (fs.existsSync(file)) return read('reach.json');
  const seconds = [];
  const leftOut = [];
  for (const [at, test] of tests.entries()) {
    space.currentTestId = String(at + 1);
    const begun = performance.now();
    if (await fails(test)) leftOut.push(test.name);
    seconds.push((performance.now() - begun) / 1000);
  }
  space.currentTestId = undefined;
  const { perTest, static: atStart } = space.mutantCoverage ?? { perTest: {}, static: {} };
  const met = {};
  const atReading = {};
  for (const [by, hits] of Object.entries(perTest))
    if (by.startsWith('file ')) atReading[by.slice('file '.length)] = Object.keys(hits);
    else if (!leftOut.includes(tests[by - 1].name))
      for (const [id, count] of Object.entries(hits)) (met[id] ??= []).push([Number(by) - 1, count]);
  for (const each of Object.values(met)) each.sort(([a], [b]) => seconds[a] - seconds[b]);
  const names = tests.map((test, _, all) => [
    test.file,
    all.filter(({ file: number }) => number === test.file).indexOf(test),
  ]);
  const found = { seconds, met, leftOut, atReading, names, atStart: Object.keys(atStart) };
  fs.writeFileSync(file, JSON.stringify(found));
  return found;
}

async function fails(test) {
  try {
    await runOnce(test);
    return false;
  } catch {
    return true;
  }
}

/** The first test that fails with the change, and how often the change was met. */
async function ask(id, met) {
  Object.assign(space, {
    activeMutant: id,
    hitCount: 0,
    hitLimit: MOST_HITS * met.reduce((sum, [, count]) => sum + count, 0),
  });
  let seenBy;
  for (const [at] of met) {
    if (!(await fails(tests[at]))) continue;
    seenBy = tests[at];
    break;
  }
  space.activeMutant = '';
  return { seenBy, hits: space.hitCount };
}

/** Brings in the tests of one file; what it works out while it is read counts as its own. */
async function bring(number) {
  const [file = ''] = FILES.slice(number, number + 1);
  beginFile(number);
  space.currentTestId = `file ${number}`;
  await import(path.resolve(file));
  space.currentTestId = undefined;
}

/** Whether a test of some files fails with a change that is there before they are read. */
async function isSeenFromStart(id, numbers) {
  space.activeMutant = id;
  for (const number of numbers) {
    try {
      await bring(number);
    } catch {
      return true;
    }
    for (const test of tests.filter(({ file }) => file === number)) if (await fails(test)) return true;
  }
  return false;
}

/** The files that meet a change while they are read, and the tests of which what they work out there decides. */
const meetsAtReading = ({ atReading }, id) =>
  Object.entries(atReading).flatMap(([number, ids]) => (ids.includes(id) ? [Number(number)] : []));

function statesSoFar() {
  const states = new Map();
  if (fs.existsSync(results))
    for (const line of fs.readFileSync(results, 'utf8').split('\n').filter(Boolean)) {
      const { id, state } = JSON.parse(line);
      states.set(id, state);
    }
  return states;
}

/** Asks about one change in a process of its own, from before the tests are read. */
async function askAlone(id) {
  const found = read('reach.json');
  const numbers = meetsAtReading(found, id);
  const rest = [...FILES.keys()].filter(number => !numbers.includes(number));
  note({ id, state: 'Begun', seconds: 60 + 10 * found.seconds.reduce((sum, each) => sum + each, 0) });
  if (await isSeenFromStart(id, numbers)) return note({ id, state: 'Killed' });
  space.activeMutant = '';
  for (const number of rest) await bring(number);
  const own = (found.met[id] ?? []).map(([test, count]) => [
    tests.findIndex(isNamed(found.names[test])),
    count,
  ]);
  const { seenBy } = await ask(id, own);
  note({ id, state: seenBy === undefined ? 'Survived' : 'Killed' });
}
const isNamed =
  ([file, at]) =>
  (test, _, all) =>
    test.file === file && all.filter(other => other.file === file).indexOf(test) === at;

async function askAll() {
  fc.configureGlobal({ endOnFailure: true });
  space.activeMutant = '';
  for (const file of lines('MUTATION_FILES')) await import(path.resolve(file));
  const ids = read('changes.json');
  const states = statesSoFar();
  const open = ids.filter(id => states.get(id) === undefined);
  const [later] = ids.filter(id => states.get(id) === 'Later');
  if (open.length === 0) return later === undefined ? undefined : askAlone(later);
  for (const number of FILES.keys()) await bring(number);
  const found = await reach();
  const { seconds, met, atStart } = found;
  let isFresh = true;
  for (const id of open) {
    const isRead = meetsAtReading(found, id).length > 0;
    const own = met[id];
    if (own === undefined) {
      note({ id, state: isRead ? 'Later' : atStart.includes(id) ? 'Ignored' : 'NoCoverage' });
      continue;
    }
    const usual = own.reduce((sum, [at]) => sum + seconds[at], 0);
    note({ id, state: 'Begun', seconds: 20 + 5 * usual });
    const { seenBy, hits } = await ask(id, own);
    const isLeftBehind = seenBy !== undefined && (await fails(seenBy));
    if (isLeftBehind && !isFresh) return note({ id, state: 'Later' });
    if (seenBy !== undefined) note({ id, state: 'Killed' });
    else note({ id, state: isRead || hits === 0 ? 'Later' : 'Survived' });
    if (isLeftBehind) return;
    isFresh = false;
  }
}

it('asks about every change', askAll);
