import { describe, expect, test } from 'vitest';
import { materialOf } from '../../../core/evaluation/rules';
import type { Project } from '../../../core/project';
import { why } from '../../../core/sheet';
import type { WorkItem } from '../../../core/work';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const { library } = evaluated(base);
const vessel = (changes: Partial<Project['vessel']>): Project => ({
  ...base,
  vessel: { ...base.vessel, ...changes },
});
type Parts = ReturnType<typeof estimated>;

/** What a line is without its dates: quantity and hours of the work sheet, the same for a span of any length. */
function worked({ work }: Parts, id: string) {
  const { columns } = work.items;
  return [work.result.number(columns.number, id), work.result.number(columns.hours, id)] as const;
}

/** The direct cost of a line: before mark-ups, of which bond and tax are shared over all lines. */
function directCents({ money }: Parts, id: string): number | undefined {
  return money.result.money(money.lines.columns.direct, id)?.cents;
}

/** Materials whose presence decides an item: its own, or those of what fills the streams it is there for. */
function materialsOf(item: WorkItem, all: readonly WorkItem[]): (string | undefined)[] {
  const own = materialOf(item, library);
  if (own !== undefined) return [own];
  const streams = [
    ...(item.disposes === undefined ? [] : [item.disposes]),
    ...item.when.flatMap(condition => ('stream' in condition ? [condition.stream] : [])),
  ];
  const filling = all.filter(other => other.wastes.some(waste => streams.includes(waste.stream)));
  return filling.length === 0 ? [undefined] : filling.map(other => materialOf(other, library));
}

function compared(before: Parts, after: Parts) {
  const kept = new Set(after.items.map(item => item.id));
  const there = new Set(before.items.map(item => item.id));
  return {
    lost: before.items.filter(item => !kept.has(item.id)),
    gained: after.items.filter(item => !there.has(item.id)),
    both: before.items.filter(item => kept.has(item.id)),
  };
}

/** Whether the why of a line's direct cost leads to a date, a length or a month that the schedule gave. */
function namesTheSchedule({ money }: Parts, id: string): boolean {
  const { steps } = why(money.result, `lines/${id}/direct`);
  return [...steps.values()].some(step => step.given?.basis === 'schedule');
}

const byBuild = new Set(
  library.materials
    .filter(material => material.decidedBy === 'built' && material.eras.length > 1)
    .map(material => material.id),
);

describe('build year 1955 to 1985 with refit and coating unchanged', () => {
  const later = { lastRefit: 1990, lastCoating: 1999 };
  const old = estimated(evaluated(vessel({ built: 1955, ...later })));
  const young = estimated(evaluated(vessel({ built: 1985, ...later })));
  const { lost, gained, both } = compared(old, young);

  test('brings no line and takes away only lines whose material has an era rule by the build', () => {
    expect(gained.map(item => item.id)).toEqual([]);
    expect(lost.length).toBeGreaterThan(10);
    const wrong = lost.filter(item => !materialsOf(item, old.items).some(id => byBuild.has(id ?? '')));
    expect(wrong.map(item => item.id)).toEqual([]);
  });

  test('shrinks quantity and hours of lines with such a material, and touches those of no other', () => {
    const shrunk = both.filter(item => {
      const [a, b] = [worked(old, item.id), worked(young, item.id)];
      expect((b[0] ?? 0) <= (a[0] ?? 0) && (b[1] ?? 0) <= (a[1] ?? 0), item.id).toBe(true);
      return b[0] !== a[0] || b[1] !== a[1];
    });
    expect(shrunk.length).toBeGreaterThan(0);
    const wrong = shrunk.filter(item => !materialsOf(item, old.items).some(id => byBuild.has(id ?? '')));
    expect(wrong.map(item => item.id)).toEqual([]);
  });

  test('leaves tributyltin untouched', () => {
    expect(worked(young, 'antifouling-removal')).toEqual(worked(old, 'antifouling-removal'));
    expect(worked(young, 'haul-antifouling-waste')).toEqual(worked(old, 'haul-antifouling-waste'));
    expect(young.input.presence.get('tbt-antifouling')).toEqual(old.input.presence.get('tbt-antifouling'));
  });

  test('changes every other line only through dates and lengths of the schedule, which its why names', () => {
    const other = both.filter(
      item =>
        !materialsOf(item, old.items).some(id => byBuild.has(id ?? '')) &&
        directCents(old, item.id) !== directCents(young, item.id),
    );
    expect(other.length).toBeGreaterThan(5);
    expect(other.filter(item => !namesTheSchedule(young, item.id)).map(item => item.id)).toEqual([]);
  });
});

