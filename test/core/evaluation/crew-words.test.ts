import { describe, expect, it } from 'vitest';
import { crewPlanStudy, evaluate, shippedLibrary } from '../../../core/evaluation';
import { answerOf } from '../../../core/evaluation/crews/plan-answer';
import { sizedItems, type CrewChoice } from '../../../core/evaluation/crews/crew-sizes';
import { pointOf, type CrewPlanPoint } from '../../../core/evaluation/crews/plan-point';
import { sizedProblem } from '../../../core/evaluation/crews/plan-problem';
import { demoProject, estimated, evaluated } from './demo';

const evaluation = evaluated(demoProject());
const parts = estimated(evaluation);
const run = { parts, total: 5_000_000, standby: { cost: 1234.5, days: 2.04 } };
const shift = { id: 'one-shift-five-days', title: 'One shift, five days', isLong: false };

/** A plan made up for these tests: what is told follows from finish, cost and kind alone. */
function point(finish: string, cost: number, other: Partial<CrewPlanPoint> = {}): CrewPlanPoint {
  const plan = { shift: shift.id, start: '2027-01-04', crews: [] };
  const made = pointOf(run, plan, { changes: [], shift, present: plan });
  const id = `${finish} ${String(cost)}`;
  return { ...made, id, isPresent: false, finish, cost, words: `the plan of ${finish}`, ...other };
}

function choice(title: string, planned: number, crews: number): CrewChoice {
  const item = title.toLowerCase().replaceAll(' ', '-');
  return { item, title, size: 'twice', words: 'twice the usual crews', crews, crewSize: 3, planned };
}

describe('the answer to which crew plan costs least', () => {
  const present = point('2028-05-10', 1000, { isPresent: true });

  it('is the plan as it stands when none costs less', () => {
    const { sentence, best } = answerOf(evaluation, [present, point('2028-04-01', 1200)], undefined);
    expect(sentence).toBe('No plan found costs less than the plan as it stands.');
    expect(best?.id).toBe(present.id);
  });

  it.each([
    ['2028-05-10', 'on the same day'],
    ['2028-05-09', '1 calendar day earlier'],
    ['2028-05-12', '2 calendar days later'],
  ])('tells what the plan that finishes on %s saves, and when it finishes', (finish, when) => {
    const { sentence } = answerOf(evaluation, [present, point(finish, 999.25)], undefined);
    expect(sentence).toBe(
      `The cheapest plan found costs $0.75 less than the plan as it stands and finishes ${when}: the plan of ${finish}.`,
    );
  });

  it('tells what keeping a day costs more', () => {
    const points = [present, point('2028-04-01', 1200), point('2028-03-01', 1500)];
    const answer = answerOf(evaluation, points, '2028-04-15');
    expect(answer.sentence).toBe(
      'The cheapest plan found that keeps 2028-04-15 costs $200.00 more than the plan as it stands and finishes 39 calendar days earlier: the plan of 2028-04-01.',
    );
    expect([answer.finishBy, answer.earliest?.finish]).toEqual(['2028-04-15', '2028-03-01']);
  });

  it('tells the earliest finish when no plan keeps the day', () => {
    const { sentence, best } = answerOf(evaluation, [present, point('2028-04-11', 1200)], '2028-04-01');
    expect(best).toBeUndefined();
    expect(sentence).toBe(
      'No plan found finishes by 2028-04-01: the earliest finishes on 2028-04-11, 10 calendar days after it.',
    );
  });

  it('compares with nothing when the plan as it stands could not be estimated', () => {
    const { sentence, present: none } = answerOf(evaluation, [point('2028-04-11', 1200)], undefined);
    expect(none).toBeUndefined();
    expect(sentence).toBe(
      'The plan as it stands could not be estimated. The cheapest plan found finishes on 2028-04-11: the plan of 2028-04-11.',
    );
  });

  it('warns of crowding and of tired people only where a plan on the curve hurries', () => {
    const cautions = (other: Partial<CrewPlanPoint>) =>
      answerOf(evaluation, [point('2028-04-11', 1200, other)], undefined).cautions.join(' ');
    const [crowded, tired] = ['Larger crews get in each other’s way', 'tire people'];
    const told = (text: string) => [crowded, tired].map(words => text.includes(words));
    expect(told(cautions({}))).toEqual([false, false]);
    expect(told(cautions({ crews: [choice('Joinery', 1, 2)] }))).toEqual([true, false]);
    expect(told(cautions({ isLong: true }))).toEqual([false, true]);
    expect(told(cautions({ shift: 'two-shifts-five-days' }))).toEqual([false, true]);
  });

  it('names the shifts under which the work takes more hours, with the source', () => {
    const { notes } = answerOf(evaluation, [present], undefined);
    expect(notes.filter(note => note.includes('hours × 1.2048 (published:'))).toHaveLength(1);
  });
});

