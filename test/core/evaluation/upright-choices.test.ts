import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  evaluate,
  measurementPrices,
  openingWork,
  shippedLibrary,
  uprightChoices,
} from '../../../core/evaluation';
import { projectSchema } from '../../../core/project';
import { compareScenarios, comparisonJson } from '../../../core/scenario';
import { kgAfterRemoval } from '../../../core/stability';
import { demoProject, estimated } from './demo';

const OPTIONS = { today: '2026-11-24', seed: 1, schedules: 20 };
const project = demoProject();
const evaluation = evaluate(project, OPTIONS);
const found = uprightChoices(evaluation, OPTIONS);

function choice(id: string) {
  const one = found?.each.find(({ ids }) => ids[0] === id);
  if (one === undefined) throw new Error(`no choice ${id}`);
  return one;
}

describe('choices of the invented example', () => {
  it('are more topside off, a bulkhead cut, low ballast, a length kept until late and the other method', () => {
    expect(found?.each.map(({ ids }) => ids[0])).toEqual([
      'topside-half',
      'topside-most',
      'bulkhead-cut',
      'more-ballast',
      'solid-ballast',
      'late-length',
      'by-scuttling',
    ]);
  });

  it('cost what the estimate with the choice in it costs more, to the cent', () => {
    const half = { at: '/options/topside-extent', to: 'half' };
    const base = estimated(evaluate(project, { ...OPTIONS, upright: false }));
    const scenarios = [{ id: 'half', title: 'Half', changes: [half] }];
    const other = estimated(evaluate({ ...project, scenarios }, { ...OPTIONS, upright: false }));
    const direct = ({ money }: ReturnType<typeof estimated>) =>
      money.lines.scope.rows.reduce(
        (cents, row) => cents + (money.result.money(money.lines.columns.direct, row.key)?.cents ?? NaN),
        0,
      );
    expect(choice('topside-half').cost).toBeCloseTo((direct(other) - direct(base)) / 100, 6);
    expect(choice('topside-half').days).toBe(
      (other.schedule.workDays ?? NaN) - (base.schedule.workDays ?? NaN),
    );
  });

  it('cost the same when nothing was evaluated before them', () => {
    const half = { at: '/options/topside-extent', to: 'half' };
    const scenarios = [{ id: 'half', title: 'Half', changes: [half] }];
    const fresh = { ...OPTIONS, upright: false, library: { ...shippedLibrary() } };
    const directOf = (one: ReturnType<typeof estimated>) =>
      one.money.result.money(one.money.sums.direct)?.cents;
    const alone = estimated(evaluate({ ...project, scenarios }, fresh));
    evaluate(project, { ...OPTIONS, upright: false });
    const after = estimated(evaluate({ ...project, scenarios }, { ...OPTIONS, upright: false }));
    expect(directOf(after)).toBe(directOf(alone));
  });

  it('more topside off costs more and heels less, the more so the more comes off', () => {
    const [half, most] = [choice('topside-half'), choice('topside-most')];
    expect(half.cost).toBeGreaterThan(0);
    expect(most.cost).toBeGreaterThan(half.cost);
    expect(half.heelChangeDegrees).toBeLessThan(0);
    expect(most.heelChangeDegrees).toBeLessThan(half.heelChangeDegrees ?? 0);
  });

  it('each say what they do to evenness and to the list of the simulation', () => {
    for (const one of found?.each ?? []) {
      expect(one.unevenness).toBeGreaterThanOrEqual(0);
      expect(one.unevennessChange).toBeDefined();
      expect(one.peakListDegrees).toBeGreaterThanOrEqual(0);
    }
  });

  it('say that no set improves the verdict while KG is assumed, and which narrows the ranges', () => {
    expect(found?.cheapest).toBeUndefined();
    expect(found?.message).toMatch(/^None of any set of up to 3 of the choices improves/);
    expect(found?.narrows?.worst).toBe('stays up');
  });

  it('tell what to change in the document to take them', () => {
    expect(found?.changes['topside-half']).toEqual([{ at: '/options/topside-extent', to: 'half' }]);
    expect(found?.changes['more-ballast']?.[0]?.at).toBe('/items/water-ballast');
  });
});

