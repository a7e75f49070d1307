import { describe, expect, it } from 'vitest';
import { uprightScreen, type UprightInput } from '../../../core/flooding';
import { coasterInput } from './invented-ship';

/** The list that the reasons say, and those of the stages before and after nine tenths of the depth are under. */
function lists(input: UprightInput) {
  const { reasons, stages } = uprightScreen(input);
  const [, said, later] =
    /lists up to ([\d.]+) degrees while there is freeboard left(?:; the ([\d.]+) degrees)?/.exec(
      reasons.join(' '),
    ) ?? [];
  const most = (isBefore: boolean) =>
    stages
      .filter(one => one.draught < 0.9 * input.particulars.depth === isBefore)
      .reduce((top, one) => Math.max(top, Math.abs(one.list)), 0);
  return { said: Number(said), later: Number(later), before: most(true), after: most(false) };
}

describe('the list that the screen says in words', () => {
  it.each([5, 4.9, 4.7])(
    'is the highest of its curve while there is freeboard left, with KG %f m',
    likely => {
      const found = lists(coasterInput({ kg: { low: 4.6, likely, high: 5.4, basis: 'assumed' } }));
      expect(found.said).toBeGreaterThan(0);
      expect(found.before.toFixed(1)).toBe(found.said.toFixed(1));
    },
  );

  it('names what the curve shows later, which is not judged', () => {
    const found = lists(coasterInput());
    expect(found.after).toBeGreaterThan(found.before);
    expect(found.after.toFixed(1)).toBe(found.later.toFixed(1));
  });
});
