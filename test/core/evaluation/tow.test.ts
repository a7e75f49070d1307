import { describe, expect, it } from 'vitest';
import { evaluate, uprightChoices } from '../../../core/evaluation';
import { projectSchema, type Project } from '../../../core/project';
import { towPlan } from '../../../core/towing';
import { demoProject, estimated } from './demo';

const OPTIONS = { today: '2026-11-24', seed: 1, schedules: 20 };
const project = demoProject();
const figure = (value: string, unit: string) =>
  ({ value, unit, basis: 'quoted', source: 'Test', year: 2026 }) as const;

function withSite(change: Partial<Project['site']>): Project {
  return projectSchema.parse({ ...project, site: { ...project.site, ...change } });
}

describe('the tow of the invented example', () => {
  const evaluation = evaluate(project, OPTIONS);

  it('takes the days of distance over speed and the weather allowance, and the estimate agrees', () => {
    // 210 nautical miles at 5.5 knots are 210 / 5.5 / 24 = 1.591 days; 30 % for weather 2.068 (arithmetic).
    expect(evaluation.tow?.steadyDays).toBeCloseTo(1.5909, 4);
    expect(evaluation.tow?.plannedDays).toBeCloseTo(2.0682, 4);
    expect(evaluation.tow?.scheduledDays).toBe(2);
    expect(evaluation.findings.map(({ code }) => code)).not.toContain('towing/days-differ');
  });

  it('has surveyor and Coast Guard as hold points with their day before the tow begins', () => {
    const { schedule, problem } = estimated(evaluation);
    const start = schedule.activities.find(({ id }) => id === 'ocean-tow')?.start ?? '';
    const held = evaluation.tow?.scheduledHoldPoints ?? [];
    expect(held.map(({ id }) => id)).toEqual(['tow-survey', 'tow-plan-review', 'acceptance-letter']);
    for (const { finish } of held) expect((finish ?? '9') <= start).toBe(true);
    expect(
      problem.relationships.some(({ from, to }) => from === 'tow-plan-review' && to === 'tow-survey'),
    ).toBe(true);
  });

  it('lists what has to be tight', () => {
    expect(evaluation.tow?.integrityList.length).toBeGreaterThan(4);
  });

  it('prices the propellers left locked: dearer to tow, at the change of the whole estimate', () => {
    const choice = uprightChoices(evaluation, OPTIONS)?.propellers;
    expect(choice?.title).toMatch(/locked/);
    expect(choice?.bollardPull).toBeGreaterThan(1);
    expect(choice?.cost).not.toBe(0);
  });
});

describe('the speed of the tow', () => {
  it('drives the days of the tow, and with them tug and fuel', () => {
    const slow = evaluate(withSite({ towSpeed: figure('3', 'kn') }), { ...OPTIONS, upright: false });
    // 210 / 3 / 24 = 2.917 days, 30 % for weather 3.79: four whole days (arithmetic).
    expect(slow.tow?.scheduledDays).toBe(4);
    const plain = evaluate(project, { ...OPTIONS, upright: false });
    const tug = (one: typeof slow) => {
      const { money } = estimated(one);
      return money.result.money(money.lines.columns.direct, 'tow-tug')?.cents ?? NaN;
    };
    expect(tug(slow) / tug(plain)).toBeCloseTo(2, 1);
  });

  it('gives way to days the planner sets, with a finding where they lie apart', () => {
    const items = [{ item: 'ocean-tow', duration: figure('1', 'day'), note: 'A day was thought enough' }];
    const seen = evaluate(
      projectSchema.parse({ ...withSite({ towSpeed: figure('3', 'kn') }), items }),
      OPTIONS,
    );
    expect(seen.tow?.scheduledDays).toBe(1);
    expect(seen.findings.find(({ code }) => code === 'towing/days-differ')?.message).toMatch(/ask for 3\.8/);
  });
});

describe('the route', () => {
  it('blocks where a bridge, a channel or the berth is too low or too shallow', () => {
    const site = {
      lowestBridge: figure('15', 'm'),
      shallowestChannel: figure('5', 'm'),
      berthDepth: figure('4.5', 'm'),
    };
    const places = evaluate(withSite(site), { ...OPTIONS, upright: false }).tow?.findings.map(
      ({ place }) => place,
    );
    expect(places).toEqual(['/site/lowestBridge', '/site/shallowestChannel', '/site/berthDepth']);
  });

  it('says nothing where they leave room', () => {
    const site = {
      lowestBridge: figure('60', 'm'),
      shallowestChannel: figure('12', 'm'),
      berthDepth: figure('9', 'm'),
    };
    expect(evaluate(withSite(site), { ...OPTIONS, upright: false }).tow?.findings).toEqual([]);
  });
});

describe('a tow plan', () => {
  it('has no force at no speed and no wind but the wave making a tonne of the barge rule', () => {
    const still = towPlan({
      length: 100,
      breadth: 20,
      draught: 4,
      displacement: 8000,
      wettedSurface: 2700,
      windage: 0,
      windKnots: 0,
      knots: 0.1,
      nauticalMiles: 10,
      daysSinceDock: 0,
      route: {},
    });
    expect(still.total).toBeCloseTo(12 * 8, 0);
  });
});
