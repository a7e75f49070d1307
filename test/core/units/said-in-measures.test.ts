import { describe, expect, test } from 'vitest';
import { saidIn } from '../../../core/units';

// One foot is 0.3048 m and one long ton 1.0160469088 t (NIST Special Publication 811, appendix B.8).
describe('a sentence of the engine in the reader’s measures', () => {
  test.each([
    ['she floats upright, so KG is below KM 7.42 m', 'she floats upright, so KG is below KM 24.34 ft'],
    ['KG 6.10 m, 8128 t, 12 % uneven openings', 'KG 20.01 ft, 8,000 long tons, 12 % uneven openings'],
    ['100 m3 of air stay aboard', '3,531 cu ft of air stay aboard'],
    ['101.6 t m list her 2 degrees', '328.1 foot-long tons list her 2 degrees'],
    ['a cut of 10.0 m2', 'a cut of 107.6 sq ft'],
    ['12 min and 4 tugs in 3 months', '12 min and 4 tugs in 3 months'],
    ['a draught of 2.7432 m, a depth of 1.5240 m', 'a draught of 9 ft, a depth of 5 ft'],
  ])('%s', (metric, us) => {
    expect(saidIn(metric, 'us')).toBe(us);
  });

  test('metric stays as it was said, with thousands separated and units in words', () => {
    expect(saidIn('8128 t at 7.42 m', 'metric')).toBe('8,128 tonnes at 7.42 m');
    expect(saidIn('3571 t m list her', 'metric')).toBe('3,571 tonne-metres list her');
  });
});