describe('a measured KG', () => {
  it('leaves a verdict that the cheapest set improves by a step, estimated as a whole', () => {
    const kg = {
      value: '7.9',
      unit: 'm',
      low: '7.85',
      high: '7.95',
      basis: 'surveyed',
      source: 'Inclining',
      year: 2026,
    };
    const measured = projectSchema.parse({ ...project, vessel: { ...project.vessel, kg } });
    const seen = evaluate(measured, OPTIONS);
    expect(seen.upright?.verdict).not.toBe('cannot tell');
    const choices = uprightChoices(seen, OPTIONS);
    expect(choices?.cheapest?.verdict).not.toBe(seen.upright?.verdict);
    expect(choices?.cheapestPrice?.cost).toBeDefined();
    const cheaper = choices?.each.filter(({ cost }) => cost < (choices.cheapest?.cost ?? 0)) ?? [];
    for (const one of cheaper) expect(one.verdict).toBe(seen.upright?.verdict);
  });
});

describe('the measurement that would settle "cannot tell"', () => {
  it('is an inclining here, at the direct cost and days of its work item', () => {
    const { money, schedule } = estimated(evaluation);
    const direct = money.result.money(money.lines.columns.direct, 'inclining');
    const activity = schedule.activities.find(({ id }) => id === 'inclining');
    expect(evaluation.upright?.settles).toMatchObject({
      measurement: 'inclining',
      cost: (direct?.cents ?? NaN) / 100,
      days: activity?.workDays,
    });
  });

  it('has a price for each of the four measurements', () => {
    expect(Object.keys(measurementPrices(estimated(evaluation))).sort()).toEqual([
      'bulkhead survey',
      'draught survey',
      'inclining',
      'weight list',
    ]);
  });
});

describe('work that follows from the sizes of the openings', () => {
  it('has the number of openings, the length of cut and the air escapes of the sizing as its quantities', () => {
    const rows = new Map(openingWork(estimated(evaluation)).map(row => [row.id, row]));
    const sizing = evaluation.upright?.sizing ?? [];
    const sum = (of: (size: (typeof sizing)[number]) => number) =>
      sizing.reduce((all, size) => all + of(size), 0);
    expect(rows.get('opening-set-up')?.quantity).toBe(sum(size => size.openings));
    expect(rows.get('vent-openings-cut')?.quantity).toBe(sum(size => size.ventCount));
    expect(rows.get('shell-openings-cut')?.quantity).toBeCloseTo(
      sum(size => size.cutLength),
      1,
    );
    expect(rows.get('shell-openings-cut')?.cost).toBeGreaterThan(0);
    expect(rows.get('shell-openings-cut')?.material).toBeGreaterThan(0);
  });
});

describe('comparison of the scenarios', () => {
  const evaluations = project.scenarios.map(({ id }) => evaluate(project, { ...OPTIONS, scenario: id }));
  const row = z.record(z.string(), z.unknown());
  const json = z
    .object({ scenarios: z.array(row), bridges: z.array(row) })
    .parse(JSON.parse(JSON.stringify(comparisonJson(compareScenarios(evaluations)))));
  const at = (i: number, key: string) => Number(json.scenarios[i]?.[key]);

  it('shows dollars, work days and degrees of greatest heel of each, and what separates them', () => {
    for (const i of [0, 1, 2]) {
      expect(at(i, 'total')).toBeGreaterThan(0);
      expect(at(i, 'directCost')).toBeGreaterThan(0);
      expect(at(i, 'workDays')).toBeGreaterThan(0);
      expect(at(i, 'greatestHeelDegrees')).toBeGreaterThan(0);
    }
    expect(json.bridges[0]?.['workDays']).toBe(at(1, 'workDays') - at(0, 'workDays'));
    expect(json.bridges[0]?.['greatestHeelDegrees']).toBeCloseTo(
      at(1, 'greatestHeelDegrees') - at(0, 'greatestHeelDegrees'),
      9,
    );
  });

  it('more topside mass off raises the direct cost and changes GM by the formula of KG after removal', () => {
    const half = found?.each.find(({ ids }) => ids[0] === 'topside-half');
    expect(half?.cost).toBeGreaterThan(0);
    // KG2 = (W KG - w kg) / (W - w): Lewis (ed.), Principles of Naval Architecture, 1988, vol. I.
    expect(kgAfterRemoval(8200, 7, 200, 15)).toBeCloseTo(6.8, 9);
    expect(json.bridges[0]?.['tonnesTakenOff']).toBeGreaterThan(0);
    expect(json.bridges[0]?.['lowestGmMetres']).toBeGreaterThan(0);
  });
});