describe('a crew plan in words', () => {
  const words = (crews: readonly CrewChoice[], start = '2027-01-04') => {
    const own = { shift: shift.id, start: '2027-01-04', crews: [] };
    return pointOf(run, { ...own, start, crews }, { changes: [], shift, present: own }).words;
  };

  it('names shift, crews and another first day', () => {
    expect(words([])).toBe('One shift, five days; crews as planned');
    expect(words([choice('Joinery', 1, 2)], '2027-03-01')).toBe(
      'One shift, five days; more crews for joinery (1 → 2); start 2027-03-01',
    );
    expect(words([choice('Hold sweeping', 2, 1), choice('Joinery', 1, 2), choice('Boom', 4, 6)])).toBe(
      'One shift, five days; more crews for joinery (1 → 2) and boom (4 → 6); fewer crews for hold sweeping (2 → 1)',
    );
  });

  it('names four and counts the others', () => {
    const many = ['A', 'B', 'C', 'D', 'E', 'F'].map(title => choice(title, 2, 1));
    expect(words(many)).toContain('fewer crews for a (2 → 1), b (2 → 1), c (2 → 1), d (2 → 1) and 2 more');
  });
});

describe('an activity none of whose other crew sizes could be estimated', () => {
  it('keeps its own crew alone', () => {
    const sized = sizedItems(parts);
    expect(sized.length).toBeGreaterThan(10);
    const { problem, choices, extra } = sizedProblem(run, sized, new Map());
    expect(problem.activities).toEqual(parts.problem.activities);
    expect([choices.every(one => one.length === 1), extra.flat().every(cost => cost === 0)]).toEqual([
      true,
      true,
    ]);
  });
});

describe('the study of crew plans where no crew size differs from the usual one', () => {
  // One shift and one size that is the usual one: what is left to choose is the first day.
  const shipped = shippedLibrary();
  const { crewSizes } = shipped.rateBook;
  const same = crewSizes.sizes.slice(0, 1).map(size => ({ ...size, share: { ...size.share, value: '1' } }));
  const library = {
    ...shipped,
    rateBook: { ...shipped.rateBook, crewSizes: { ...crewSizes, sizes: same } },
    options: shipped.options.map(option =>
      option.id === 'shift-pattern' ? { ...option, values: option.values.slice(0, 1) } : option,
    ),
  };
  const options = { today: '2026-11-24', seed: 1, upright: false, library };

  function studied(project: ReturnType<typeof demoProject>, ask: { finishBy?: string; starts?: number }) {
    const steps = crewPlanStudy(evaluate(project, { ...options, schedules: 20 }), options, ask);
    for (;;) {
      const step = steps.next();
      if (step.done === true && step.value !== undefined) return step.value;
      if (step.done === true) throw new Error('the study has no answer');
    }
  }

  it('tries other first days alone, and tells the earliest finish when the day asked for is too soon', () => {
    const answer = studied(demoProject(), { finishBy: '2027-02-01', starts: 1 });
    expect(answer.tried).toBe(2);
    expect(answer.best).toBeUndefined();
    expect(answer.sentence).toContain('No plan found finishes by 2027-02-01: the earliest finishes on');
    expect(answer.curve.map(one => one.crews)).toEqual(answer.curve.map(() => []));
  });

  it('tries no other first day of a project under way: it has begun', () => {
    const project = demoProject();
    const { tried, present } = studied({ ...project, statusDate: '2027-02-01' }, {});
    expect([tried, present?.isPresent]).toEqual([1, true]);
  });
});
