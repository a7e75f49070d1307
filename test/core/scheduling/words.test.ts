import { describe, expect, it } from 'vitest';
import { relationshipWords, type Holding, type ScheduleProblem } from '../../../core/scheduling';
import { compile } from '../../../core/scheduling/compile/compile';
import { searchConflict } from '../../../core/scheduling/diagnose/search-conflict';
import type { SearchConflict } from '../../../core/scheduling/search';
import { daysWords, holdingWords, joinWords } from '../../../core/scheduling/words';
import { after, problemOf, work } from './problems';

const titled = (id: string, title: string, more = {}) => work(id, 2, { title, ...more });

const PROBLEM: ScheduleProblem = problemOf(
  [
    titled('tanks', 'Tank cleaning', { uses: { cleaners: 2 }, place: 'hold' }),
    titled('pipes', 'Pipe runs', { uses: { cleaners: 2 }, place: 'hold' }),
    titled('tow', 'Tow', { deadline: '2027-03-05' }),
    titled('sink', 'Sinking', { deadline: '2027-03-09' }),
  ],
  [after('tanks', 'tow', { lag: 3 }), after('pipes', 'tow')],
  {
    resources: [{ id: 'cleaners', title: 'Cleaners', capacity: 3 }],
    zones: [{ id: 'hold', title: 'No. 1 hold', crewLimit: 1 }],
    exclusions: [],
    closures: { eagles: { id: 'eagles', title: 'Nesting season', from: '2027-04-01', to: '2027-06-30' } },
  },
);

describe('why an activity is where it is, in words', () => {
  it.each<[Holding, string]>([
    [{ kind: 'start', date: '2027-03-01' }, 'starts with the project on 2027-03-01'],
    [
      { kind: 'status-date', date: '2027-03-04' },
      'what is not done is planned from the status date 2027-03-04 on',
    ],
    [{ kind: 'actual', date: '2027-03-02' }, 'has happened, on 2027-03-02'],
    [{ kind: 'not-before', date: '2027-03-08' }, 'may not start before 2027-03-08'],
    [
      { kind: 'relationship', relationship: 0, from: 'tanks', type: 'FS', lag: 3, lagUnit: 'work-day' },
      'after Tank cleaning finishes, 3 work days later',
    ],
    [{ kind: 'maximum-lag', relationship: 0, from: 'tanks', to: 'tow' }, 'must not run too far ahead of Tow'],
    [
      { kind: 'resource', resource: 'cleaners', activities: ['tanks', 'pipes', 'tow'] },
      'waits for Cleaners, in use by Tank cleaning, Pipe runs and Tow',
    ],
    [
      { kind: 'crew-limit', zone: 'hold', activities: ['tanks'] },
      'waits for room in No. 1 hold, where Tank cleaning is at work',
    ],
    [
      { kind: 'crew-limit', zone: 'hold', activities: ['tanks', 'pipes'] },
      'waits for room in No. 1 hold, where Tank cleaning and Pipe runs are at work',
    ],
    [
      { kind: 'capacity', resource: 'cleaners', date: '2027-03-12' },
      'waits because Cleaners is not at hand in that number until after 2027-03-12',
    ],
    [
      { kind: 'exclusion', exclusion: 'no hot work over fuel', activity: 'pipes' },
      'may not run at the same time as Pipe runs (no hot work over fuel)',
    ],
    [
      { kind: 'zone-state', state: 'gas-free', zone: 'hold', activity: 'tanks' },
      'gas-free in No. 1 hold: after Tank cleaning',
    ],
    [
      { kind: 'calendar', calendar: 'five', idleFrom: '2027-03-06' },
      'no work from 2027-03-06 on its calendar Five days',
    ],
    [
      { kind: 'calendar', calendar: 'lost', idleFrom: '2027-03-06' },
      'no work from 2027-03-06 on its calendar lost',
    ],
    [
      { kind: 'closure', closure: 'eagles', idleFrom: '2027-04-01' },
      'Nesting season, closed from 2027-04-01',
    ],
    [{ kind: 'closure', closure: 'lost', idleFrom: '2027-04-01' }, 'lost, closed from 2027-04-01'],
    [
      { kind: 'window', daysNeeded: 4, idleFrom: '2027-03-03' },
      'needs an open window of 4 calendar days on end; there is none from 2027-03-03',
    ],
    [{ kind: 'levelling' }, 'placed later to even out the crews'],
  ])('%o', (holding, words) => {
    expect(holdingWords(PROBLEM, holding)).toBe(words);
  });

  it('tells each end, lead and most lag of a relationship', () => {
    const told = (more: Partial<Parameters<typeof relationshipWords>[0]>) =>
      relationshipWords({ kind: 'FS', ...more }, 'Tow');
    expect(told({})).toBe('after Tow finishes');
    expect(told({ kind: 'SS', lag: 1 })).toBe('after Tow starts, 1 work day later');
    expect(told({ kind: 'FF', lag: 2, lagUnit: 'day' })).toBe(
      'finishes after Tow finishes, 2 calendar days later',
    );
    expect(told({ kind: 'SF' })).toBe('finishes after Tow starts');
    expect(told({ lag: -2 })).toBe('at most 2 work days before Tow finishes');
    expect(told({ kind: 'FF', lag: -1, maximumLag: 4 })).toBe(
      'finishes at most 1 work day before Tow finishes, and at most 4 work days after that',
    );
  });

  it('joins none, one, two and three, and counts days', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(joinWords)).toEqual([
      '',
      'a',
      'a and b',
      'a, b and c',
    ]);
    expect([daysWords(1, 'day'), daysWords(0, 'work-day')]).toEqual(['1 calendar day', '0 work days']);
  });
});

describe('what the search finds to stand against each other', () => {
  const told = (conflict: Partial<SearchConflict>, problem = PROBLEM) =>
    searchConflict(compile(problem), {
      kind: 'no order of resources and lags',
      activities: [],
      relationships: [],
      resources: [],
      ...conflict,
    });

  it('names activities, deadlines, relationships, crews and room in a zone', () => {
    const { resources, relationships } = compile(PROBLEM);
    expect(relationships[0]).toHaveProperty('relationship', 0);
    const all = told({
      kind: 'capacity exhausted',
      activities: [0, 2],
      relationships: [0],
      resources: [...resources.keys()],
    });
    expect(all).toEqual({
      kind: 'capacity exhausted',
      activities: ['tanks', 'tow'],
      relationships: [0],
      resources: ['cleaners'],
      sentence:
        'These cannot hold together for Tank cleaning and Tow: Tow after Tank cleaning finishes, 3 work days later, ' +
        'Tow by 2027-03-05, what there is of Cleaners and what there is of room in No. 1 hold.',
    });
    expect(told({ relationships: [1] }).sentence).toBe(
      'These cannot hold together: Tow after Pipe runs finishes.',
    );
  });

  it('without a smaller set names every date that is due, or what is to be kept', () => {
    expect(told({}).sentence).toBe(
      'No order of the activities keeps Tow by 2027-03-05 and Sinking by 2027-03-09 with the crews, zones and exclusions there are.',
    );
    expect(told({}, problemOf([work('a', 1)])).sentence).toBe(
      'No order of the activities keeps the crews, zones, exclusions and relationships together.',
    );
  });
});
