import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { Sheet, evaluateSheet, sheetFindings, type Given, type SheetResult } from '../../../core/sheet';
import type { Unit } from '../../../core/units';
import { takeOff, type HullType, type ShipGivens, type TankGiven } from '../../../core/vessel';

const [shipped] = shippedLibrary().hullTypes;
if (shipped === undefined) throw new Error('the library has no hull types');

const figure = (value: string, unit: string) => ({
  value,
  unit,
  basis: 'judgement' as const,
  source: 'invented',
});
const given = (value: string, unit: Unit): Given => ({ value, unit, basis: 'judgement', source: 'invented' });

/** An invented kind with round proportions: a ship of 100 m is 100 x 16 x 10 m and floats at 3 and 5 m. */
const round: HullType = {
  ...shipped,
  id: 'round',
  quantities: {
    'beam-per-length': figure('0.16', '1'),
    'depth-per-length': figure('0.1', '1'),
    'draught-light-per-length': figure('0.03', '1'),
    'draught-full-per-length': figure('0.05', '1'),
    'block-coefficient': figure('0.6', '1'),
    'lightship-per-lbd': figure('0.2', 't/m3'),
    'superstructure-volume-share': figure('0.1', '1'),
    'accommodation-area-share': figure('0.05', 'm2/m3'),
    'machinery-volume-share': figure('0.15', '1'),
    'topside-weight-share': figure('0.2', '1'),
    'oil-tank-capacity-share': figure('0.05', '1'),
    'oil-tank-count-per-length': figure('0.095', 'each/m'),
    'ballast-capacity-share': figure('0.12', '1'),
    'compartment-count-per-length': figure('0.08', 'each/m'),
    'shell-thickness': figure('12', 'mm'),
  },
};

const plain: ShipGivens = {
  type: round,
  particulars: { length: given('100', 'm') },
  tanks: [],
  waterDepth: given('30', 'm'),
  towDistance: given('100', 'nmi'),
  yardDistance: given('50000', 'm'),
  topsideShare: given('0.5', '1'),
  monitoringYears: given('5', 'year'),
  openings: {},
};

function takenOff(changes: Partial<ShipGivens> = {}): SheetResult {
  const sheet = new Sheet('work');
  takeOff(sheet, { ...plain, ...changes });
  return evaluateSheet(sheet);
}

/** The single values of a block as a reader of the workbook meets them. */
const shown = (result: SheetResult, block: string) =>
  result.sheet.blocks
    .filter(({ id }) => id === block)
    .flatMap(each => each.entries())
    .map(step => result.at(step))
    .map(
      ({ id, title, text, unit }) => `${id.slice(block.length + 1)}: ${title} = ${text ?? 'absent'} ${unit}`,
    );
/** The light draught of the round ship with a lightship that was given. */
const draughtAt = (lightship: string) =>
  takenOff({ particulars: { ...plain.particulars, lightship: given(lightship, 't') } }).figure(
    'ship/draught-light',
  ).number;
const values = (result: SheetResult, ...keys: string[]) =>
  Object.fromEntries(keys.map(key => [key, result.figure(`ship/${key}`).number]));

