import { describe, expect, it } from 'vitest';
import { readTypedDate } from '../../../core/calendar';

describe('a typed date', () => {
  it.each(['2026-12-01', '2026-12-1', '2026/12/01', ' 2026-12-01 '])('%j is read in either order', typed => {
    expect(readTypedDate(typed, true)).toEqual({ date: '2026-12-01' });
    expect(readTypedDate(typed, false)).toEqual({ date: '2026-12-01' });
  });

  it('has its month first where the reader writes it so', () => {
    expect(readTypedDate('12/01/2026', true)).toEqual({ date: '2026-12-01' });
    expect(readTypedDate('2/9/2027', true)).toEqual({ date: '2027-02-09' });
  });

  it('is not guessed where either order may be meant', () => {
    expect(readTypedDate('12/01/2026', false)).toEqual({
      fault:
        '"12/01/2026" can be meant in more than one order. Write the year first: 2026-12-01 or 2026-01-12.',
    });
  });

  it('with a thirteenth month is shown as it could be meant', () => {
    expect(readTypedDate('25/12/2026', true)).toEqual({
      fault: '"25/12/2026" can be meant in more than one order. Write the year first: 2026-12-25.',
    });
  });

  it.each(['2027-02-29', '13/32/2026', '12/01/26', '2026-00-10', 'soon', ''])('%j is refused', typed => {
    expect(JSON.stringify(readTypedDate(typed, true))).toContain('is no date of the calendar');
  });

  it('the month first is offered only to those who write dates so', () => {
    const faultFor = (isMonthFirst: boolean) => JSON.stringify(readTypedDate('soon', isMonthFirst));
    expect(faultFor(true)).toContain('or with the month first');
    expect(faultFor(false)).not.toContain('month first');
  });
});
