import { describe, expect, it } from 'vitest';
import { screenCases, type ScreenCase } from '../../../core/flooding/upright/cases';
import { resolveShip } from '../../../core/flooding/upright/resolved';
import { caseInWords, judge, worstCase } from '../../../core/flooding/upright/verdict';
import { bargeInput } from './invented-ship';

const ranges = { displacements: [4100], kgs: [4], mismatches: [0] };
const [some] = screenCases(resolveShip(bargeInput(4)), ranges, { staysUp: 7, leans: 15 }, 4);
if (some === undefined) throw new Error('one value each gives one case');
const { greatestHeel: _, ...resting } = some;
const at = (level: number) => ({ ...some.worst, level });

/** A case of 4,100 t with even openings, as a test needs it. */
function one(standing: ScreenCase['standing'], change: Partial<ScreenCase> = {}): ScreenCase {
  return { ...resting, standing, kg: 4, displacement: 4100, mismatch: 0, worst: at(2.5), ...change };
}
const likely = { kg: 4, displacement: 4100, mismatch: 0 };

describe('a case in words', () => {
  it('says its values, and where she heels most', () => {
    const values = { kg: 5, displacement: 2000.4, mismatch: 0.1 };
    const frame = 'KG 5.00 m, 2000 t, 10 % uneven openings: ';
    const said = (change: Partial<ScreenCase>, standing: ScreenCase['standing'] = 'leans') =>
      caseInWords(one(standing, { ...values, ...change })).replace(frame, '');
    expect(said({ greatestHeel: 12.34 })).toBe(
      'greatest equilibrium heel 12.3 degrees at a flood level of 2.50 m',
    );
    expect(said({ greatestHeel: 0.05 })).toBe(
      'greatest equilibrium heel 0.1 degrees at a flood level of 2.50 m',
    );
    expect(said({ greatestHeel: 0.04 })).toBe('she stays upright at every flood level');
    expect(said({})).toBe('no equilibrium below 60 degrees from a flood level of 2.50 m');
    expect(said({ greatestHeel: 3 }, 'does not sink')).toBe('she stays afloat');
  });

  it('the worst of several heels most; one without rest is worse than any, the earlier the worse', () => {
    const [small, large] = [one('leans', { greatestHeel: 8 }), one('leans', { greatestHeel: 14 })];
    const [early, late] = [one('may roll over', { worst: at(1) }), one('may roll over', { worst: at(2) })];
    expect(worstCase([small, large])).toBe(large);
    expect(worstCase([large, small])).toBe(large);
    expect(worstCase([large, late, early])).toBe(early);
    expect(worstCase([early, late])).toBe(early);
    const equal = one('leans', { greatestHeel: 14 });
    expect(worstCase([large, equal])).toBe(large);
  });
});

describe('the verdict over cases', () => {
  const up = one('stays up', { greatestHeel: 2 });

  it('is the one they agree in, with the worst of them as the example', () => {
    const lower = one('stays up', { greatestHeel: 1 });
    expect(judge([lower, up], likely, 'inclined')).toEqual({
      verdict: 'stays up',
      reasons: [`stays up with ${caseInWords(up)}`],
    });
    expect(judge([one('leans', { greatestHeel: 9 })], likely, 'assumed').verdict).toBe('leans');
    expect(judge([one('does not sink')], likely, 'inclined')).toEqual({
      verdict: 'does not sink',
      reasons: [
        `does not sink with ${caseInWords(one('does not sink'))}`,
        'No verdict can make a plan good that leaves her afloat.',
      ],
    });
  });

  it('is never "stays up" on an assumed KG', () => {
    expect(judge([up], likely, 'assumed')).toEqual({
      verdict: 'cannot tell',
      reasons: [
        'She would stay up, but KG is assumed: nobody has measured it.',
        `stays up with ${caseInWords(up)}`,
      ],
      settles: {
        measurement: 'inclining',
        why: 'The height of the centre of gravity decides, and it has not been measured.',
      },
    });
  });

  it('that cannot tell names each outcome from the best to the worst', () => {
    const over = one('may roll over', { kg: 6 });
    const leans = one('leans', { kg: 5, greatestHeel: 9 });
    const afloat = one('does not sink', { kg: 3 });
    const judged = judge([over, leans, up, afloat], likely, 'weight list');
    expect(judged).toEqual({
      verdict: 'cannot tell',
      reasons: [
        'What is not known of her allows 4 different outcomes.',
        `does not sink with ${caseInWords(afloat)}`,
        `stays up with ${caseInWords(up)}`,
        `leans with ${caseInWords(leans)}`,
        `may roll over with ${caseInWords(over)}`,
      ],
      settles: {
        measurement: 'inclining',
        why: 'The range of KG in the weight list spans two verdicts.',
      },
    });
  });
});

describe('the measurement that would settle it', () => {
  const up = (change: Partial<ScreenCase>) => one('stays up', { greatestHeel: 2, ...change });
  const leans = (change: Partial<ScreenCase>) => one('leans', { greatestHeel: 9, ...change });

  it('is of the range whose likely value leaves one outcome', () => {
    const uneven = [up({}), up({ kg: 5 }), leans({ mismatch: 0.1 }), leans({ mismatch: 0.1, kg: 5 })];
    expect(judge(uneven, likely, 'inclined').settles).toEqual({
      measurement: 'bulkhead survey',
      why: 'Known openings and bulkheads would tell how unevenly the sides fill.',
    });
    const heavy = [
      up({}),
      up({ kg: 5 }),
      leans({ displacement: 4300 }),
      leans({ displacement: 4300, kg: 5 }),
    ];
    expect(judge(heavy, likely, 'inclined').settles).toEqual({
      measurement: 'draught survey',
      why: 'The range of the displacement spans two verdicts.',
    });
  });

  it('is KG before all others, also where no range alone settles it', () => {
    const high = [up({}), up({ mismatch: 0.1 }), leans({ kg: 5 }), leans({ kg: 5, mismatch: 0.1 })];
    expect(judge(high, likely, 'assumed').settles).toEqual({
      measurement: 'inclining',
      why: 'The height of the centre of gravity decides, and it has not been measured.',
    });
    // A KG that was measured is not said to be unmeasured: a more careful inclining would narrow its range.
    expect(judge(high, likely, 'inclined').settles).toEqual({
      measurement: 'inclining',
      why: 'The range that the inclining leaves KG spans two verdicts.',
    });
    // Where both would do, the height of the centre of gravity is the first to be measured.
    const both = [up({}), leans({ kg: 5, mismatch: 0.1 })];
    expect(judge(both, likely, 'inclined').settles?.measurement).toBe('inclining');
    const neither = [up({}), leans({ kg: 5 }), leans({ mismatch: 0.1 })];
    expect(judge(neither, likely, 'inclined').settles?.measurement).toBe('inclining');
  });
});