/** What is worked out is worked out by hand here: each line follows from those above it. */
const BY_HAND = [
  'length: Length overall = 100 m',
  'type-beam-per-length: Beam over length of the hull type = 0.16 1',
  'beam: Beam = 16 m',
  'type-depth-per-length: Depth to the upper deck over length of the hull type = 0.1 1',
  'depth: Depth to the upper deck = 10 m',
  'type-draught-full-per-length: Draught full over length of the hull type = 0.05 1',
  'draught-full: Draught full = 5 m',
  'type-block-coefficient: Block coefficient of the hull type = 0.6 1',
  'length-beam-depth: Length × beam × depth = 16000 m3',
  'type-lightship-per-lbd: Lightship over length × beam × depth of the hull type = 0.2 t/m3',
  'lightship-of-type: Lightship of a usual ship of this type and size = 3200 t',
  'lightship: Lightship = 3200 t',
  'type-draught-light-per-length: Draught light over length of the hull type = 0.03 1',
  'draught-light: Draught light = 3 m',
  'sea-water: Sea water = 1.025 t/m3',
  'fullness-share: Share of the depth = 0.8 1',
  'fullness-slope: Draughts of rise to a full waterplane = 3 1',
  'rise-over-draught: Rise above the draught over the draughts of rise = 0.2 1', // (8 - 5) / 15
  'fullness-at-depth: Fullness at 0.8 of the depth = 0.68 1', // 0.6 + 0.4 x 0.2
  'hull-volume: Volume inside the hull = 10880 m3',
  'type-superstructure-volume-share: Superstructure volume over length × beam × depth of the hull type = 0.1 1',
  'superstructure-volume: Volume inside the superstructure = 1600 m3',
  'enclosed-volume: Enclosed volume = 12480 m3',
  'full-displacement: Full displacement = 4920 t', // 1.025 x 0.6 x 100 x 16 x 5
  'mumford: Factor of the side = 1.7 1',
  'wetted-surface: Wetted surface, full draught = 1810 m2', // 1.7 x 100 x 5 + 0.6 x 100 x 16
  'perimeter: Perimeter over length = 1.94 1',
  'freeboard: Freeboard = 5 m',
  'freeboard-area: Shell above the waterline = 970 m2',
  'type-accommodation-area-share: Accommodation area over enclosed volume of the hull type = 0.05 m2/m3',
  'accommodation-area: Accommodation deck area = 624 m2',
  'type-machinery-volume-share: Machinery spaces over hull volume of the hull type = 0.15 1',
  'machinery-volume: Volume of machinery spaces = 1632 m3',
  'type-topside-weight-share: Topside weight over lightship of the hull type = 0.2 1',
  'topside-share: Share of the topside taken off = 0.5 1',
  'topside-removed: Topside weight removed = 320 t',
  'tank-surface: Inner surface over capacity to the power 2/3 = 7.7 1',
  'two-thirds: Power of similar bodies = 0.666666667 1',
  'type-oil-tank-capacity-share: Oil tanks over hull volume of the hull type = 0.05 1',
  'type-oil-tank-count-per-length: Oil tanks a metre of the hull type = 0.095 each/m',
  'tank-capacity: Capacity of oil tanks = 544 m3',
  'tank-count: Oil tanks = 10 each', // 9.5, rounded up
  'tank-size: Capacity of one tank = 54.4 m3',
  'tank-inner-area: Inner area of one tank = 110.55 m2', // 7.7 x 14.3572, as 3.78908³ = 54.4
  'tank-number: Oil tanks as a number = 10 1',
  'tank-area: Internal area of oil tanks = 1105.5 m2',
  'type-compartment-count-per-length: Compartments a metre of the hull type = 0.08 each/m',
  'type-ballast-capacity-share: Ballast tanks over hull volume of the hull type = 0.12 1',
  'ballast-capacity: Capacity of ballast tanks = 1306 m3', // 1305.6
  'compartment-count: Watertight compartments = 8 each',
  'opening-count-rate: Shell openings for each compartment = 4 each/each',
  'opening-count: Shell openings = 32 each',
  'vent-count-rate: Air escape openings for each compartment = 4 each/each',
  'vent-count: Air escape openings = 32 each',
  'inner-opening-count-rate: Openings in bulkheads and decks for each compartment = 5 each/each',
  'inner-opening-count: Openings in bulkheads and decks = 40 each',
  'opening-perimeter: Cut of one opening = 5.4 m/each',
  'opening-cut-length: Length of cut for shell openings = 172.8 m',
  'opening-thickness: Plate thickness at the openings = 12 mm',
  'tow-distance: Tow distance = 100 nmi',
  'yard-distance: Road distance to the disposal sites = 50000 m',
  'water-depth: Water depth at the site = 30 m',
  'monitoring-years: Years of monitoring = 5 year',
  'one: One project = 1 each',
];

