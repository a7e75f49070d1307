import { expect, it } from 'vitest';
import { evaluate } from '../../../core/evaluation';
import { fillSteps } from '../../../core/views/fill-steps';
import { summaryOf } from '../../../core/views/window';
import { uprightWhy } from '../../../core/views/why-upright';
import { demoProject } from '../evaluation/demo';

/** The demo with its upright screen, as a view is made from it. */
function screened() {
  const evaluation = evaluate(demoProject(), { today: '2026-11-24', seed: 1, schedules: 20 });
  const { estimate: parts, upright } = evaluation;
  if (parts === undefined || upright === undefined) throw new Error('the demo is not screened');
  return { evaluation, upright, parts, summary: summaryOf(parts) };
}

// One foot is 0.3048 m (NIST Special Publication 811, appendix B.8).
it('the derivation of the verdict speaks in the reader’s measures, its reasons too', () => {
  const { evaluation, upright, ...rest } = screened();
  const { likelyHeelDegrees: _likely, lowestGmMetres: _lowest, ...screen } = upright;
  const bare = {
    ...screen,
    verdict: 'leans' as const,
    greatestHeelDegrees: 12.34,
    sinkMinutes: 21,
    reasons: ['KG 6.10 m lies above KM'],
  };
  const told = { ...bare, lowestGmMetres: 0.3048 };
  const rows = (measures: 'us' | 'metric') =>
    uprightWhy(
      { ...rest, evaluation: { ...evaluation, upright: told }, measures },
      'upright:verdict',
    )?.rows.map(
      ({ value, words }) => `${value.text} ${words}${value.why === undefined ? '' : ` (${value.why})`}`,
    );
  expect(rows('metric')).toEqual([
    '12.3° greatest heel at which she balances, over the ranges of KG, displacement and unevenness',
    'none the same for the likely values alone',
    '0.30 m lowest GM on the way down, over the same ranges',
    '21.0 min from the release until the hull is under, for the likely values',
    ' KG 6.10 m lies above KM',
    'open lightship (ship/lightship)',
    'open beam (ship/beam)',
    'open depth (ship/depth)',
  ]);
  expect(rows('us')?.slice(2, 5)).toEqual([
    '1.00 ft lowest GM on the way down, over the same ranges',
    '21.0 min from the release until the hull is under, for the likely values',
    ' KG 20.01 ft lies above KM',
  ]);
  const [stage] = upright.stages;
  if (stage === undefined) throw new Error('there are stages');
  const grounded = { ...told, stages: [stage, { ...stage, event: 'on the bottom' }] };
  expect(
    uprightWhy(
      { ...rest, evaluation: { ...evaluation, upright: grounded }, measures: 'us' },
      'upright:verdict',
    )?.rows[3]?.words,
  ).toBe('from the release until the hull is on the bottom, for the likely values');
  const without = uprightWhy(
    { ...rest, evaluation: { ...evaluation, upright: bare }, measures: 'us' },
    'upright:verdict',
  );
  expect(without?.rows[2]?.value).toEqual({ text: 'none' });
  expect(without).toMatchObject({
    title: 'Upright screen',
    value: { text: 'leans' },
    words: upright.caution,
    home: 'vessel',
  });
  expect(uprightWhy({ ...rest, evaluation, measures: 'us' }, 'schedule:finish')).toBeUndefined();
});

it('compartments are told apart by thirds of the time they take to fill', () => {
  const { upright } = screened();
  const [first] = upright.sizing;
  if (first === undefined) throw new Error('nothing was sized');
  const filling = (minutes: readonly number[]) =>
    fillSteps({
      ...upright,
      sizing: minutes.map((fillMinutes, at) => ({ ...first, compartment: `c${at}`, fillMinutes })),
    });
  const spread = filling([2, 5, 5.5, 8, 8.5, 11, Infinity]);
  expect([0, 1, 2, 3, 4, 5, 6, 7].map(at => spread.step(`c${at}`))).toEqual([
    0,
    0,
    1,
    1,
    2,
    2,
    undefined,
    undefined,
  ]);
  expect(spread.legend).toEqual([
    { step: 0, text: 'up to 5.0' },
    { step: 1, text: 'to 8.0' },
    { step: 2, text: 'to 11.0 min' },
  ]);
  const alike = filling([4, 4.01]);
  expect([alike.step('c1'), alike.step('c2'), alike.legend]).toEqual([
    0,
    undefined,
    [{ step: 0, text: '4.0 min' }],
  ]);
  for (const none of [filling([]), filling([Infinity]), fillSteps(undefined)])
    expect([none.step('c0'), none.legend]).toEqual([undefined, []]);
});
