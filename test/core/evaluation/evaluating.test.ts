import { describe, expect, it } from 'vitest';
import {
  evaluate,
  schedulingSteps,
  shippedLibrary,
  summarise,
  type EvaluateOptions,
  type Evaluation,
} from '../../../core/evaluation';
import { changesOf, runPlan } from '../../../core/evaluation/crews/plan-run';
import type { Project } from '../../../core/project';
import type { WorkItem } from '../../../core/work';
import { figure, item } from '../estimate/small';
import { demoProject, estimated } from './demo';

const OPTIONS: EvaluateOptions = { today: '2026-11-24', seed: 1, schedules: 3, upright: false };

/** An own item that scales from nothing: one of it. */
const own = (id: string, more: object = {}) => item(id, { driver: 'one-project', place: 'office', ...more });
const fee = (id: string, dollars: string, more: object = {}) =>
  own(id, { feeFixed: figure(dollars, 'USD'), ...more });

/** A project of these items alone, at the prices of their year. */
function only(items: readonly WorkItem[], change: Partial<Project> = {}): Project {
  const project = demoProject();
  return {
    ...project,
    rates: { ...project.rates, fixedPriceYear: 2025, wages: [], overrides: [] },
    ...{ ownItems: [...items], quotes: [], relationships: [], options: {} },
    items: shippedLibrary().items.map(one => ({ item: one.id, include: false, note: 'left out' })),
    scenarios: [
      { id: 'first', title: 'First', changes: [] },
      { id: 'second', title: 'Second', changes: [{ at: '/calendars/start', to: '2028-01-03' }] },
    ],
    ...change,
  };
}
const summaryOf = (evaluation: Evaluation) => summarise(estimated(evaluation));

describe('a project of three fees', () => {
  const fees = () => [
    fee('permit', '1000', { contract: false, stage: 'permits' }),
    fee('paint', '400', { stage: 'yard' }),
    fee('wash', '600', { stage: 'yard' }),
  ];

  it('is added up by line, stage, element and basis, contract work with its mark-ups', () => {
    const summary = summaryOf(evaluate(only(fees()), OPTIONS));
    const cents = (id: string) => summary.lines.find(line => line.id === id)?.total?.cents ?? Number.NaN;
    expect(cents('permit')).toBe(100_000);
    // Both contract lines bear the same mark-ups: together more than 1 000 dollars, as 600 to 400, but for a cent.
    expect(cents('wash') + cents('paint')).toBeGreaterThan(100_000);
    expect(Math.abs(cents('wash') / 3 - cents('paint') / 2)).toBeLessThan(1);
    const total = cents('permit') + cents('wash') + cents('paint');
    expect(summary.total?.cents).toBe(total);
    expect([summary.byStage.permits?.cents, summary.byStage.yard?.cents, summary.byStage.tow?.cents]).toEqual(
      [100_000, total - 100_000, 0],
    );
    expect(summary.byElement.fee?.cents).toBe(200_000);
    expect(summary.byElement['mark-up']?.cents).toBe(total - 200_000);
    expect([summary.contractCost?.cents, summary.ownerCost?.cents]).toEqual([100_000, 100_000]);
    expect(summary.byBasis?.published.cents).toBe(total);
    expect(summary.uncheckedShare).toBe(0);
    const line = summary.lines.find(one => one.id === 'wash');
    expect(line).toMatchObject({
      ...{
        id: 'wash',
        stage: 'yard',
        title: 'The wash',
        contract: true,
        quantity: 1,
        unit: 'each',
        hours: 0,
      },
      bases: { fee: 'published' },
    });
  });

  it('has a line of nothing without a basis, and counts it nowhere', () => {
    const summary = summaryOf(evaluate(only([fee('permit', '0', { contract: false })]), OPTIONS));
    expect(summary.lines[0]?.bases).toEqual({});
    expect([summary.total?.cents, summary.uncheckedShare]).toEqual([0, 0]);
  });

  it('shares the mark-ups of a line over the bases of its elements, by their money', () => {
    const mixed = own('paint', {
      feeFixed: figure('300', 'USD', { basis: 'judgement' }),
      materialPerUnit: figure('100', 'USD/each', { basis: 'quoted' }),
    });
    const { byBasis, total, uncheckedShare } = summaryOf(evaluate(only([mixed]), OPTIONS));
    // 300 of 400 dollars, and of what is put on them: three quarters.
    expect(Math.abs((byBasis?.judgement.cents ?? 0) / (total?.cents ?? 1) - 0.75)).toBeLessThan(0.0001);
    expect((byBasis?.judgement.cents ?? 0) + (byBasis?.quoted.cents ?? 0)).toBe(total?.cents);
    expect(uncheckedShare).toBeCloseTo(0.75, 4);
  });

  it('whose price cannot be read has no total, no part of it by element or basis, and no share', () => {
    const summary = summaryOf(
      evaluate(only([...fees(), own('stone', { contract: false, feeFixed: figure('5', 'm') })]), OPTIONS),
    );
    expect([summary.total, summary.byBasis, summary.uncheckedShare, summary.byElement.fee]).toEqual([
      ...[undefined, undefined],
      ...[undefined, undefined],
    ]);
  });
});