describe('the take-off of a ship of which the length is known', () => {
  it('is what the hull type makes of it, step by step', () => {
    expect(shown(takenOff(), 'ship')).toEqual(BY_HAND);
  });

  it('gives every measure as a plain number in its own unit, for drivers to scale from', () => {
    const numbers = shown(takenOff(), 'measure-numbers');
    expect(numbers).toHaveLength(30);
    expect(numbers).toContain('beam: Beam, in m = 16 1');
    expect(numbers).toContain('tow-distance: Tow distance, in nmi = 100 1');
    expect(numbers).toContain('opening-cut-length: Length of cut for shell openings, in m = 172.8 1');
    expect(numbers).toContain('one: One project, in each = 1 1');
  });

  it('has one compartment at least', () => {
    const short = takenOff({ particulars: { length: given('5', 'm') } });
    expect(values(short, 'compartment-count', 'opening-count')).toEqual({
      'compartment-count': 1,
      'opening-count': 4,
    });
  });
});

describe('what the document gives', () => {
  it('takes the place of what the hull type would make of it', () => {
    const particulars = {
      length: given('100', 'm'),
      beam: given('20', 'm'),
      depth: given('12', 'm'),
      draughtLight: given('2', 'm'),
      draughtFull: given('6', 'm'),
      blockCoefficient: given('0.5', '1'),
      lightship: given('4000', 't'),
    };
    const result = takenOff({ particulars });
    expect(result.figure('ship/block-coefficient').title).toBe('Block coefficient');
    expect(
      values(result, 'beam', 'depth', 'draught-light', 'block-coefficient', 'lightship', 'full-displacement'),
    ).toEqual({
      beam: 20,
      depth: 12,
      'draught-light': 2,
      'block-coefficient': 0.5,
      lightship: 4000,
      'full-displacement': 6150, // 1.025 x 0.5 x 100 x 20 x 6
    });
    // Fullness 0.5 + 0.5 x (9.6 - 6) / 18 = 0.6 of 24,000 m3; wetted 1.7 x 600 + 0.5 x 2000; shell 1.94 x 100 x 6.
    expect(values(result, 'hull-volume', 'wetted-surface', 'freeboard-area', 'topside-removed')).toEqual({
      'hull-volume': 14400,
      'wetted-surface': 2020,
      'freeboard-area': 1164,
      'topside-removed': 400,
    });
  });

  it('is absent where it is faulty, with all that follows, and nothing stands in for it', () => {
    const beam: Given = { ...given('0', 'm'), value: undefined, place: '/vessel/beam' };
    const result = takenOff({ particulars: { length: given('100', 'm'), beam } });
    expect(values(result, 'beam', 'lightship', 'hull-volume', 'depth', 'freeboard-area')).toEqual({
      beam: undefined,
      lightship: undefined,
      'hull-volume': undefined,
      depth: 10,
      'freeboard-area': 970,
    });
    expect(sheetFindings(result).map(({ place }) => place)).toEqual(['/vessel/beam']);
  });

  it('is the openings as they were sized, the cut along them too', () => {
    const openings = {
      'opening-count': given('14', 'each'),
      'vent-count': given('9', 'each'),
      'inner-opening-count': given('11', 'each'),
    };
    const keys = ['opening-count', 'vent-count', 'inner-opening-count', 'opening-cut-length'];
    expect(Object.values(values(takenOff({ openings }), ...keys))).toEqual([14, 9, 11, 75.6]);
    const cut = { ...openings, 'opening-cut-length': given('80', 'm') };
    expect(Object.values(values(takenOff({ openings: cut }), ...keys))).toEqual([14, 9, 11, 80]);
  });
});

