/**
 * Runs in the copy of the tree: asks the tests about one change after another, in one process. A change that is seen is
 * asked again without it, so that nothing is laid to it that an earlier one left behind; one that the tests reached at
 * first and do not reach now (its answer was kept) is asked in a process of its own.
 */
import fs from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { it } from 'vitest';
import { runOnce, tests } from './collect.mjs';

const place = process.env.MUTATION_PLACE;
const lines = name => (process.env[name] ?? '').split('\n').filter(line => line !== '');
const read = name => JSON.parse(fs.readFileSync(path.join(place, name), 'utf8'));
const results = path.join(place, 'results.jsonl');
const note = entry => fs.appendFileSync(results, `${JSON.stringify(entry)}\n`);

/** A change in an endless loop is met more often than this many times what it was met at first. */
const MOST_HITS = 100;
const space = (globalThis.__stryker__ ??= {});

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
  for (const [test, hits] of Object.entries(perTest).filter(([at]) => !leftOut.includes(tests[at - 1].name)))
    for (const [id, count] of Object.entries(hits)) (met[id] ??= []).push([Number(test) - 1, count]);
  for (const each of Object.values(met)) each.sort(([a], [b]) => seconds[a] - seconds[b]);
  const found = { seconds, met, leftOut, atStart: Object.keys(atStart) };
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

async function askAll() {
  fc.configureGlobal({ endOnFailure: true });
  for (const file of lines('MUTATION_TESTS')) await import(path.resolve(file));
  space.activeMutant = '';
  const { seconds, met, atStart } = await reach();
  const states = new Map();
  if (fs.existsSync(results))
    for (const line of fs.readFileSync(results, 'utf8').split('\n').filter(Boolean)) {
      const { id, state } = JSON.parse(line);
      states.set(id, state);
    }
  const open = read('changes.json').filter(id => states.get(id) === undefined);
  const later = read('changes.json').filter(id => states.get(id) === 'Later');
  const isLast = open.length === 0;
  let isFresh = true;
  for (const id of isLast ? later : open) {
    const own = met[id];
    if (own === undefined) {
      note({ id, state: atStart.includes(id) ? 'Ignored' : 'NoCoverage' });
      continue;
    }
    const usual = own.reduce((sum, [at]) => sum + seconds[at], 0);
    note({ id, state: 'Begun', seconds: 20 + 5 * usual });
    const { seenBy, hits } = await ask(id, own);
    const isLeftBehind = seenBy !== undefined && (await fails(seenBy));
    if (isLeftBehind && !isFresh) return note({ id, state: 'Later' });
    if (seenBy !== undefined) note({ id, state: 'Killed' });
    else note({ id, state: hits === 0 && !isFresh ? 'Later' : 'Survived' });
    if (isLeftBehind || isLast) return;
    isFresh = false;
  }
}

it('asks about every change', askAll);
