import { describe, expect, it } from 'vitest';
import { readTyped } from '../../../core/views';

describe('what is typed into a field', () => {
  it('is read by what the field asks for', () => {
    expect(readTyped({ kind: 'figure', unit: 'm' }, '240 ft', 'us')).toEqual({ value: '73.152' });
    expect(readTyped({ kind: 'decimal', unit: '1' }, '75%', 'us')).toEqual({ value: '0.75' });
    expect(readTyped({ kind: 'date' }, '12/01/2026', 'us')).toEqual({ value: '2026-12-01' });
    expect(readTyped({ kind: 'whole' }, '1968', 'us')).toEqual({ value: '1968' });
    expect(readTyped({ kind: 'text' }, ' as typed ', 'us')).toEqual({ value: ' as typed ' });
  });

  it('leaves what stood there where it is not understood', () => {
    expect(readTyped({ kind: 'date' }, '12/01/2026', 'metric')).toEqual({
      fault:
        '"12/01/2026" can be meant in more than one order. Write the year first: 2026-12-01 or 2026-01-12. The date before still counts.',
    });
    expect(readTyped({ kind: 'whole' }, '1968.5', 'us')).toEqual({
      fault: 'Write a whole number, such as 1968. The value before still counts.',
    });
    expect(readTyped({ kind: 'figure', unit: 'ft' }, 'long', 'us')).toHaveProperty('fault');
  });
});
