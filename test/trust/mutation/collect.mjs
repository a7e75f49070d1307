/** Takes the place of the runner in the copies of the tests: they are collected, to be run as often as wanted. */
import * as vitest from 'vitest';

/** Every test with its file and the hooks around it. */
export const tests = [];

let file = 0;
/** Tests that are collected from now on are those of this file. */
export function beginFile(number) {
  file = number;
}

const newGroup = above => ({ above, beforeAll: [], beforeEach: [], afterEach: [], isBegun: false });
let group = newGroup(undefined);

export function describe(_name, body) {
  group = newGroup(group);
  body();
  group = group.above;
}

export function it(name, ...rest) {
  const run = rest.find(each => typeof each === 'function');
  tests.push({ name, run, group, file });
}
export const test = it;

/** A row of a table is given to the body as its arguments; a row that is no list is its only one. */
const rowsOf = make => rows => (name, body) => {
  for (const row of rows) make(name, () => (Array.isArray(row) ? body(...row) : body(row)));
};
const unless = (make, isLeftOut) => (isLeftOut ? () => undefined : make);
for (const make of [describe, it]) {
  make.each = rowsOf(make);
  make.skipIf = isLeftOut => unless(make, isLeftOut);
  make.runIf = isRun => unless(make, !isRun);
  make.skip = () => undefined;
}

const hook = kind => run => group[kind].push(run);
export const beforeAll = hook('beforeAll');
export const beforeEach = hook('beforeEach');
export const afterEach = hook('afterEach');
export const afterAll = () => undefined;

function groupsOf(test) {
  const groups = [];
  for (let one = test.group; one !== undefined; one = one.above) groups.unshift(one);
  return groups;
}

/** Runs a test with its hooks; throws what the test throws. */
export async function runOnce(test) {
  const groups = groupsOf(test);
  for (const one of groups) {
    if (one.isBegun) continue;
    one.isBegun = true;
    for (const run of one.beforeAll) await run();
  }
  try {
    for (const run of groups.flatMap(one => one.beforeEach)) await run();
    await test.run();
  } finally {
    for (const run of groups.flatMap(one => one.afterEach).toReversed()) await run();
  }
}

export const { expect, vi, assert, expectTypeOf, assertType } = vitest;
