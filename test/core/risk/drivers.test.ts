import { describe, expect, it } from 'vitest';
import {
  adjustedRuns,
  drain,
  momentsOf,
  simulate,
  type Distribution,
  type PreparedRun,
} from '../../../core/risk';
import { prepare } from './small-project';

const TRIALS = 10_000;
const SEED = 77;

/** Variance of cost and finish with one uncertainty held at its mode, by a complete second run with the same draws. */
function fallWhenHeld(prepared: PreparedRun, id: string) {
  const runs = drain(
    adjustedRuns({ trials: TRIALS, seed: SEED }, [{}, { held: [id] }]),
    prepared,
    { trials: TRIALS, seed: SEED },
    {},
  );
  const [base, held] = runs ?? [];
  const fall = (of: 'total' | 'finish') => {
    const before = momentsOf(base?.[of] ?? new Float64Array(0)).variance;
    return before === 0 ? 0 : 1 - momentsOf(held?.[of] ?? new Float64Array(0)).variance / before;
  };
  return { cost: fall('total'), finish: fall('finish') };
}

function driversOf(prepared: PreparedRun) {
  return simulate(prepared, { trials: TRIALS, seed: SEED })?.drivers ?? [];
}

const tri = (low: number, likely: number, high: number): Distribution => ({
  kind: 'triangular',
  low,
  likely,
  high,
});

const additive = prepare({
  ranges: Object.fromEntries(Array.from({ length: 14 }, (_, i) => [`x${i}`, tri(0, 1 + i, 3 + 3 * i)])),
  lines: { only: read => Array.from({ length: 14 }, (_, i) => read(`x${i}`)).reduce((a, b) => a + b, 0) },
});

const manyLines = prepare({
  ranges: {
    ...Object.fromEntries(Array.from({ length: 30 }, (_, i) => [`q${i}`, tri(60, 100, 190)])),
    ...Object.fromEntries(
      Array.from({ length: 30 }, (_, i) => [
        `r${i}`,
        { kind: 'pert' as const, low: 7, likely: 10, high: 18 },
      ]),
    ),
    crew: { kind: 'certain', value: 1 },
    tow: { kind: 'lognormal', logMean: 2, logStandardDeviation: 0.5 },
    yard: { kind: 'triangular', low: 30, likely: 40, high: 75 },
  },
  drivers: [
    {
      id: 'market',
      title: 'Labour market',
      probability: 1,
      factor: tri(0.85, 1, 1.4),
      inputs: Array.from({ length: 30 }, (_, i) => `r${i}`),
      note: 'n',
    },
    {
      id: 'access',
      title: 'Access below deck',
      probability: 0.4,
      factor: tri(1, 1.2, 1.6),
      inputs: ['q1', 'q2', 'q3', 'yard'],
      note: 'n',
    },
    {
      id: 'likely',
      title: 'Overtime',
      probability: 0.8,
      factor: tri(1.05, 1.1, 1.3),
      inputs: ['crew'],
      note: 'n',
    },
  ],
  events: [
    {
      id: 'pcb',
      title: 'PCB found late',
      probability: 0.15,
      costs: [{ line: 'l0', dollars: tri(2000, 4000, 9000) }],
      delays: [{ activity: 'yard', workDays: tri(10, 20, 60) }],
      note: 'n',
    },
    {
      id: 'storm',
      title: 'Storm at berth',
      probability: 0.3,
      costs: [{ line: 'l1', dollars: tri(500, 1000, 3000) }],
      delays: [{ activity: 'yard', workDays: tri(1, 3, 8) }],
      note: 'n',
    },
  ],
  correlations: [{ first: 'q0', second: 'q1', correlation: 0.7 }],
  activities: {
    yard: { days: read => read('yard') * read('crew') },
    permits: { days: () => 50 },
    tow: { days: read => read('tow'), after: ['yard', 'permits'] },
  },
  lines: Object.fromEntries(
    Array.from({ length: 30 }, (_, i) => [
      `l${i}`,
      (read: (id: string) => number, finish: number) =>
        read(`q${i}`) * read(`r${i}`) * (i < 10 ? 0.3 : 0.1) * read('crew') + (i === 0 ? finish * 90 : 0),
    ]),
  ),
});

describe('contribution to variance', () => {
  it('of an input in a sum is its own variance over the variance of the sum', () => {
    const variances = Array.from(
      { length: 14 },
      (_, i) => ((3 + 3 * i) ** 2 + (1 + i) * (1 + i - 3 - 3 * i)) / 18,
    );
    const whole = variances.reduce((a, b) => a + b, 0);
    for (const row of driversOf(additive).slice(0, 8)) {
      const exact = (variances[Number(row.id.slice(1))] ?? 0) / whole;
      expect([row.id, Math.abs(row.contribution - exact) < 0.03]).toEqual([row.id, true]);
    }
  });

  it.each([
    ['a plain sum', additive],
    ['products, drivers, events, a correlation and parallel activities', manyLines],
  ])(
    'of each of the first ten in %s is the fall of the variance when it is held, within 3 points',
    (_, prepared) => {
      const rows = driversOf(prepared).slice(0, 10);
      expect(rows).toHaveLength(10);
      for (const row of rows) {
        const { cost, finish } = fallWhenHeld(prepared, row.id);
        expect([row.id, Math.abs(row.contribution - cost) < 0.03]).toEqual([row.id, true]);
        expect([row.id, Math.abs(row.finishContribution - finish) < 0.03]).toEqual([row.id, true]);
      }
      expect(rows.map(r => r.contribution)).toEqual(rows.map(r => r.contribution).sort((a, b) => b - a));
    },
  );

  it('names an event, a driver and a range by kind', () => {
    const kinds = new Map(driversOf(manyLines).map(r => [r.id, r.kind]));
    expect([kinds.get('market'), kinds.get('pcb'), kinds.get('tow')]).toEqual(['driver', 'event', 'range']);
  });
});

it('the swing of an input is the mean result at its lowest and highest tenth', () => {
  const prepared = prepare({
    ranges: { x: { kind: 'uniform', low: 0, high: 100 } },
    lines: { only: read => 7 * read('x') },
  });
  const [row] = driversOf(prepared);
  expect(row?.costAtLow).toBeCloseTo(35, 0);
  expect(row?.costAtHigh).toBeCloseTo(665, 0);
});

it('the swing of an event is the mean result without and with it', () => {
  const prepared = prepare({
    ranges: {},
    lines: { only: () => 100 },
    events: [
      {
        id: 'e',
        title: 'E',
        probability: 0.25,
        costs: [{ line: 'only', dollars: { kind: 'certain', value: 60 } }],
        delays: [],
      },
    ],
  });
  const [row] = driversOf(prepared);
  expect([row?.costAtLow, row?.costAtHigh]).toEqual([100, 160]);
});
