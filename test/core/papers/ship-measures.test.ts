import { describe, expect, it } from 'vitest';
import { said } from '../../../core/papers/report/decision-page';
import { measuresOf } from '../../../core/units';

describe('lengths of a paper', () => {
  const gm = { kind: 'number', value: -1.082, unit: 'm' } as const;

  it('are in the measures in which the ship’s length is given', () => {
    expect(measuresOf('ft')).toBe('us');
    expect(measuresOf('m')).toBe('metric');
  });

  it('are converted for readers of feet, and left as they are for those of metres', () => {
    // 1 ft = 0.3048 m exactly (NIST SP 811, 2008, appendix B.8): 1.082 / 0.3048 = 3.5499.
    expect(said(gm, 'us')).toBe('−3.55 ft');
    expect(said(gm, 'metric')).toBe('−1.082 m');
  });

  it('leave what is no length alone', () => {
    expect(said({ kind: 'number', value: 12.4, unit: 'degrees' }, 'us')).toBe('12.4 degrees');
    expect(said({ kind: 'number', value: 1834, unit: '' }, 'us')).toBe('1,834');
  });

  it('stand beside dates in words', () => {
    expect(said({ kind: 'date', iso: '2029-07-05' }, 'us')).toBe('July 5, 2029');
  });
});
