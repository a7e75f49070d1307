import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BASES } from '../../../core/base';
import {
  PRACTICE_IDS,
  estimateClass,
  growthView,
  likeHulls,
  limitOf,
  readGrowthData,
  readReviewData,
  reported,
  review,
  reviewFindings,
  type ReviewInput,
} from '../../../core/review';
import { cleanDraft, derive } from './clean-project';
import { PLANTS } from './faults';

const DATA = readReviewData(JSON.parse(readFileSync('templates/review.json', 'utf8')));
const GROWTH = readGrowthData(JSON.parse(readFileSync('templates/growth.json', 'utf8')));
const usd = (amount: number): number => Math.round(amount * 100);

function codes(input: ReviewInput): string[] {
  return review(input, DATA, GROWTH)
    .filter(row => row.standing !== 'met')
    .map(row => row.practiceId);
}

const RUNS = 100;

describe('the automatic checks', () => {
  it('report nothing on 1,000 clean random projects', () => {
    fc.assert(
      fc.property(cleanDraft, draft => {
        expect(codes(derive(draft))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  it.each(PRACTICE_IDS)(
    '%s: its fault planted alone is found in 100 of 100, and nothing else is',
    practiceId => {
      let found = 0;
      fc.assert(
        fc.property(cleanDraft, fc.nat(), (draft, pick) => {
          const rows = review(PLANTS[practiceId](draft, pick), DATA, GROWTH);
          expect(reported(rows).map(row => row.practiceId)).toEqual([practiceId]);
          expect(rows.filter(row => row.standing === 'cannot tell')).toEqual([]);
          found += 1;
        }),
        { numRuns: RUNS },
      );
      expect(found).toBe(RUNS);
    },
  );

  it('every row has evidence, and every report a remedy and its guide', () => {
    fc.assert(
      fc.property(cleanDraft, draft => {
        const rows = review(PLANTS.sources(draft, 3), DATA, GROWTH);
        expect(rows.every(row => row.evidence.length > 0 && row.remedy.length > 0)).toBe(true);
        expect(reviewFindings(rows)).toMatchObject([
          { code: 'review/sources', weight: 'warns', message: 'work 3 names no source' },
        ]);
      }),
      { numRuns: 5 },
    );
  });

  it('cannot tell what its inputs do not say', () => {
    const empty: ReviewInput = {
      lines: [],
      total: 0,
      priceYear: 2025,
      isEscalated: true,
      excludedStages: [],
      definition: [],
      lessons: [],
      madeOn: '2026-01-01',
      hull: { hullClass: 'ferry' },
      priceFactors: {},
    };
    const rows = review(empty, DATA, GROWTH);
    expect(rows.filter(row => row.standing === 'cannot tell').map(row => row.practiceId)).toEqual([
      'baseline-defined',
      'baseline-agrees',
      'refreshed',
      'variances',
      'history',
      'activities',
      'sequence',
      'resources',
      'durations',
      'traceable',
      'critical-path',
      'float',
      'schedule-risk',
      'progress',
      'baseline',
      'contingency-level',
      'contingency-growth',
    ]);
    expect(reviewFindings(rows).filter(found => found.weight === 'notes')).toHaveLength(17);
  });

  it('a crew that holds the next activity keeps the critical chain whole', () => {
    fc.assert(
      fc.property(cleanDraft, draft => {
        const { schedule } = draft;
        const relationships = schedule.relationships.map(one =>
          one.from === 'A4' && one.to === 'A5' ? { ...one, from: 'B4' } : one,
        );
        const cut = { ...draft, schedule: { ...schedule, relationships } };
        expect(codes(derive(cut))).toEqual(['critical-path']);
        const linked = { ...cut, schedule: { ...cut.schedule, resourceLinks: [{ from: 'A4', to: 'A5' }] } };
        expect(codes(derive(linked))).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('a file that leaves a practice out is a fault', () => {
    const input = fc.sample(cleanDraft, 1)[0];
    if (!input) throw new Error('a sample');
    const short = { ...DATA, practices: DATA.practices.slice(1) };
    expect(() => review(derive(input), short, GROWTH)).toThrow('every practice once');
    expect(() => limitOf({ ...DATA, limits: [] }, 'big-line')).toThrow('no limit');
  });
});

describe('recorded growth', () => {
  it('runs from 0.84 to 1.66, and the middle of the six cases is 1.32', () => {
    const view = growthView(usd(1_000_000), usd(320_000), GROWTH);
    // sorted 0.84, 1.10, 1.23, 1.41, 1.51, 1.66: (1.23 + 1.41) / 2
    expect([view.least, view.median, view.most]).toEqual([0.84, 1.32, 1.66]);
    expect([view.atLeast, view.atMedian, view.atMost]).toEqual([840_000, 1_320_000, 1_660_000].map(usd));
    expect(view.isBelowMedian).toBe(false);
    expect(growthView(usd(1_000_000), usd(319_999), GROWTH).isBelowMedian).toBe(true);
  });
});

describe('the estimate class', () => {
  const byBasis = (quoted: number) => ({
    ...Object.fromEntries(BASES.map(basis => [basis, 0])),
    quoted: usd(quoted),
    judgement: usd(100 - quoted),
  });
  // bands of ASTM E2516 and AACE 18R-97: 0-2, 1-15, 10-40, 30-75, 65-100; the weaker class where two fit
  it.each([
    [0, 5],
    [2, 5],
    [3, 4],
    [15, 4],
    [16, 3],
    [40, 3],
    [41, 2],
    [75, 2],
    [76, 1],
    [100, 1],
  ])('%d in 100 surveyed or quoted is class %d', (quoted, expected) => {
    const amounts = byBasis(quoted) as Parameters<typeof estimateClass>[0];
    expect(estimateClass(amounts, DATA)?.estimateClass).toBe(expected);
  });
  it('carries the published range, and is absent for nothing', () => {
    const amounts = byBasis(20) as Parameters<typeof estimateClass>[0];
    expect(estimateClass(amounts, DATA)).toMatchObject({
      low: { narrow: -0.1, wide: -0.2 },
      high: { narrow: 0.1, wide: 0.3 },
    });
    expect(estimateClass({ ...amounts, quoted: 0, judgement: 0 }, DATA)).toBeUndefined();
  });
});

describe('past hulls', () => {
  it('are named by class, length and year, the pair as one ship, in the money of the estimate', () => {
    const hulls = likeHulls(
      { hull: { hullClass: 'tug', lengthFeet: 180 }, priceFactors: { 2016: 1.34, 2022: 1.1 } },
      GROWTH,
      0.3,
    );
    expect(hulls.map(hull => [hull.hullClass, hull.lengthFeet, hull.today])).toEqual([
      ['small freighter', 170, usd(147_400)],
      ['research vessels (pair: 180 and 178 ft)', 180, usd(926_750)],
    ]);
    expect(likeHulls({ hull: { hullClass: 'tug' }, priceFactors: {} }, GROWTH, 0.3)).toEqual([]);
  });
});
