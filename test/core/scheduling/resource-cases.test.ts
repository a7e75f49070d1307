import { describe, expect, it } from 'vitest';
import { relationshipWords } from '../../../core/scheduling';
import { dates, held, solved } from './dates';
import { after, problemOf, work } from './problems';

const crew = (capacity: number, more = {}) => ({
  resources: [{ id: 'crew', title: 'Cleaning crew', capacity, ...more }],
});
const uses = { crew: 1 };

describe('crews, zones and exclusions by hand', () => {
  it('one crew does two works one after the other, and the second names the first', () => {
    const problem = problemOf(
      [work('A', 3, { uses }), work('B', 4, { uses, notBefore: '2027-03-02' })],
      [],
      crew(1),
    );
    expect(dates(problem)).toEqual(['A 03-01/03-03', 'B 03-04/03-09']);
    expect(held(problem, 'B')).toEqual(['waits for Cleaning crew, in use by A']);
  });
  it('two crews do both at once', () => {
    expect(dates(problemOf([work('A', 3, { uses }), work('B', 4, { uses })], [], crew(2)))).toEqual([
      'A 03-01/03-03',
      'B 03-01/03-04',
    ]);
  });
  it('a crew is free over the weekend of work that pauses; a berth is not', () => {
    const more = [
      work('A', 6, { uses }),
      work('B', 2, {
        uses,
        calendar: 'all',
        windows: [
          { from: '2027-03-06', to: '2027-03-07' },
          { from: '2027-04-01', to: '2027-04-02' },
        ],
      }),
    ];
    expect(dates(problemOf(more, [], crew(1)))[1]).toBe('B 03-06/03-07');
    const berth = problemOf(
      [...more.slice(0, 1).map(a => ({ ...a, deadline: '2027-03-08' })), ...more.slice(1)],
      [],
      crew(1, { heldOnIdleDays: true }),
    );
    expect(dates(berth)[1]).toBe('B 04-01/04-02');
  });
  it('more crews from a date on let work start only then', () => {
    const problem = problemOf(
      [work('A', 2, { uses: { crew: 2 } })],
      [],
      crew(1, { capacityChanges: [{ from: '2027-03-10', to: '2027-03-31', capacity: 2 }] }),
    );
    expect(dates(problem)).toEqual(['A 03-10/03-11']);
    expect(held(problem, 'A')).toEqual([
      'waits because Cleaning crew is not at hand in that number until after 2027-03-09',
    ]);
  });
  it('a crane away in the middle cannot be bridged by work that may not be interrupted', () => {
    const problem = problemOf(
      [work('A', 3, { uses })],
      [],
      crew(1, { capacityChanges: [{ from: '2027-03-03', to: '2027-03-03', capacity: 0 }] }),
    );
    expect(dates(problem)).toEqual(['A 03-04/03-08']);
  });
  it('a zone with room for six takes four and two workers, not four and three', () => {
    const zones = [{ id: 'engine', title: 'Engine room', crewLimit: 6 }];
    const at = (id: string, crewSize: number) => work(id, 2, { place: 'engine', crewSize });
    expect(dates(problemOf([at('A', 4), at('B', 2)], [], { zones }))).toEqual([
      'A 03-01/03-02',
      'B 03-01/03-02',
    ]);
    const full = problemOf([at('A', 4), at('B', 3)], [after('A', 'B', { kind: 'SS' })], { zones });
    expect(dates(full)).toEqual(['A 03-01/03-02', 'B 03-03/03-04']);
    expect(held(full, 'B')).toEqual(['waits for room in Engine room, where A is at work']);
  });
  const zones = [
    { id: 'bow', title: 'Bow', touches: ['midship'] },
    { id: 'midship', title: 'Midship' },
    { id: 'stern', title: 'Stern' },
  ];
  const hot = (fuelZone: string, reach?: 'zone') =>
    problemOf(
      [work('cut', 3, { place: 'bow' }), work('fuel', 2, { place: fuelZone, notBefore: '2027-03-02' })],
      [],
      {
        zones,
        exclusions: [
          {
            id: 'hot',
            title: 'Hot work and fuel cleaning',
            first: ['cut'],
            second: ['fuel'],
            ...(reach ? { reach } : {}),
          },
        ],
      },
    );
  it('hot work and fuel cleaning wait for each other in the same and in touching zones, not farther off', () => {
    expect(dates(hot('bow'))).toEqual(['cut 03-01/03-03', 'fuel 03-04/03-05']);
    expect(dates(hot('midship'))).toEqual(['cut 03-01/03-03', 'fuel 03-04/03-05']);
    expect(dates(hot('stern'))).toEqual(['cut 03-01/03-03', 'fuel 03-02/03-03']);
    expect(dates(hot('midship', 'zone'))).toEqual(['cut 03-01/03-03', 'fuel 03-02/03-03']);
  });
  it('an exclusion is what holds, by its name', () => {
    expect(held(hot('midship'), 'fuel')).toEqual([
      'may not run at the same time as cut (Hot work and fuel cleaning)',
    ]);
  });
  const gasFree = [{ id: 'gas-free', title: 'Gas-free', stopLimitDays: 3 }];
  it('hot work waits for the certificate, and fuel is moved before it', () => {
    const problem = problemOf(
      [
        work('cut', 2, { place: 'bow', needsStates: ['gas-free'] }),
        work('certificate', 1, { place: 'bow', opensStates: ['gas-free'] }),
        work('move fuel', 2, { place: 'bow', endsStates: ['gas-free'] }),
      ],
      [],
      { zones, zoneStates: gasFree },
    );
    expect(dates(problem)).toEqual(['cut 03-04/03-05', 'certificate 03-03/03-03', 'move fuel 03-01/03-02']);
    expect(held(problem, 'cut')).toEqual(['Gas-free in Bow: after certificate']);
  });
  it('a tank opened after the first hot work needs a second certificate before the next', () => {
    const problem = problemOf(
      [
        work('first', 1, { place: 'bow', opensStates: ['gas-free'] }),
        work('cut', 2, { place: 'bow', needsStates: ['gas-free'] }),
        work('tank', 1, { place: 'bow', endsStates: ['gas-free'] }),
        work('second', 1, { place: 'bow', opensStates: ['gas-free'] }),
        work('weld', 1, { place: 'bow', needsStates: ['gas-free'] }),
      ],
      [after('cut', 'tank'), after('first', 'second'), after('second', 'weld')],
      { zones, zoneStates: gasFree },
    );
    expect(dates(problem)).toEqual([
      'first 03-01/03-01',
      'cut 03-02/03-03',
      'tank 03-04/03-04',
      'second 03-05/03-05',
      'weld 03-08/03-08',
    ]);
  });
  it('the spell of a state is told with its days of checks, and a stop too long for it', () => {
    const problem = problemOf(
      [
        work('certificate', 1, { place: 'bow', opensStates: ['gas-free'] }),
        work('cut', 2, { place: 'bow', needsStates: ['gas-free'] }),
        work('late', 2, { place: 'bow', needsStates: ['gas-free'], notBefore: '2027-03-09' }),
      ],
      [],
      { zones, zoneStates: gasFree },
    );
    expect(solved(problem).zoneStates).toEqual([
      {
        zone: 'bow',
        state: 'gas-free',
        from: '2027-03-02',
        to: '2027-03-10',
        workDays: 4,
        reopened: ['2027-03-09'],
      },
    ]);
  });
  it('peaks, profiles and work days count what is in use', () => {
    const problem = problemOf(
      [work('A', 3, { uses, crewSize: 4 }), work('B', 1, { uses, crewSize: 2 })],
      [],
      crew(2),
    );
    const result = solved(problem);
    expect(result.profiles['crew']).toEqual({ from: '2027-03-01', units: [2, 1, 1], capacity: [2, 2, 2] });
    expect([result.resourcePeaks['crew'], result.peakCrew, result.workDays]).toEqual([
      { units: 2, date: '2027-03-01' },
      6,
      3,
    ]);
  });
});

describe('relationships in words', () => {
  it('say when, without letters for the kinds', () => {
    expect([
      relationshipWords({ kind: 'FS' }, 'Tank cleaning'),
      relationshipWords({ kind: 'FS', lag: 3 }, 'Tank cleaning'),
      relationshipWords({ kind: 'SS', lag: 1, lagUnit: 'day' }, 'Tank cleaning'),
      relationshipWords({ kind: 'FF', lag: 2 }, 'Tank cleaning'),
      relationshipWords({ kind: 'SF' }, 'Tank cleaning'),
      relationshipWords({ kind: 'FS', lag: -2 }, 'Tank cleaning'),
      relationshipWords({ kind: 'FS', lag: 1, maximumLag: 5 }, 'Tow'),
    ]).toEqual([
      'after Tank cleaning finishes',
      'after Tank cleaning finishes, 3 work days later',
      'after Tank cleaning starts, 1 calendar day later',
      'finishes after Tank cleaning finishes, 2 work days later',
      'finishes after Tank cleaning starts',
      'at most 2 work days before Tank cleaning finishes',
      'after Tow finishes, 1 work day later, and at most 5 work days after that',
    ]);
  });
});
