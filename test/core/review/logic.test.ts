import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  readGrowthData,
  readReviewData,
  review,
  type ReviewInput,
  type ReviewRelationship,
} from '../../../core/review';
import { cleanDraft, derive } from './clean-project';

const DATA = readReviewData(JSON.parse(readFileSync('templates/review.json', 'utf8')));
const GROWTH = readGrowthData(JSON.parse(readFileSync('templates/growth.json', 'utf8')));
const clean = fc.sample(cleanDraft, { numRuns: 1, seed: 7 })[0] ?? fail();

function rowOf(input: ReviewInput, practiceId: string) {
  return review(input, DATA, GROWTH).find(row => row.practiceId === practiceId) ?? fail();
}
function withRelationship(added: ReviewRelationship): ReviewInput {
  const { schedule } = clean;
  return derive({ ...clean, schedule: { ...schedule, relationships: [...schedule.relationships, added] } });
}

describe('the four kinds of relationship against the dates', () => {
  // Later activities may not come before earlier ones in the direction the kind holds.
  it.each(['FS', 'SS', 'FF', 'SF'] as const)('%s kept by the dates is met, turned round it is not', kind => {
    expect(rowOf(withRelationship({ from: 'A2', to: 'A6', kind, lag: 0 }), 'traceable').standing).toBe('met');
    const turned = rowOf(withRelationship({ from: 'A6', to: 'A2', kind, lag: 0 }), 'traceable');
    expect([turned.standing, turned.ids]).toEqual(['partly', ['A2']]);
  });
  it('one that names an activity which is not there is found', () => {
    expect(
      rowOf(withRelationship({ from: 'gone', to: 'A2', kind: 'FS', lag: 0 }), 'traceable').standing,
    ).toBe('partly');
  });
  it('a lag with a reason is met', () => {
    const notice = { from: 'A2', to: 'A6', kind: 'FS' as const, lag: 10, reason: 'notice of 10 work days' };
    expect(rowOf(withRelationship(notice), 'sequence').standing).toBe('met');
  });
});

describe('the critical chain', () => {
  it('needs a critical activity at the finish', () => {
    const activities = clean.schedule.activities.map(one =>
      one.id === 'end' || one.id === 'A11' ? { ...one, isCritical: false } : one,
    );
    const row = rowOf(derive({ ...clean, schedule: { ...clean.schedule, activities } }), 'critical-path');
    expect([row.standing, row.ids]).toEqual(['not met', ['finish']]);
  });
});

describe('ways out that a reviewer accepts', () => {
  it('a first estimate, a stage left out in writing, an explained difference', () => {
    const base = derive(clean);
    expect(rowOf({ ...base, earlier: 'first' }, 'variances').standing).toBe('met');
    const lines = base.lines.filter(line => line.stage !== 'tow');
    const without = { ...base, lines };
    expect(rowOf(without, 'whole-life').standing).toBe('partly');
    expect(rowOf({ ...without, excludedStages: ['tow'] }, 'whole-life').standing).toBe('met');
    const far = { total: base.total * 2, explanation: 'prices another yard' };
    expect(rowOf({ ...base, independent: far }, 'independent').standing).toBe('met');
  });
  it('a cost far below the past hulls is named as such', () => {
    const base = derive(clean);
    const row = rowOf({ ...base, total: 100_000_00 }, 'history');
    expect([row.standing, row.evidence[0]?.includes('far below')]).toEqual(['not met', true]);
  });
  it('contingency between the least growth and the middle is partly enough, below it not', () => {
    const base = derive(clean);
    const at = (share: number) =>
      rowOf({ ...base, contingency: Math.round(base.total * share) }, 'contingency-growth').standing;
    expect([at(0.05), at(0.2), at(0.32)]).toEqual(['not met', 'partly', 'met']);
  });
});

function fail(): never {
  throw new Error('a clean project was expected');
}

describe('what the review takes for granted and what it does not', () => {
  it('a line of no money and no months lies in no wrong month and needs no range', () => {
    const lines = clean.lines.map((line, i) => {
      const { firstMonth: _first, lastMonth: _last, ...rest } = line;
      return i === 5 ? { ...rest, total: 0, elementSum: 0, isRanged: false } : line;
    });
    const input = derive({ ...clean, lines });
    expect(rowOf(input, 'baseline-agrees').standing).toBe('met');
    expect(rowOf(input, 'uncertainty').standing).toBe('met');
  });

  it('a line with only its first month known is judged by it', () => {
    const lines = clean.lines.map((line, i) => {
      const { lastMonth: _last, ...rest } = line;
      return i === 5 ? { ...rest, firstMonth: '2020-01' } : line;
    });
    expect(rowOf(derive({ ...clean, lines }), 'baseline-agrees').ids).toEqual(['L5']);
  });

  it('the same title in another stage is other work, the same id never is', () => {
    const [first, , third] = clean.lines;
    if (first === undefined || third === undefined) fail();
    const titled = clean.lines.map(line => (line.id === third.id ? { ...line, title: first.title } : line));
    expect(rowOf(derive({ ...clean, lines: titled }), 'structure').standing).toBe('met');
    const same = clean.lines.map(line => (line.id === third.id ? { ...line, id: first.id } : line));
    expect(rowOf(derive({ ...clean, lines: same }), 'structure').ids).toEqual([first.id]);
  });

  it('progress cannot be told without a status date, and the contingency level without a contingency', () => {
    const { statusDate: _status, ...undated } = derive(clean);
    expect(rowOf(undated, 'progress').standing).toBe('cannot tell');
    const { contingency: _contingency, ...bare } = derive(clean);
    expect(rowOf(bare, 'contingency-level').standing).toBe('cannot tell');
    const { costAtP80: _cost, ...short } = derive(clean);
    expect(rowOf(short, 'contingency-level').evidence[0]).not.toContain('80 in 100');
  });

  it('a critical chain that loops or leads nowhere is broken at its earliest activity', () => {
    const { schedule } = clean;
    const relationships = schedule.relationships
      .filter(one => one.to !== 'A3')
      .concat({ from: 'A5', to: 'A4', kind: 'FS', lag: 0 }, { from: 'gone', to: 'A3', kind: 'FS', lag: 0 });
    const input = derive({ ...clean, schedule: { ...schedule, relationships } });
    expect(rowOf(input, 'critical-path')).toMatchObject({ standing: 'not met' });
  });

  it('a growth with nothing estimated yet asks for nothing', () => {
    const empty = { ...derive(clean), total: 0, contingency: 0 };
    expect(rowOf(empty, 'contingency-growth').standing).toBe('met');
  });
});
