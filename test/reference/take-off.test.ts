import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../core/evaluation';
import { Sheet, evaluateSheet, type Given } from '../../core/sheet';
import { takeOff, type MeasureKey, type ShipGivens } from '../../core/vessel';
import type { Unit } from '../../core/units';

const given = (value: string, unit: Unit): Given => ({
  value,
  unit,
  basis: 'published',
  source: 'worked example',
});

/** The ship of the worked example: 120 x 16 x 10 m, draught 5 m, block coefficient 0.60. */
function worked(): (key: MeasureKey) => number | undefined {
  const type = shippedLibrary().hullTypes.find(candidate => candidate.id === 'naval-auxiliary');
  if (type === undefined) throw new Error('no hull type');
  const ship: ShipGivens = {
    type,
    particulars: {
      length: given('120', 'm'),
      beam: given('16', 'm'),
      depth: given('10', 'm'),
      draughtFull: given('5', 'm'),
      draughtLight: given('3', 'm'),
      blockCoefficient: given('0.6', '1'),
    },
    tanks: [
      { id: 'tank', title: 'Tank', place: '/vessel/tanks/tank', capacity: given('240', 'm3'), oily: true },
    ],
    waterDepth: given('30', 'm'),
    towDistance: given('100', 'nmi'),
    yardDistance: given('50000', 'm'),
    topsideShare: given('0.3', '1'),
    monitoringYears: given('5', 'year'),
    openings: {},
  };
  const sheet = new Sheet('work');
  const { measures } = takeOff(sheet, ship);
  const result = evaluateSheet(sheet);
  return key => result.number(measures[key]);
}

describe('the take-off in the sheet', () => {
  const measure = worked();

  test('displacement is sea water × Cb L B T (Watson, Practical Ship Design, equation 3.1, without shell allowance)', () => {
    expect(measure('full-displacement')).toBeCloseTo(5904.0, 1);
  });

  test('wetted surface by Denny-Mumford, 1.7 L T + V ÷ T (UFC 4-159-03 equation 18)', () => {
    expect(measure('wetted-surface')).toBeCloseTo(2172.0, 1);
  });

  test('fullness at 0.8 of the depth, Cb + (1 − Cb)(0.8 D − T) ÷ 3T = 0.68 (Watson and Gilfillan, as remembered)', () => {
    expect(measure('hull-volume')).toBeCloseTo(0.68 * 120 * 16 * 10, 0);
  });

  test('a tank of 10 x 6 x 4 m has 248 m² inside and 20 % for stiffeners (geometry); the rule is within 3 %', () => {
    const area = measure('tank-area') ?? 0;
    expect(Math.abs(area / 297.6 - 1)).toBeLessThan(0.03);
    expect(measure('tank-capacity')).toBe(240);
    expect(measure('tank-count')).toBe(1);
  });

  test('freeboard shell is perimeter × freeboard: 2 × 120 × 0.97 × 5 = 1164 m² (geometry)', () => {
    expect(measure('freeboard-area')).toBeCloseTo(1164, 0);
  });
});
