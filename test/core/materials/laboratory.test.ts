import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { readResult, resultFinding, surveyedPresence, tripPoint, verdictOf } from '../../../core/materials';

const library = shippedLibrary();
const pcb = tripPoint(library.tripPoints, 'pcb-bulk-product');
const cell = (result: string, qualifier = '', reportingLimit?: string) => ({
  result,
  qualifier,
  ...(reportingLimit === undefined ? {} : { reportingLimit }),
});

describe('what a result cell says', () => {
  test('not detected is below its reporting limit and never zero', () => {
    expect(readResult(cell('ND', '', '5'))).toEqual({ kind: 'below', limit: '5' });
    expect(readResult(cell('5', 'U'))).toEqual({ kind: 'below', limit: '5' });
    expect(readResult(cell('0', 'U', '5'))).toEqual({ kind: 'below', limit: '5' });
    expect(readResult(cell('ND'))).toEqual({ kind: 'below-unknown' });
  });
  test('<5 and < 5.0 U are below 5', () => {
    expect(readResult(cell('<5'))).toEqual({ kind: 'below', limit: '5' });
    expect(readResult(cell('< 5.0 U'))).toEqual({ kind: 'below', limit: '5' });
  });
  test('empty and text cells are neither numbers nor zero', () => {
    expect(readResult(cell(''))).toEqual({ kind: 'empty' });
    expect(readResult(cell('sample broken'))).toEqual({ kind: 'text', text: 'sample broken' });
  });
  test('numbers are read with thousands and an estimated flag', () => {
    expect(readResult(cell('1,250'))).toEqual({ kind: 'measured', value: '1250' });
    expect(readResult(cell('12.5', 'J'))).toEqual({ kind: 'measured', value: '12.5' });
  });
});

describe('a result against the trip-point of 50 ppm', () => {
  test('a reporting limit above it cannot tell and is a finding; one at or below it clears', () => {
    expect(verdictOf({ kind: 'below', limit: '60' }, pcb)).toBe('cannot tell');
    expect(resultFinding({ kind: 'below', limit: '60' }, pcb, '/survey/laboratory/0', 'S-1')?.code).toBe(
      'survey/reporting-limit-too-high',
    );
    expect(verdictOf({ kind: 'below', limit: '5' }, pcb)).toBe('clears');
    expect(verdictOf({ kind: 'measured', value: '50' }, pcb)).toBe('trips');
    expect(verdictOf({ kind: 'measured', value: '49.9' }, pcb)).toBe('clears');
    expect(verdictOf({ kind: 'empty' }, pcb)).toBe('cannot tell');
  });
});

describe('presence by survey', () => {
  const sample = (result: string, unit = 'mg/kg') => ({
    sample: 'S-1',
    material: 'pcb-cable',
    analyte: 'PCB, total',
    unit,
    date: '2026-05-02',
    ...cell(result, '', '5'),
  });
  const presence = (...results: ReturnType<typeof sample>[]) =>
    surveyedPresence(library.materials, { built: 1957 }, results, library.tripPoints, []);
  test('all clear takes a material off, one that trips makes it certain, one that cannot tell leaves the era', () => {
    expect(presence(sample('ND'), sample('49')).presence.get('pcb-cable')?.likely).toBe(0);
    expect(presence(sample('ND'), sample('50')).presence.get('pcb-cable')).toMatchObject({
      low: 1,
      likely: 1,
      high: 1,
    });
    const untold = presence(sample('ND'), sample('lost'));
    expect(untold.presence.get('pcb-cable')?.likely).toBe(0.6);
    expect(untold.findings).toHaveLength(1);
  });
  test('units are brought to the trip-point’s; an unknown one is a finding and decides nothing', () => {
    expect(presence(sample('49999', 'ug/kg')).presence.get('pcb-cable')?.likely).toBe(0);
    expect(presence(sample('50000', 'ug/kg')).presence.get('pcb-cable')?.likely).toBe(1);
    expect(presence(sample('1', 'ug/wipe')).findings[0]?.code).toBe('survey/wrong-unit');
  });
  test('an unknown of the intake widens the range of its families and moves no likely value', () => {
    const wide = surveyedPresence(library.materials, { built: 1957 }, [], library.tripPoints, [
      { item: 'tank-soundings', families: ['oil-and-fuel'], widening: 0.3 },
    ]).presence;
    expect(wide.get('fuel')).toMatchObject({ low: 0.7, likely: 1, high: 1.3 });
    expect(wide.get('pcb-cable')?.likely).toBe(0.6);
  });
});
