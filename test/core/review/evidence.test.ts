import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readGrowthData, readReviewData, review, type ReviewInput } from '../../../core/review';

const DATA = readReviewData(JSON.parse(readFileSync('templates/review.json', 'utf8')));
const GROWTH = readGrowthData(JSON.parse(readFileSync('templates/growth.json', 'utf8')));

const BARE: ReviewInput = {
  lines: [],
  total: 1_000_000_00,
  priceYear: 2025,
  isEscalated: true,
  excludedStages: [],
  definition: [],
  lessons: [],
  madeOn: '2026-01-01',
  hull: { hullClass: 'ferry' },
  priceFactors: {},
};

/** Standing and evidence of one practice. */
const told = (practiceId: string, change: Partial<ReviewInput> = {}) => {
  const row = review({ ...BARE, ...change }, DATA, GROWTH).find(one => one.practiceId === practiceId);
  return [row?.standing, row?.evidence];
};

describe('what a check says it rests on', () => {
  it.each<[string, Partial<ReviewInput>, string, string]>([
    ['refreshed', {}, 'cannot tell', 'no status date is given'],
    ['refreshed', { statusDate: '2026-03-01' }, 'met', 'the estimate is 2 months old'],
    ['refreshed', { statusDate: '2026-02-01' }, 'met', 'the estimate is 1 month old'],
    ['variances', {}, 'cannot tell', 'whether there was an earlier estimate is not said'],
    ['variances', { earlier: 'first' }, 'met', 'this is the first estimate'],
    [
      'variances',
      { earlier: { total: 900_000_00, steps: [{ title: 'Oil', amount: 100_000_00 }] } },
      'met',
      'every dollar since the last estimate is in 1 named steps',
    ],
    [
      'variances',
      { earlier: { total: 900_000_00, steps: [{ title: 'Oil', amount: 99_999_00 }] } },
      'not met',
      '$1.00 of the change since the last estimate is not explained',
    ],
    ['lessons', {}, 'met', 'no work is finished yet, so there is nothing to learn from'],
    ['sensitivity', {}, 'not met', 'no ranking of drivers was made'],
    ['uncertainty', {}, 'not met', 'no simulation was run'],
    ['cross-checks', {}, 'met', 'every big line is checked a second way'],
    ['independent', {}, 'not met', 'nobody else has estimated it'],
    [
      'independent',
      { independent: { total: 1_010_000_00 } },
      'met',
      'an independent estimate of $1,010,000.00 is 1.0 per cent off',
    ],
    [
      'independent',
      { independent: { total: 2_000_000_00, explanation: ' ' } },
      'partly',
      'an independent estimate of $2,000,000.00 is 100.0 per cent off, and the difference is not explained',
    ],
    ['contingency-level', {}, 'cannot tell', 'the contingency was not held against a simulation'],
    [
      'contingency-level',
      { contingency: 100_000_00 },
      'cannot tell',
      'the contingency was not held against a simulation',
    ],
    [
      'contingency-level',
      { contingency: 100_000_00, budgetPercentile: 99.4, costAtP80: 1_060_000_00 },
      'met',
      'the estimate with its contingency of $100,000.00 holds in 99 of 100 runs; 80 in 100 need a contingency of $60,000.00',
    ],
    [
      'contingency-level',
      { contingency: 100_000_00, budgetPercentile: 10 },
      'not met',
      'the estimate with its contingency of $100,000.00 holds in 10 of 100 runs',
    ],
    ['contingency-growth', {}, 'cannot tell', 'the contingency is absent'],
    ['baseline-agrees', {}, 'cannot tell', 'there is no schedule to compare with'],
    ['approval', {}, 'not met', 'nobody is named who reviewed and agreed'],
    [
      'approval',
      { approval: { by: 'A. Board', on: '2026-02-01' } },
      'met',
      'agreed by A. Board on 2026-02-01',
    ],
    ['best-method', {}, 'met', 'no big line rests on an unchecked figure'],
    ['inflation', { isEscalated: false }, 'not met', 'the money is not carried to the month of spending'],
  ])('%s with %j is %s', (practice, change, standing, evidence) => {
    expect(told(practice, change)).toEqual([standing, [evidence]]);
  });
});