describe('an evaluation', () => {
  const wait = (days: string) => own('wait', { calendar: 'continuous', duration: figure(days, 'day') });

  it('is of the first scenario unless another is named, with its letter, and of none that is not there', () => {
    const project = only([wait('10')]);
    const first = evaluate(project, OPTIONS);
    const second = evaluate(project, { ...OPTIONS, scenario: 'second' });
    expect([first.letter, first.scenario.id, estimated(first).schedule.start]).toEqual([
      ...['A', 'first'],
      project.calendars.start,
    ]);
    expect([second.letter, second.scenario.id, estimated(second).schedule.start]).toEqual([
      ...['B', 'second', '2028-01-03'],
    ]);
    expect([second.today, 'upright' in second]).toEqual(['2026-11-24', false]);
    expect(evaluate(demoProject(), OPTIONS)).not.toHaveProperty('upright');
    expect(() => evaluate(project, { ...OPTIONS, scenario: 'third' })).toThrow(/third/);
  });

  it('of a document with a fault that leaves nothing to work out has findings alone', () => {
    const project = only([wait('10')]);
    const hull = evaluate({ ...project, vessel: { ...project.vessel, hullType: 'airship' } }, OPTIONS);
    expect(hull.estimate).toBeUndefined();
    expect(hull.findings.map(one => one.code)).toContain('document/unknown-hull-type');
    const twice = evaluate(only([wait('10'), wait('12')]), OPTIONS);
    expect(twice.estimate).toBeUndefined();
    expect(twice.findings.map(one => one.code)).toContain('document/same-key-twice');
  });

  it('with dates held prices a new plan at those, without a check, until it is scheduled', () => {
    const fees = { contract: false, feeFixed: figure('100', 'USD') };
    const before = estimated(evaluate(only([wait('10'), own('permit', fees)]), OPTIONS)).schedule;
    const longer = only([wait('40'), own('permit', fees)]);
    const effort = { ...OPTIONS, seed: 9 };
    const held = evaluate(longer, { ...effort, held: before });
    expect([held.estimate?.datesHeld, held.estimate?.schedule.finish]).toEqual([true, before.finish]);
    expect(summaryOf(held).total?.cents).toBe(10_000);
    const parts = estimated(held);
    expect([...schedulingSteps(parts, effort)].length).toBeGreaterThan(0);
    const settled = evaluate(longer, { ...effort, held: before });
    expect(settled.estimate).not.toHaveProperty('datesHeld');
    expect((settled.estimate?.schedule.finish ?? '') > (before.finish ?? '')).toBe(true);
  });

  it('counts the people of an item whole, with as many crews as it has', () => {
    const crew = shippedLibrary().rateBook.crews[0];
    const people = (crew?.members ?? []).reduce((sum, one) => sum + Number(one.people.value), 0);
    const dig = own('dig', {
      crew: crew?.id,
      hoursPerUnit: figure('80', 'h/each'),
      crewsAtOnce: figure('2', '1'),
    });
    const { planned, problem } = estimated(evaluate(only([dig, wait('10')]), OPTIONS));
    expect(planned.find(one => one.item.id === 'dig')).toMatchObject({
      ...{ unit: 'work-day', crews: 2, crewSize: Math.ceil(people) },
    });
    expect(planned.find(one => one.item.id === 'wait')).toMatchObject({
      ...{ unit: 'day', days: 10, crews: 0, crewSize: 0 },
    });
    expect(problem.activities.find(one => one.id === 'dig')?.uses).toEqual({ [crew?.id ?? '']: 2 });
  });
});

describe('another plan of the same project', () => {
  const present = { shift: 'one-shift', start: '2027-01-04' };

  it('is told as changes of the document: shift and start where they are others, and the crews of items', () => {
    const project = only([], { items: [{ item: 'dig', note: 'Agreed', notBefore: '2027-03-01' }] });
    expect(changesOf(project, present, { ...present, crews: [] })).toEqual([]);
    expect(changesOf(project, present, { shift: 'two-shifts', start: '2027-02-01', crews: [] })).toEqual([
      { at: '/options/shift-pattern', to: 'two-shifts' },
      { at: '/calendars/start', to: '2027-02-01' },
    ]);
    const crews = ['dig', 'fill'].map(id => ({
      ...{ item: id, title: id, size: 'more', words: 'half as many more' },
      ...{ crews: 3, crewSize: 4, planned: 2 },
    }));
    const number = {
      ...{ value: '3', unit: 'each', basis: 'judgement', source: 'Crew plan: half as many more' },
    };
    expect(changesOf(project, present, { ...present, crews })).toEqual([
      { at: '/items/dig', to: { item: 'dig', note: 'Agreed', notBefore: '2027-03-01', crews: number } },
      { at: '/items/fill', to: { item: 'fill', note: '', crews: number } },
    ]);
  });

  it('is worked out whole with these changes, and is none where nothing can be priced', () => {
    const project = only([fee('permit', '1000', { contract: false })]);
    const later = [{ at: '/calendars/start', to: '2029-01-02' }];
    const ran = runPlan(project, later, OPTIONS);
    expect([ran?.total, ran?.parts.schedule.start]).toEqual([1000, '2029-01-02']);
    expect(runPlan(project, [{ at: '/vessel/hullType', to: 'airship' }], OPTIONS)).toBeUndefined();
    const stone = only([own('stone', { contract: false, feeFixed: figure('5', 'm') })]);
    expect(runPlan(stone, [], OPTIONS)).toBeUndefined();
  });
});
