import { describe, expect, test } from 'vitest';
import type { Figure } from '../../core/base';
import { roughOrder, shippedLibrary, type RomRequest } from '../../core/evaluation';

const library = shippedLibrary();
const feet = (value: number): Figure => ({
  value: String(value),
  unit: 'ft',
  basis: 'published',
  source: 'Length of a past hull, named by its class',
});
const metres = (value: number): Figure => ({ ...feet(value), unit: 'm' });

interface Answer {
  readonly total: number;
  readonly hours: number;
  readonly removalHours: number;
  readonly preparationMonths: number;
  readonly byStage: Readonly<Record<string, number>>;
  readonly taken: { readonly lightshipTonnes: number; readonly plant: string };
}

function rom(request: Omit<RomRequest, 'today'>): Answer {
  return roughOrder(library, { ...request, today: '2026-11-24', schedules: 1 }).json as unknown as Answer;
}

/**
 * Recorded cost of past hulls by class and length. Sources: press and agency reports as named; the scope is what the
 * report says was paid for. What a report does not say is left to the hull type.
 */
const RECORDED: readonly {
  readonly name: string;
  readonly recorded: number;
  readonly source: string;
  readonly request: Omit<RomRequest, 'today'>;
}[] = [
  {
    name: 'destroyer escort, 366 ft, sunk 2000',
    recorded: 1_200_000,
    source: 'Los Angeles Times, 1999-08-01 (purchase, tow, insurance 245,000); hobby forum (total)',
    request: {
      hullType: 'escort',
      length: feet(366),
      priceYear: 2000,
      acquisition: { ...feet(245000), unit: 'USD', year: 2000 },
      scope: 'all',
    },
  },
  {
    name: 'aircraft carrier, 888 ft, sunk 2006',
    recorded: 21_070_000,
    source: 'News Journal, 2006',
    request: { hullType: 'aircraft-carrier', length: feet(888), priceYear: 2006, scope: 'all' },
  },
  {
    name: 'training ship, 473 ft, sunk 2007',
    recorded: 4_000_000,
    source: 'state parks radio, 2007',
    request: { hullType: 'training-ship', length: feet(473), priceYear: 2007, scope: 'clean-tow-sink' },
  },
  {
    name: 'naval auxiliary, 523 ft, sunk 2009',
    recorded: 8_600_000,
    source: 'Underwater Times, 2009',
    request: {
      hullType: 'naval-auxiliary',
      length: feet(523),
      lightship: { ...feet(9950), unit: 'long-ton' },
      tow: { ...feet(956), unit: 'nmi' },
      priceYear: 2009,
      scope: 'all',
    },
  },
  {
    name: 'coastal freighter, 271 ft, sunk 2013',
    recorded: 500_000,
    source: 'Outdoor Alabama, 2013',
    request: { hullType: 'freighter', length: feet(271), priceYear: 2013, scope: 'clean-tow-sink' },
  },
  {
    name: 'small freighter, 170 ft, sunk 2016',
    recorded: 110_000,
    source: 'Sun-Sentinel, 2016-07-13',
    request: { hullType: 'freighter', length: feet(170), priceYear: 2016, scope: 'clean-tow-sink' },
  },
  {
    name: 'research vessel, 180 ft, one of a pair, sunk 2023',
    recorded: 842_500,
    source: 'Get The Coast, 2023 (half of 1,685,000)',
    request: { hullType: 'research-ship', length: feet(180), priceYear: 2022, scope: 'all' },
  },
];

