import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import {
  asksForPcbEquipment,
  clearanceOver,
  limitOf,
  presenceOf,
  readResult,
  surveyedPresence,
  tripPoint,
} from '../../../core/materials';

const library = shippedLibrary();
const points = library.tripPoints;
const cell = (result: string, qualifier = '', reportingLimit?: string) => ({
  ...{ result, qualifier },
  ...(reportingLimit === undefined ? {} : { reportingLimit }),
});

describe('a result cell', () => {
  it('without a number and flagged as not detected is below its reporting limit, else empty', () => {
    expect(readResult(cell('', 'U', '5'))).toEqual({ kind: 'below', limit: '5' });
    expect(readResult(cell('', 'U'))).toEqual({ kind: 'below-unknown' });
    expect(readResult(cell(''))).toEqual({ kind: 'empty' });
  });

  it('with an estimated number is measured, and with letters that nobody knows is text', () => {
    expect(readResult(cell('5.2J'))).toEqual({ kind: 'measured', value: '5.2' });
    expect(readResult(cell('5.2 x'))).toEqual({ kind: 'text', text: '5.2 x' });
    expect(readResult(cell('< 5 U'))).toEqual({ kind: 'below', limit: '5' });
  });
});

describe('a sample of liquid', () => {
  const sample = (analyte: string, result: string, unit: string) => ({
    ...{ sample: 'L-1', space: 'Engine room', material: 'liquid-pcb', analyte, result, unit },
    ...{ qualifier: '', date: '2026-09-14' },
  });
  const asks = (...of: [string, string, string]) => asksForPcbEquipment(points, sample(...of));

  it('makes PCB equipment by its PCB alone, in a unit by weight', () => {
    expect(asks('PCB total', '600', 'mg/kg')).toBe(true);
    expect(asks('Lead', '600', 'mg/kg')).toBe(false);
    expect(asks('PCB total', '600', 'mg/L')).toBe(false);
    expect(asks('PCB total', '<600', 'mg/L')).toBe(false);
    expect(asks('PCB total', 'nd', 'mg/L')).toBe(false);
  });
});

describe('a material that no era tells anything of', () => {
  const [material] = library.materials;
  if (material === undefined) throw new Error('the library has materials');
  const years = { built: 1957, lastRefit: undefined, lastCoating: undefined };

  it('has no presence, in the list of all neither', () => {
    const untold = { ...material, eras: [] };
    expect(presenceOf(untold, years)).toBeUndefined();
    const { presence } = surveyedPresence([untold, { ...material, id: 'told' }], years, [], points, []);
    expect([...presence.keys()]).toEqual(['told']);
  });

  it('has no year of its source where its era has none', () => {
    const eras = material.eras.map(({ year: _, ...era }) => era);
    expect(presenceOf({ ...material, eras }, years)).not.toHaveProperty('year');
    expect(presenceOf(material, years)).toHaveProperty('year');
  });
});

describe('a trip-point', () => {
  it('that the templates do not hold is a fault of ours, and so is one in another unit', () => {
    expect(() => tripPoint(points, 'nobodys')).toThrow('no trip-point nobodys');
    expect(() => limitOf(points, 'clearance-default', 'kg')).toThrow('is in ft, not kg');
    expect(limitOf(points, 'clearance-default', 'ft')).toBeGreaterThan(0);
  });
});

describe('the clearance over a reef', () => {
  it('in water of no depth is not enough, and no general permit covers it', () => {
    expect(clearanceOver(points, { depth: '0', top: '10' })).toMatchObject({
      ...{ clearance: '-10', byPractice: true, enough: false, generalPermit: false },
    });
  });
});