describe('last coating 1999 to 2005', () => {
  test('removes tributyltin, its work and its haul, and nothing else', () => {
    const [painted, recoated] = [vessel({ lastCoating: 1999 }), vessel({ lastCoating: 2005 })].map(project =>
      estimated(evaluated(project)),
    );
    if (painted === undefined || recoated === undefined) throw new Error('two ships');
    const { lost, gained, both } = compared(painted, recoated);
    expect(gained).toEqual([]);
    expect(lost.map(item => item.id).sort()).toEqual(['antifouling-removal', 'haul-antifouling-waste']);
    for (const item of both) expect(worked(recoated, item.id), item.id).toEqual(worked(painted, item.id));
  });
});

describe('doubling the lightship', () => {
  const { lightship } = base.vessel;
  if (lightship === undefined) throw new Error('the example has a lightship');
  const { low: _low, high: _high, ...rest } = lightship;
  const heavier = { ...rest, value: String(Number(lightship.value) * 2) };
  const before = estimated(evaluated(base));
  const after = estimated(evaluated(vessel({ lightship: heavier })));
  const measured = new Set(base.survey.measured.map(row => row.driver));
  const value = ({ work }: Parts, driver: string) => work.result.number(work.drivers.columns.number, driver);
  const measureOf = (parts: Parts, id: string) => {
    const { measures } = parts.work.takeOff;
    const found = Object.entries(measures).find(([key]) => key === id)?.[1];
    return found === undefined ? value(parts, id) : parts.work.result.number(found);
  };

  test('doubles the measure itself', () => {
    const [a = 0, b = 0] = [measureOf(before, 'lightship'), measureOf(after, 'lightship')];
    expect(b / a).toBeCloseTo(2, 6);
  });

  test('scales every driver from it by its stated exponent, and leaves those that do not hang on it', () => {
    const hanging = new Set<string>(['lightship']);
    let checked = 0;
    for (const driver of library.drivers) {
      const [a, b] = [value(before, driver.id), value(after, driver.id)];
      if (a === undefined || b === undefined || measured.has(driver.id)) continue;
      const bases = [measureOf(before, driver.base) ?? 0, measureOf(after, driver.base) ?? 0] as const;
      const ratio = bases[1] / bases[0];
      if (hanging.has(driver.base)) hanging.add(driver.id);
      const fixed = Number(driver.fixed?.value ?? 0);
      const expected = (a - fixed) * ratio ** Number(driver.exponent?.value ?? 1) + fixed;
      const step = 10 ** -driver.decimals;
      // The base is rounded too: half a step of it moves the driver by its own slope.
      const slope = 1 + Math.abs(ratio) ** Number(driver.exponent?.value ?? 1);
      expect(Math.abs(b - expected), driver.id).toBeLessThanOrEqual(slope * step + 1e-6 * Math.abs(b));
      if (hanging.has(driver.id)) checked += 1;
    }
    expect(checked).toBeGreaterThan(15);
  });

  test('scales the quantity of every line by the exponent it states over its driver', () => {
    let moved = 0;
    for (const item of before.items) {
      if (item.span !== undefined || item.disposes !== undefined) continue;
      const [a, b] = [worked(before, item.id)[0], worked(after, item.id)[0]];
      const [x, y] = [value(before, item.driver), value(after, item.driver)];
      if (a === undefined || b === undefined || x === undefined || y === undefined || x === 0) continue;
      const fixed = Number(item.fixed?.value ?? 0);
      const expected = (a - fixed) * (y / x) ** Number(item.exponent?.value ?? 1) + fixed;
      const step = 10 ** -item.decimals;
      const slope = 1 + (y / x) ** Number(item.exponent?.value ?? 1);
      expect(Math.abs(b - expected), item.id).toBeLessThanOrEqual(slope * step + 1e-6 * Math.abs(b));
      if (y !== x) {
        expect(Math.sign(b - a), item.id).toBe(Math.sign(y - x));
        moved += 1;
      }
    }
    expect(moved).toBeGreaterThan(60);
  });

  test('scales the tonnes of every haul with what fills it', () => {
    for (const item of before.items.filter(candidate => candidate.disposes !== undefined)) {
      const tonnes = ({ work }: Parts) =>
        work.rows
          .flatMap(row => row.item.wastes.map(waste => [row.item.id, waste.stream] as const))
          .filter(([, stream]) => stream === item.disposes)
          .reduce(
            (sum, [id, stream]) =>
              sum + (work.result.number(work.wastes.columns.tonnes, `${id}.${stream}`) ?? 0),
            0,
          );
      for (const parts of [before, after])
        expect(Math.abs((worked(parts, item.id)[0] ?? 0) - tonnes(parts)), item.id).toBeLessThanOrEqual(
          0.0101,
        );
    }
  });
});