describe('a rough order of magnitude against what past hulls cost', () => {
  const answers = RECORDED.map(row => ({ ...row, answer: rom(row.request) }));
  const ratios = answers.map(({ answer, recorded }) => answer.total / recorded);

  test('five of seven lie within a factor of two, and the seven together between 0.7 and 1.4', () => {
    answers.forEach(({ name }, i) => console.log(name, (ratios[i] ?? 0).toFixed(2)));
    expect(ratios.filter(ratio => ratio >= 0.5 && ratio <= 2).length).toBeGreaterThanOrEqual(5);
    const mean = Math.exp(ratios.reduce((sum, ratio) => sum + Math.log(ratio), 0) / ratios.length);
    expect(mean).toBeGreaterThan(0.7);
    expect(mean).toBeLessThan(1.4);
  });

  test('the naval auxiliary takes 50,000 to 110,000 hours of contaminant removal (75,000 recorded)', () => {
    const hours = answers.find(({ name }) => name.startsWith('naval auxiliary'))?.answer.removalHours ?? 0;
    expect(hours).toBeGreaterThan(50_000);
    expect(hours).toBeLessThan(110_000);
  });

  test('the carrier costs 13 to 32 million, clean-up 6 to 15 million, in 9 to 15 months of preparation', () => {
    const carrier = answers.find(({ name }) => name.startsWith('aircraft carrier'))?.answer;
    expect(carrier?.total).toBeGreaterThan(13e6);
    expect(carrier?.total).toBeLessThan(32e6);
    expect(carrier?.byStage['clean-up']).toBeGreaterThan(6e6);
    expect(carrier?.byStage['clean-up']).toBeLessThan(15e6);
    expect(carrier?.preparationMonths).toBeGreaterThanOrEqual(9);
    expect(carrier?.preparationMonths).toBeLessThanOrEqual(15);
  });
});

describe('over all hull types, 50, 100 and 150 m, built 1950, 1975 and 1990', () => {
  const years = [1950, 1975, 1990];
  const lengths = [50, 100, 150];
  const totals = new Map<string, Answer>();
  for (const type of library.hullTypes)
    for (const built of years)
      for (const length of lengths)
        totals.set(
          `${type.id} ${built} ${length}`,
          rom({ hullType: type.id, length: metres(length), built, priceYear: 2025, scope: 'all' }),
        );
  const total = (type: string, built: number, length: number) =>
    totals.get(`${type} ${built} ${length}`)?.total ?? Number.NaN;

  test('the total rises with length', () => {
    const faults = library.hullTypes.flatMap(({ id }) =>
      years
        .filter(
          built =>
            !(total(id, built, 50) < total(id, built, 100) && total(id, built, 100) < total(id, built, 150)),
        )
        .map(built => `${id} ${built}`),
    );
    expect(faults).toEqual([]);
  });

  test('a later build year never raises it by more than 2 %', () => {
    const faults = library.hullTypes.flatMap(({ id }) =>
      lengths.flatMap(length =>
        [
          [1950, 1975],
          [1975, 1990],
          [1950, 1990],
        ]
          .filter(([early = 0, late = 0]) => total(id, late, length) > 1.02 * total(id, early, length))
          .map(pair => `${id} ${length} m ${pair.join(' to ')}`),
      ),
    );
    expect(faults).toEqual([]);
  });

  test('two types of equal lightship, era and plant differ by less than two times', () => {
    const faults: string[] = [];
    for (const [built, length] of [
      [1950, 100],
      [1975, 100],
      [1990, 60],
    ] as const) {
      const lightship: Figure = { ...metres(3000), unit: 't' };
      const rows = library.hullTypes
        .filter(type => type.id !== 'barge')
        .map(type => ({
          id: type.id,
          ...rom({
            hullType: type.id,
            length: metres(length),
            built,
            lightship,
            priceYear: 2025,
            scope: 'all',
          }),
        }));
      for (const a of rows)
        for (const b of rows)
          if (a.taken.plant === b.taken.plant && a.total >= 2 * b.total)
            faults.push(`${a.id} ${built}: ${(a.total / b.total).toFixed(2)} times ${b.id}`);
    }
    expect(faults).toEqual([]);
  });
});

describe('a hull type', () => {
  test('sets physical quantities only: no money, hours or workers, and no item, rate or driver names one', () => {
    const units = library.hullTypes.flatMap(type =>
      Object.values(type.quantities).map(figure => figure.unit),
    );
    expect(units.filter(unit => /USD|\bh\b|work-day|person|\bday/.test(unit))).toEqual([]);
    const text = JSON.stringify({
      items: library.items,
      rates: library.rateBook,
      drivers: library.drivers.map(({ atReference: _at, ...driver }) => driver),
    });
    const named = library.hullTypes.filter(type => text.includes(`"${type.id}"`)).map(type => type.id);
    expect(named).toEqual([]);
  });

  test('gives each of its quantities a basis of its own', () => {
    for (const type of library.hullTypes)
      for (const figure of Object.values(type.quantities)) expect(figure.source.length).toBeGreaterThan(10);
  });
});
