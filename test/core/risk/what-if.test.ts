import { describe, expect, it } from 'vitest';
import {
  amongPastProjects,
  coverageFindings,
  DEFAULT_RANGES,
  difference,
  distributionOf,
  drain,
  joinChunks,
  meanOf,
  mitigationValues,
  momentsOf,
  simulate,
  surveyValues,
  type Distribution,
  type PreparedRun,
  type RegisterEvent,
} from '../../../core/risk';
import { prepare } from './small-project';

const plan = { trials: 10_000, seed: 12 };
const tri = (low: number, likely: number, high: number): Distribution => ({
  kind: 'triangular',
  low,
  likely,
  high,
});

const storm: RegisterEvent = {
  id: 'storm',
  title: 'Storm at berth',
  probability: 0.4,
  costs: [{ line: 'yard', dollars: tri(10_000, 20_000, 60_000) }],
  delays: [{ activity: 'yard', workDays: tri(5, 10, 30) }],
  mitigation: { title: 'Storm moorings', cost: 2000, line: 'yard', probability: 0.1, impactLeft: 0.5 },
};

const base = {
  ranges: { quantity: tri(80, 100, 180), days: tri(40, 50, 70) },
  activities: { yard: { days: (read: (id: string) => number) => read('days') } },
  lines: { yard: (read: (id: string) => number) => 1000 * read('quantity') },
};

describe('common random numbers', () => {
  /** Two scenarios of forty lines that differ by one line left out. */
  const scenario = (skipped: number): PreparedRun => {
    const ids = Array.from({ length: 40 }, (_, i) => `q${i}`);
    return prepare({
      ranges: Object.fromEntries(ids.map(id => [id, tri(60, 100, 190)])),
      lines: { all: read => ids.reduce((sum, id, i) => sum + (i === skipped ? 0 : 100 * read(id)), 0) },
    });
  };

  it('make the standard error of the difference of two scenarios at most a third of that of independent draws', () => {
    const [a, b, other] = [
      simulate(scenario(-1), { ...plan, ranksDrivers: false }),
      simulate(scenario(3), { ...plan, ranksDrivers: false }),
      simulate(scenario(3), { ...plan, seed: 13, ranksDrivers: false }),
    ];
    if (a === undefined || b === undefined || other === undefined)
      throw new Error('the runs were not asked to stop');
    const [common, independent] = [difference(a.samples, b.samples), difference(a.samples, other.samples)];
    expect(common.standardError).toBeLessThan(independent.standardError / 3);
    expect(common.meanCost).toBeCloseTo(-100 * meanOf(tri(60, 100, 190)), 0);
  });
});

it('a mitigation is worth what it takes off the expected impact less its price', () => {
  const [value] =
    drain(
      mitigationValues(prepare({ ...base, events: [storm] }), plan),
      prepare({ ...base, events: [storm] }),
      plan,
      {},
    ) ?? [];
  const impact = meanOf(tri(10_000, 20_000, 60_000));
  const exact = 2000 + impact * (0.1 * 0.5 - 0.4);
  expect(Math.abs((value?.meanCost ?? 0) - exact)).toBeLessThan(3 * (value?.standardError ?? 0));
  expect([value?.event, value?.cost, (value?.p80Cost ?? 0) < 0, (value?.p80Finish ?? 0) < 0]).toEqual([
    'storm',
    2000,
    true,
    true,
  ]);
});

describe('the value of more survey', () => {
  const surveyed = prepare(base);
  const prepared: PreparedRun = {
    ...surveyed,
    inputs: surveyed.inputs.map(i =>
      i.id === 'quantity' ? { ...i, survey: { cost: 2500, rangeLeft: 0.25 } } : i,
    ),
  };

  it('is the narrowing from P50 to P80 for each dollar', () => {
    const [value] = drain(surveyValues(prepared, plan), prepared, plan, {}) ?? [];
    // One input only: the distance shrinks with the range, to a quarter. Triangular (80, 100, 180), closed form.
    const high = (p: number) => 180 - Math.sqrt((1 - p) * 100 * 80);
    const exact = 1000 * (high(0.8) - high(0.5)) * 0.75;
    expect(Math.abs((value?.narrowing ?? 0) / exact - 1)).toBeLessThan(0.01);
    expect(value?.perDollar).toBeCloseTo((value?.narrowing ?? 0) / 2500, 9);
  });
});

describe('double counting', () => {
  const moves = { quantity: ['yard'] };

  it('of an input by its own range and a driver is a finding, and a note settles it', () => {
    const driver = {
      id: 'd',
      title: 'Access',
      probability: 1,
      factor: tri(1, 1.1, 1.3),
      inputs: ['quantity'],
    };
    const found = coverageFindings(prepare({ ...base, moves, drivers: [driver] }));
    expect(found.map(f => [f.code, f.place])).toEqual([['risk/counted-twice', '/risk/figures/quantity']]);
    expect(
      coverageFindings(prepare({ ...base, moves, drivers: [{ ...driver, note: 'access only' }] })),
    ).toEqual([]);
  });

  it('of a line by a range and a register event is a finding, and a note settles it', () => {
    const found = coverageFindings(prepare({ ...base, moves, events: [storm] }));
    expect(found.map(f => f.place)).toEqual(['/risk/figures/yard']);
    expect(found[0]?.message).toContain('range "Input quantity", event "Storm at berth"');
    expect(
      coverageFindings(
        prepare({ ...base, moves, events: [{ ...storm, note: 'range is for calm weather' }] }),
      ),
    ).toEqual([]);
  });

  it('is not found where ranges of two givens move one line', () => {
    expect(coverageFindings(prepare({ ...base, moves: { quantity: ['yard'], days: ['yard'] } }))).toEqual([]);
  });
});

describe('ranges by basis', () => {
  it('are narrower for a surveyed given than for a judged one, and give way to what the user says', () => {
    expect(distributionOf({ likely: 100, basis: 'surveyed' }, '/x')).toEqual(tri(95, 100, 110));
    expect(
      distributionOf({ likely: 100, basis: 'judgement', low: 90, high: 120, shape: 'pert' }, '/x'),
    ).toEqual({ ...tri(90, 100, 120), kind: 'pert' });
    expect(distributionOf({ likely: -200, basis: 'surveyed' }, '/x')).toEqual(tri(-210, -200, -180));
    expect(DEFAULT_RANGES.surveyed.above).toBeLessThan(DEFAULT_RANGES.judgement.above);
  });

  it('that do not rise are a finding', () => {
    expect(distributionOf({ likely: 100, basis: 'quoted', low: 120 }, '/lines/3')).toMatchObject({
      code: 'risk/range-order',
      place: '/lines/3',
    });
  });
});

describe('history', () => {
  it('tells how many past projects a budget over the plan would have covered', () => {
    expect([amongPastProjects(1.2), amongPastProjects(2)].map(x => `${x.covered} of ${x.of}`)).toEqual([
      '2 of 6',
      '6 of 6',
    ]);
  });
});

it('joined chunks do not depend on the order in which they came in', () => {
  const run = simulate(prepare(base), { trials: 1000, seed: 1, ranksDrivers: false });
  expect(momentsOf(run?.samples.total ?? new Float64Array(0)).count).toBe(1000);
  expect(joinChunks([])).toMatchObject({ total: new Float64Array(0) });
});
