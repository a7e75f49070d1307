import { expect, it } from 'vitest';
import { figureInMeasures, inMeasures } from '../../../core/views/measures';

const ROAD = {
  value: '80',
  unit: 'km',
  low: '20',
  high: '250',
  basis: 'judgement',
  source: 'A road',
} as const;

// NIST SP 811 (2008), appendix B.8: one statute mile is 1609.344 m.
it('a road is told in miles or kilometres, however it was given', () => {
  expect(figureInMeasures(ROAD, 'us')).toEqual({ value: '50', unit: 'mi', low: '12', high: '155' });
  expect(figureInMeasures(ROAD, 'metric')).toEqual({ value: '80', unit: 'km', low: '20', high: '250' });
  expect(inMeasures('80000', 'm', 'us')).toEqual({ value: '50', unit: 'mi' });
  expect(inMeasures('80000', 'm', 'metric')).toEqual({ value: '80', unit: 'km' });
});

it('the ends of a road are in the unit of its middle', () => {
  expect(figureInMeasures({ ...ROAD, value: '8000', unit: 'm', low: '2000', high: '9000' }, 'us')).toEqual({
    value: '5.0',
    unit: 'mi',
    low: '1.2',
    high: '5.6',
  });
});

it('a ship is told in feet or metres', () => {
  expect(inMeasures('159.4104', 'm', 'us')).toEqual({ value: '523.0', unit: 'ft' });
  expect(inMeasures('523', 'ft', 'us')).toEqual({ value: '523', unit: 'ft' });
});
