import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { searchSchedule } from '../../../core/scheduling/search';
import { readBounds } from '../../bench/levelling/bounds-file';
import { readSch } from '../../bench/levelling/read-sch';
import { readSm } from '../../bench/levelling/read-sm';
import { scheduleFaults } from './schedule-faults';

const PSPLIB = process.env['PSPLIB_DIR'] ?? '../shared/psplib';
const RCPSP_MAX = process.env['RCPSP_MAX_DIR'] ?? '../shared/rcpsp-max';

/** Best known bounds of Kolisch and Sprecher's library, European Journal of Operational Research 96 (1997) 205-216. */
describe.skipIf(!existsSync(join(PSPLIB, 'bounds.csv')))('on the public project-scheduling library', () => {
  for (const set of ['j30', 'j60', 'j120']) {
    it(`no schedule of ${set} is shorter than the best known lower bound, no bound larger than the best known`, () => {
      for (const known of readBounds(join(PSPLIB, 'bounds.csv'), set).filter((_, k) => k % 10 === 0)) {
        const problem = readSm(readFileSync(join(PSPLIB, set, `${known.instance}.sm`), 'utf8'));
        const result = searchSchedule(problem, { schedules: 300, seed: 1 });
        expect(result.starts && scheduleFaults(problem, result.starts)).toEqual([]);
        expect(result.finish).toBeGreaterThanOrEqual(known.lower ?? 0);
        expect(result.lowerBound).toBeLessThanOrEqual(known.upper ?? 0);
      }
    });
  }
});

describe.skipIf(!existsSync(join(PSPLIB, 'bounds.csv')))('on the library of 30 activities', () => {
  it('what is proved optimal is the published optimum, and most of every tenth is proved', () => {
    const some = readBounds(join(PSPLIB, 'bounds.csv'), 'j30').filter((_, k) => k % 10 === 3);
    const proved = some.filter(known => {
      const problem = readSm(readFileSync(join(PSPLIB, 'j30', `${known.instance}.sm`), 'utf8'));
      const result = searchSchedule(problem, { schedules: 5000, seed: 1 });
      if (result.status === 'optimal') expect(result.finish).toBe(known.upper);
      return result.status === 'optimal';
    });
    expect(proved.length).toBeGreaterThan(0.8 * some.length);
  });
});

/** Instances of Kolisch, Schwindt and Sprecher (1999) with minimum and maximum lags. */
describe.skipIf(!existsSync(join(RCPSP_MAX, 'bounds.csv')))('on small networks with maximum lags', () => {
  it('recognises the 73 feasible and 17 infeasible ones and finds every optimum', () => {
    const outcomes = readBounds(join(RCPSP_MAX, 'bounds.csv'), 'max-ubo10').map(known => {
      const problem = readSch(readFileSync(join(RCPSP_MAX, 'ubo10', known.instance), 'utf8'));
      const result = searchSchedule(problem, { schedules: 20_000, seed: 1 });
      expect(result.starts ? scheduleFaults(problem, result.starts) : []).toEqual([]);
      const expected = known.upper === undefined ? 'infeasible' : `optimal ${known.upper}`;
      const outcome = result.finish === undefined ? result.status : `${result.status} ${result.finish}`;
      return { instance: known.instance, expected, outcome };
    });
    expect(outcomes.filter(({ expected, outcome }) => expected !== outcome)).toEqual([]);
    expect(outcomes.filter(({ outcome }) => outcome === 'infeasible')).toHaveLength(17);
    expect(outcomes).toHaveLength(90);
  });
});
