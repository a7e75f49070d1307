import { describe, expect, it } from 'vitest';
import { schedule } from '../../../core/scheduling';
import { conflicts } from './dates';
import { after, problemOf, work } from './problems';

describe('a problem without a schedule names what cannot hold together, in one sentence', () => {
  it('a window shorter than the tow', () => {
    const windows = [{ from: '2027-05-01', to: '2027-05-08' }];
    expect(
      conflicts(problemOf([work('Tow', 6, { calendar: 'all', consecutive: { weatherDays: 4 }, windows })])),
    ).toEqual([
      'Tow needs 6 calendar days and 4 of weather allowance on end, but the longest open window has 8 calendar days, from 2027-05-01.',
    ]);
  });
  it('a deadline before the permit', () => {
    const problem = problemOf(
      [
        work('Permit', 120, { durationUnit: 'day', waiting: true }),
        work('Sinking', 2, { calendar: 'all', deadline: '2027-06-01' }),
      ],
      [after('Permit', 'Sinking')],
    );
    expect(conflicts(problem)).toEqual([
      'Sinking must finish by 2027-06-01, but Permit and Sinking lead to 2027-06-30 at the earliest.',
    ]);
  });
  it('a deadline that a closure makes impossible names the closure too', () => {
    const problem = problemOf(
      [
        work('Tow', 6, {
          calendar: 'all',
          consecutive: { weatherDays: 0 },
          closures: ['h'],
          deadline: '2027-08-01',
          notBefore: '2027-05-29',
        }),
      ],
      [],
      {
        closures: { h: { id: 'h', title: 'Hurricane season', from: '06-01', to: '11-30' } },
      },
    );
    expect(conflicts(problem)).toEqual([
      'Tow must finish by 2027-08-01, but Tow from 2027-05-29 and Hurricane season lead to 2027-12-06 at the earliest.',
    ]);
  });
  it('a crew larger than there is, of a trade and in a zone', () => {
    const problem = problemOf(
      [work('Cutting', 3, { uses: { burners: 4 }, place: 'engine', crewSize: 9 })],
      [],
      {
        resources: [{ id: 'burners', title: 'Burners', capacity: 3 }],
        zones: [{ id: 'engine', title: 'Engine room', crewLimit: 6 }],
      },
    );
    expect(conflicts(problem)).toEqual([
      'Cutting needs 4 of Burners, but there are never more than 3.',
      'Cutting works with a crew of 9, but Engine room has room for 6.',
    ]);
  });
  it('a most lag that a closure breaks', () => {
    const problem = problemOf(
      [
        work('Tow', 2, { calendar: 'all', deadline: '2027-03-10' }),
        work('Sinking', 2, { calendar: 'all', closures: ['birds'] }),
      ],
      [after('Tow', 'Sinking', { maximumLag: 3, lagUnit: 'day' })],
      { closures: { birds: { id: 'birds', title: 'Nesting season', from: '2027-03-01', to: '2027-06-30' } } },
    );
    expect(conflicts(problem)).toEqual([
      'Tow must finish by 2027-03-10, but Sinking, Tow, Nesting season and "Sinking after Tow finishes, and at most 3 calendar days after that" lead to 2027-06-27 at the earliest.',
    ]);
  });
  it('a most lag that a closure breaks when the only window of the tow has gone by', () => {
    const problem = problemOf(
      [
        work('Tow', 2, { calendar: 'all', windows: [{ from: '2027-03-01', to: '2027-03-10' }] }),
        work('Sinking', 2, { calendar: 'all', closures: ['birds'] }),
      ],
      [after('Tow', 'Sinking', { maximumLag: 3, lagUnit: 'day' })],
      { closures: { birds: { id: 'birds', title: 'Nesting season', from: '2027-03-01', to: '2027-06-30' } } },
    );
    expect(conflicts(problem)).toEqual([
      'These cannot hold together: Sinking after Tow finishes, and at most 3 calendar days after that and Nesting season.',
    ]);
  });
  it('more work than the crews can do by a deadline', () => {
    const problem = problemOf(
      ['A', 'B', 'C'].map(id => work(id, 4, { uses: { crew: 1 }, deadline: '2027-03-10' })),
      [],
      { resources: [{ id: 'crew', title: 'Cleaning crew', capacity: 1 }] },
    );
    const [sentence = ''] = conflicts(problem);
    expect(sentence).toBe(
      'A, B and C need 12 unit days of Cleaning crew from 2027-03-01 to 2027-03-10, but there are 8.',
    );
  });
  it('work that excludes other work, of which no order keeps the deadlines', () => {
    // Five and five work days, one after the other, end on the tenth: Friday 12 March.
    const problem = (deadline: string) =>
      problemOf(
        ['A', 'B'].map(id => work(id, 5, { place: 'bow', deadline })),
        [],
        {
          zones: [{ id: 'bow', title: 'Bow' }],
          exclusions: [{ id: 'hot', title: 'Hot work', first: ['A'], second: ['B'] }],
        },
      );
    const result = schedule(problem('2027-03-11'), { schedules: 30, seed: 1 });
    expect([result.status, result.activities]).toEqual(['infeasible', []]);
    expect(result.findings.map(finding => finding.message)).toEqual([
      'No order of the activities keeps A by 2027-03-11 and B by 2027-03-11 with the crews, zones and exclusions there are.',
    ]);
    expect(schedule(problem('2027-03-12'), { schedules: 30, seed: 1 }).finish).toBe('2027-03-12');
  });
  it('no open day at all', () => {
    const [sentence = ''] = conflicts(
      problemOf([work('A', 2, { windows: [{ from: '2027-03-06', to: '2027-03-07' }] })]),
    );
    expect(sentence).toBe('A needs 1 calendar day on end, but no day is open.');
  });
});

describe('a problem with faults gives findings and no dates', () => {
  const codes = (problem: Parameters<typeof schedule>[0]) => {
    const result = schedule(problem, { schedules: 10, seed: 1 });
    expect([result.status, result.activities.length, result.finish]).toEqual(['invalid', 0, undefined]);
    return result.findings.map(finding => finding.code);
  };
  it('a loop, named', () => {
    const problem = problemOf(
      [work('A', 1), work('B', 1)],
      [after('A', 'B'), after('B', 'A', { kind: 'SS' })],
    );
    expect(codes(problem)).toEqual(['schedule/loop']);
  });
  it('unknown names, fractions, bad dates, contradicting progress', () => {
    const problem = problemOf(
      [
        work('A', 1.5, {
          calendar: 'none',
          place: 'nowhere',
          uses: { nobody: 1 },
          closures: ['x'],
          needsStates: ['y'],
          notBefore: '2027-02-30',
        }),
        work('B', 2, { actualStart: '2027-03-05', actualFinish: '2027-03-03' }),
        work('B', 2),
      ],
      [after('A', 'Z'), after('A', 'B', { lag: 3, maximumLag: 1 })],
    );
    expect(codes(problem)).toEqual([
      'schedule/duplicate',
      'schedule/unknown-calendar',
      'schedule/unknown-zone',
      'schedule/unknown-closure',
      'schedule/unknown-zone-state',
      'schedule/unknown-resource',
      'schedule/whole-number',
      'schedule/date',
      'schedule/progress',
      'schedule/progress',
      'schedule/unknown-activity',
      'schedule/lag',
      'schedule/state-not-opened',
    ]);
  });
});
