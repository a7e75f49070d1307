import { describe, expect, it } from 'vitest';
import {
  crewPlanJson,
  crewPlanStudy,
  evaluate,
  levelledPlan,
  shippedLibrary,
  summarise,
  type LevelledPlan,
  type NoPlan,
} from '../../../core/evaluation';
import { dollarsOf } from '../../../core/money';
import type { Project } from '../../../core/project';
import { verifySchedule } from '../../../core/scheduling';
import { crewAnswer, crewPlanRows, LEVEL_QUESTION } from '../../../core/views';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const options = { today: '2026-11-24', seed: 1, upright: false };
const evaluation = evaluate(base, options);
const parts = estimated(evaluation);

function drained<R>(steps: Generator<unknown, R>): R {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
function plan(found: LevelledPlan | NoPlan | undefined): LevelledPlan {
  if (found === undefined || 'earliest' in found) throw new Error('there is no such plan');
  return found;
}

describe('the crews of the plan evened out', () => {
  const level = plan(drained(levelledPlan(evaluation, { seed: 1 })));

  it('keep the finish and every rule, and hiring and releasing cost less', () => {
    expect(level.schedule.finish).toBe(parts.schedule.finish);
    expect([verifySchedule(parts.problem, level.schedule), level.findings]).toEqual([[], []]);
    expect(level.after.cost).toBeLessThan(level.before.cost);
    expect(level.saved).toBeCloseTo(level.before.cost - level.after.cost, 2);
    expect(level.moved.length).toBeGreaterThan(0);
  });
  it('cost as many times the people, hours and rate of a crew as it is hired', () => {
    const { work, money, input } = parts;
    const hours = Number(input.library.rateBook.crewSizes.hireAndRelease.value);
    const byHand = level.before.crews.reduce((sum, { crew, hired }) => {
      const people = work.result.number(work.crews.crews.columns.people, crew) ?? Number.NaN;
      const rate = money.result.number(money.crewRates.columns.rate, crew) ?? Number.NaN;
      return sum + hired * Math.round(people * hours * rate * 100);
    }, 0);
    expect(level.before.cost).toBe(byHand / 100);
  });
  it('leave public staff aside: they stay whatever the plan', () => {
    const owners = new Set(
      parts.input.library.rateBook.crews.filter(crew => crew.employer === 'owner').map(crew => crew.id),
    );
    expect(level.before.crews.filter(({ crew }) => owners.has(crew))).toEqual([]);
  });
  it('tell the total of the estimate before, and with the new dates', () => {
    const { total } = summarise(parts);
    expect(level.totalBefore).toBe(total && dollarsOf(total));
    expect(level.totalAfter).toBeGreaterThan(0);
  });
  it('are told as an answer with its basis, and the moves one by one', () => {
    const rows = crewAnswer(evaluation, LEVEL_QUESTION, level);
    const answer = rows.answer.map(part => (typeof part === 'string' ? part : part.text)).join('');
    expect(answer).toMatch(/crews hired become \d+, at most \d+ people .* saves \$[\d,]+\./);
    expect(rows.basis).toContain('It is not part of the estimate.');
    expect(rows.moved?.rows.length).toBe(level.moved.length);
    expect(rows.picture?.before.length).toBeGreaterThan(10);
  });
});

describe('the fewest crews that keep a last day', () => {
  it('keep it and every rule, with no kind of crew larger at its peak in sum', () => {
    const by = parts.schedule.finish ?? '';
    const least = plan(drained(levelledPlan(evaluation, { seed: 1, leastCrewBy: by })));
    expect((least.schedule.finish ?? '') <= by).toBe(true);
    expect(verifySchedule(parts.problem, least.schedule)).toEqual([]);
    const peaks = (used: LevelledPlan['before']) => used.crews.reduce((sum, { peak }) => sum + peak, 0);
    expect(peaks(least.after)).toBeLessThan(peaks(least.before));
  });
  it('are none for a day that cannot be kept: the earliest finish is told', () => {
    const found = drained(levelledPlan(evaluation, { seed: 1, leastCrewBy: '2027-06-01' }));
    expect(found).toEqual({ earliest: parts.schedule.finish });
  });
});

describe('crews that the planner sets', () => {
  const item = 'joinery-removal';
  const before = parts.planned.find(one => one.item.id === item);
  const withCrews = (crews: number, shift?: string): Project => ({
    ...base,
    options: { ...base.options, ...(shift === undefined ? {} : { 'shift-pattern': shift }) },
    items: [
      {
        item,
        note: '',
        crews: { value: String(crews), unit: 'each', basis: 'judgement', source: 'A test', year: 2026 },
      },
    ],
  });
  const plannedOf = (project: Project) => {
    const made = estimated(evaluated(project));
    const { columns } = made.work.items;
    return {
      crews: made.work.result.number(columns.crews, item) ?? 0,
      hours: made.work.result.number(columns.hours, item) ?? 0,
      people: made.work.result.number(columns.people, item) ?? 0,
      days: made.planned.find(one => one.item.id === item)?.days ?? 0,
    };
  };
  const usual = plannedOf({ ...base, items: [] });

  it('twice as many take a fifth more hours and fewer days; half as many no more hours and more days', () => {
    expect(usual.crews).toBe(before?.crews);
    const twice = plannedOf(withCrews(2 * usual.crews));
    expect([twice.crews, twice.hours]).toEqual([2 * usual.crews, Math.round(usual.hours * 120) / 100]);
    // Days by hand: hours over the people of all crews, eight hours a day, whole days up.
    expect(twice.days).toBe(Math.ceil(twice.hours / (8 * twice.people * twice.crews) - 1e-6));
    expect(twice.days).toBeLessThan(usual.days);
    const half = plannedOf(withCrews(usual.crews / 2));
    expect([half.hours, half.days > usual.days]).toEqual([usual.hours, true]);
  });
  it('under the long week all work by the shift takes longer, spans and the office do not', () => {
    const long = plannedOf(withCrews(usual.crews, 'one-shift-six-days'));
    expect(long.hours).toBeCloseTo(usual.hours * 1.2048, 1);
    const made = estimated(
      evaluated({ ...base, options: { ...base.options, 'shift-pattern': 'one-shift-six-days' } }),
    );
    for (const id of ['supervision', 'bid-documents']) {
      const { columns } = made.work.items;
      const [now, was] = [made, parts].map(one => one.work.result.number(columns.hours, id) ?? 0);
      expect(now, id).toBe(was);
    }
  });
});

describe('the crew plans', () => {
  // One other size and one other shift are enough to see that the parts work together.
  const shipped = shippedLibrary();
  const { crewSizes } = shipped.rateBook;
  const library = {
    ...shipped,
    rateBook: {
      ...shipped.rateBook,
      crewSizes: { ...crewSizes, sizes: crewSizes.sizes.filter(size => size.id === 'half-more') },
    },
    options: shipped.options.map(option => ({
      ...option,
      values: option.values.filter(value => value.id !== 'one-shift-six-days'),
    })),
  };
  const few = { ...options, library };
  const study = () => crewPlanStudy(evaluate(base, few), few, { starts: 1 });

  it('tell how far they are from the first estimate on, so that they can be left off', () => {
    const first = study().next();
    expect(first.done).toBe(false);
    expect(first.value).toMatchObject({ done: 1, words: 'One shift, five days' });
  });

  it(
    'are whole estimates: the cheapest, taken into the document, costs what it says',
    { timeout: 300_000 },
    () => {
      const answer = drained(study());
      if (answer?.best === undefined || answer.present === undefined) throw new Error('there is no plan');
      const { best, present, curve } = answer;
      expect(present.isPresent).toBe(true);
      expect(best.cost).toBeLessThanOrEqual(present.cost);
      expect(best.finish <= (answer.finishBy ?? '9999')).toBe(true);
      expect(curve.length).toBeGreaterThan(5);
      // The curve is the cheapest for each finish, and the frontier falls.
      expect(new Set(curve.map(point => point.finish)).size).toBe(curve.length);
      const falling = curve.filter(point => answer.frontier.includes(point.id)).map(point => point.cost);
      expect(falling).toEqual(falling.toSorted((a, b) => b - a));
      for (const point of [best, curve.at(-1) ?? best]) {
        const taken = { ...base, scenarios: [{ id: 'taken', title: 'Taken', changes: [...point.changes] }] };
        const again = evaluate(taken, { ...few, schedules: 100 });
        expect(again.findings.filter(finding => finding.weight === 'blocks')).toEqual([]);
        const { total } = summarise(estimated(again));
        expect([total && dollarsOf(total), again.estimate?.schedule.finish]).toEqual([
          point.total,
          point.finish,
        ]);
        expect(point.cost).toBeCloseTo(point.total + point.standby, 2);
        expect(point.standby).toBeGreaterThan(0);
      }
      expect(answer.cautions.join(' ')).toMatch(/local codes/);
      const rows = crewPlanRows(answer, false).found;
      expect(rows?.table.rows.length).toBeGreaterThanOrEqual(curve.length);
      expect(rows?.picture.plans.filter(one => one.isChosen).length).toBe(1);
      const offered = rows?.offers.map(one => one.id) ?? [];
      expect(offered.length).toBeGreaterThan(0);
      expect(offered).not.toContain(present.id);
      if (!best.isPresent) expect(rows?.offers[0]).toMatchObject({ id: best.id, changes: best.changes });
      expect(JSON.parse(JSON.stringify(crewPlanJson(answer)))).toMatchObject({
        best: { isBest: true, finish: best.finish },
      });
    },
  );
});