describe('the tank table', () => {
  const tank = (id: string, capacity: Given, oily = true): TankGiven => ({
    id,
    title: `Tank ${id}`,
    place: `/vessel/tanks/${id}`,
    capacity,
    oily,
  });
  it('takes the place of the usual tanks: those that held oil, each with its own area', () => {
    const tanks = [
      tank('one', given('1000', 'm3')),
      tank('two', given('125', 'm3')),
      tank('fresh', given('64', 'm3'), false),
    ];
    const result = takenOff({ tanks });
    // Surfaces of similar bodies: 7.7 x 100 and 7.7 x 25.
    const rows = ['one', 'two'].flatMap(id => [`tanks/${id}/capacity`, `tanks/${id}/area`]);
    expect(
      rows
        .map(id => result.figure(id))
        .map(({ rowTitle, title, text, unit }) => [rowTitle, title, text, unit]),
    ).toEqual([
      ['Tank one', 'Capacity', '1000', 'm3'],
      ['Tank one', 'Inner area', '770', 'm2'],
      ['Tank two', 'Capacity', '125', 'm3'],
      ['Tank two', 'Inner area', '192.5', 'm2'],
    ]);
    expect(result.has('tanks/fresh/area')).toBe(false);
    expect(result.sheet.tables.map(({ id, heading }) => [id, heading])).toEqual([['tanks', 'Tank']]);
    expect(values(result, 'tank-capacity', 'tank-count', 'tank-area', 'ballast-capacity')).toEqual({
      'tank-capacity': 1125,
      'tank-count': 2,
      'tank-area': 962.5,
      'ballast-capacity': 1306,
    });
    expect(['capacity', 'count', 'area'].map(key => result.figure(`ship/tank-${key}`).title)).toEqual([
      'Capacity of oil tanks',
      'Oil tanks',
      'Internal area of oil tanks',
    ]);
  });

  it('without a tank that held oil leaves the usual ones', () => {
    const result = takenOff({ tanks: [tank('fresh', given('64', 'm3'), false)] });
    expect(values(result, 'tank-capacity', 'tank-count')).toEqual({ 'tank-capacity': 544, 'tank-count': 10 });
    expect(result.sheet.tables).toEqual([]);
  });

  it('with a faulty capacity is absent, and says at which tank', () => {
    const place = '/vessel/tanks/one/capacity';
    const result = takenOff({ tanks: [tank('one', { ...given('', 'm3'), value: undefined, place })] });
    expect(values(result, 'tank-capacity', 'tank-area')).toEqual({
      'tank-capacity': undefined,
      'tank-area': undefined,
    });
    expect(sheetFindings(result).map(({ place }) => place)).toEqual([place]);
  });
});

describe('a quantity of the hull type', () => {
  it.each([
    ['shell-thickness', ['opening-thickness'], 't'],
    ['beam-per-length', ['beam', 'lightship', 'enclosed-volume', 'wetted-surface', 'tank-area'], 'm'],
    ['compartment-count-per-length', ['compartment-count', 'opening-count', 'opening-cut-length'], 'each'],
    ['oil-tank-count-per-length', ['tank-count', 'tank-area'], 'm'],
  ])('%s that is not there or measures something else leaves absent what follows', (key, follow, unit) => {
    const { [key]: taken, ...rest } = round.quantities;
    if (taken === undefined) throw new Error(`there is no ${key}`);
    const without = takenOff({ type: { ...round, quantities: rest } });
    const other = takenOff({ type: { ...round, quantities: { ...rest, [key]: { ...taken, unit } } } });
    for (const result of [without, other]) {
      for (const measure of follow)
        expect([measure, result.figure(`ship/${measure}`).text]).toEqual([measure, undefined]);
      expect(result.figure('ship/accommodation-area').number).toBe(
        key === 'beam-per-length' ? undefined : 624,
      );
    }
    if (key !== 'shell-thickness')
      expect(sheetFindings(other).map(({ place }) => place)).toEqual([`templates/hull-types/round/${key}`]);
  });
});

it('the light draught follows a lightship that was given: half as much again, half as deep again', () => {
  // 3 m at the usual 3 200 t.
  expect(['3200', '4800', '1600'].map(draughtAt)).toEqual([3, 4.5, 1.5]);
});
