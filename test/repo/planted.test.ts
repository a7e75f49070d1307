import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { PLANTED_BUGS } from '../trust/legs/planted';

/** The faults themselves are planted by `npm run trust -- --planted`; here their list is kept true to the source. */
describe('the list of planted bugs', () => {
  test('has at least 60, each breaking a promise of its own', () => {
    expect(PLANTED_BUGS.length).toBeGreaterThanOrEqual(60);
    expect(new Set(PLANTED_BUGS.map(({ promise }) => promise)).size).toBe(PLANTED_BUGS.length);
  });

  test('names text that stands exactly once in its file, and puts something else there', () => {
    const times = ({ file, find }: { file: string; find: string }) =>
      existsSync(file) ? readFileSync(file, 'utf8').split(find).length - 1 : 0;
    expect(
      PLANTED_BUGS.filter(bug => times(bug) !== 1 || bug.find === bug.put).map(({ promise }) => promise),
    ).toEqual([]);
  });

  test('names tests that are there', () => {
    expect(PLANTED_BUGS.filter(bug => !existsSync(bug.test)).map(bug => bug.test)).toEqual([]);
    expect(PLANTED_BUGS.filter(({ name }) => name.length < 5)).toEqual([]);
    // A name may be put together from a table of cases: each of its words stands in the file then; of one table, in others.
    const ofOtherFiles = ['the outside checks are what the program gives'];
    const lost = ({ test: file, name }: { test: string; name: string }) => {
      const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
      return name.split(/[^A-Za-z’'-]+/).filter(word => word.length > 3 && !text.includes(word));
    };
    expect(
      PLANTED_BUGS.filter(({ promise }) => !ofOtherFiles.includes(promise)).flatMap(bug =>
        lost(bug).map(word => `${bug.promise}: ${word}`),
      ),
    ).toEqual([]);
  });
});
