import { describe, expect, it } from 'vitest';
import { usualSchedules } from '../../../core/scheduling';

describe('passes that a schedule is worth', () => {
  it('are a thousand for a usual project, fewer for larger ones, and never none', () => {
    expect([0, 60, 300].map(usualSchedules)).toEqual([1000, 1000, 1000]);
    const many = [300, 500, 1000, 2000, 5000, 100_000].map(usualSchedules);
    expect(many.toSorted((a, b) => b - a)).toEqual(many);
    expect(many.at(-1)).toBe(4);
  });
  it('times the size grow no further: what one waits for stays about the same', () => {
    const placements = [300, 500, 1000, 2000].map(count => count * usualSchedules(count));
    expect(Math.max(...placements)).toBe(300_000);
  });
});
