import { describe, expect, test } from 'vitest';
import { estimateJson, summarise } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { whyTree, why } from '../../../core/sheet';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const evaluation = evaluated(base);
const parts = estimated(evaluation);
const { library } = evaluation;

/** The ids of lines of an evaluation. */
function lineIds(project: Project): string[] {
  return estimated(evaluated(project)).items.map(item => item.id);
}

/** Items that the first has and the second has not. */
function gone(before: Project, after: Project): string[] {
  const kept = new Set(lineIds(after));
  return lineIds(before).filter(id => !kept.has(id));
}

/** The material whose presence scales an item, through its driver and the drivers that one scales from. */
function materialOf(item: string): string | undefined {
  let driver = library.drivers.find(
    candidate => candidate.id === library.items.find(row => row.id === item)?.driver,
  );
  while (driver !== undefined && driver.material === undefined) {
    const baseOf = driver.base;
    driver = library.drivers.find(candidate => candidate.id === baseOf);
  }
  return driver?.material;
}

const vessel = (changes: Partial<Project['vessel']>): Project => ({
  ...base,
  vessel: { ...base.vessel, ...changes },
});

describe('the years of the ship', () => {
  test('build year 1955 to 1985 with later refit and coating takes away only lines whose material has an era rule by the build', () => {
    const later = { lastRefit: 1990, lastCoating: 1999 };
    const lost = gone(vessel({ built: 1955, ...later }), vessel({ built: 1985, ...later }));
    expect(lost.length).toBeGreaterThan(5);
    for (const id of lost) {
      const item = library.items.find(candidate => candidate.id === id);
      const material = library.materials.find(candidate => candidate.id === materialOf(id));
      expect(
        material?.decidedBy === 'built' || item?.disposes !== undefined || (item?.meets ?? []).length === 0,
      ).toBe(true);
    }
    expect(lost).not.toContain('antifouling-removal');
  });

  test('last coating 1999 to 2005 removes tributyltin and nothing else', () => {
    const lost = gone(vessel({ lastCoating: 1999 }), vessel({ lastCoating: 2005 }));
    expect(lost).toContain('antifouling-removal');
    for (const id of lost) expect(materialOf(id)).toBe('tbt-antifouling');
  });
});

describe('doubling the lightship', () => {
  test('scales each quantity driven by it by its stated exponent', () => {
    const { lightship } = base.vessel;
    if (lightship === undefined) throw new Error('the example has a lightship');
    const doubled = estimated(
      evaluated(
        vessel({
          lightship: {
            value: String(Number(lightship.value) * 2),
            unit: lightship.unit,
            basis: lightship.basis,
            source: lightship.source,
          },
        }),
      ),
    );
    let checked = 0;
    for (const driver of library.drivers.filter(candidate => candidate.base === 'lightship')) {
      if (base.survey.measured.some(row => row.driver === driver.id)) continue;
      const before = parts.work.result.number(parts.work.drivers.columns.number, driver.id);
      const after = doubled.work.result.number(doubled.work.drivers.columns.number, driver.id);
      if (before === undefined || after === undefined || driver.fixed !== undefined) continue;
      const expected = before * 2 ** Number(driver.exponent?.value ?? 1);
      const step = 10 ** -driver.decimals;
      expect(Math.abs(after - expected)).toBeLessThanOrEqual(2 * step);
      checked++;
    }
    expect(checked).toBeGreaterThan(3);
  });
});

describe('a survey below the trip-point', () => {
  const sampled = (result: string, materials: readonly string[]): Project => ({
    ...base,
    survey: {
      ...base.survey,
      laboratory: materials.map((material, i) => ({
        sample: `S-${i + 1}`,
        space: 'frame 40',
        material,
        analyte: 'PCB, total',
        result,
        unit: 'mg/kg',
        qualifier: '',
        reportingLimit: '5',
        date: '2026-05-04',
      })),
    },
  });
  const families = ['pcb-cable', 'pcb-felt'];

  test('removes the removal lines of the sampled materials only, and the scenario stays permittable', () => {
    const clear = sampled('ND', families);
    const lost = gone(base, clear);
    expect(lost).toContain('cable-stripping');
    expect(lost).toContain('pcb-felt-removal');
    const removals = lost.filter(id => (library.items.find(item => item.id === id)?.meets ?? []).length > 0);
    for (const id of removals) expect(families).toContain(materialOf(id));
    for (const id of lost.filter(other => !removals.includes(other)))
      expect([id, materialOf(id) ?? 'scales from what is left out']).toEqual([
        id,
        expect.stringMatching(/pcb-cable|pcb-felt|scales from what is left out/),
      ]);
    expect(estimateJson(evaluated(clear))).toMatchObject({ permittable: true, unmetGoals: [] });
  });

  test('a reporting limit above it keeps the lines and is a finding', () => {
    const unclear = sampled('< 60', families);
    expect(gone(base, unclear)).toEqual([]);
    expect(evaluated(unclear).findings.map(finding => finding.code)).toContain(
      'survey/reporting-limit-too-high',
    );
  });

  test('one result at the trip-point makes the material certain', () => {
    const found = sampled('50', families);
    expect(evaluated(found).estimate?.input.presence.get('pcb-cable')).toMatchObject({
      low: 1,
      likely: 1,
      high: 1,
    });
  });
});

describe('clean-up goals', () => {
  test('a scenario that leaves a removal out is not permittable and names the goal', () => {
    const without: Project = {
      ...base,
      items: [{ item: 'cable-stripping', include: false, note: 'left out to see' }],
    };
    expect(estimateJson(evaluated(base))).toMatchObject({ permittable: true });
    expect(estimateJson(evaluated(without))).toMatchObject({
      permittable: false,
      unmetGoals: [{ material: 'pcb-cable', leftOut: ['cable-stripping'] }],
    });
  });
});

describe('the generator category', () => {
  const disposalOf = (project: Project) => {
    const done = estimated(evaluated(project));
    const lines = summarise(done).lines.filter(line => line.id.startsWith('haul-'));
    return {
      months: done.generator?.months ?? [],
      cents: lines.reduce((sum, line) => sum + (line.elements.disposal?.cents ?? 0), 0),
    };
  };

  test('is in the estimate by month, and the why of the disposal line names it', () => {
    const json = estimateJson(evaluation);
    const byMonth = Object.entries(json['generatorCategoryByMonth'] as Record<string, string>);
    expect(byMonth.length).toBeGreaterThan(0);
    for (const [month, category] of byMonth) {
      expect(month).toMatch(/^\d{4}-\d{2}$/);
      expect(['very small', 'small', 'large']).toContain(category);
    }
    const text = JSON.stringify(whyTree(why(parts.money.result, 'lines/haul-paint-hazardous/disposal')));
    expect(text).toMatch(/(very small|small|large) generator/);
  });

  test('the sheet finds the same category as the plan in every month', () => {
    const { generation, result } = parts.money;
    if (generation === undefined) throw new Error('the example makes hazardous waste');
    for (const { month, category } of parts.generator?.months ?? []) {
      const large = result.number(generation.months.columns.large, `m${month}`);
      const small = result.number(generation.months.columns.small, `m${month}`);
      expect(large === 1 ? 'large' : small === 1 ? 'small' : 'very small').toBe(category);
    }
  });

  test('moving one activity over a month’s end changes category, pick-ups and disposal cost', () => {
    const before = disposalOf(base);
    const activity = parts.schedule.activities.find(({ id }) => id === 'treated-ballast-removal');
    if (activity === undefined) throw new Error('the example discharges treated ballast');
    const [year = 0, month = 0] = activity.finish.split('-').map(Number);
    const next = month === 12 ? `${year + 1}-01` : `${year}-${String(month + 1).padStart(2, '0')}`;
    const after = disposalOf({
      ...base,
      items: [{ item: activity.id, notBefore: `${next}-03`, note: 'moved over the month’s end' }],
    });
    const of = (months: typeof before.months, read: (row: (typeof before.months)[number]) => unknown) =>
      months.map(row => [row.month, read(row)]);
    expect(of(after.months, row => row.category)).not.toEqual(of(before.months, row => row.category));
    expect(of(after.months, row => row.pickUps)).not.toEqual(of(before.months, row => row.pickUps));
    expect(after.cents).not.toBe(before.cents);
  });
});

describe('quotes', () => {
  const quote = (changes: Partial<Project['quotes'][number]>): Project['quotes'][number] => ({
    id: 'yard-quote',
    vendor: 'Kestrel Marine (invented)',
    dated: '2026-10-01',
    validUntil: '2027-01-31',
    covers: [
      { item: 'cable-stripping', share: '1' },
      { item: 'pcb-felt-removal', share: '1' },
    ],
    exclusions: [],
    amount: { value: '100000.01', unit: 'USD', basis: 'quoted', source: 'Invented quote', year: 2026 },
    chosen: true,
    ...changes,
  });
  const quoted = (...quotes: Project['quotes']): Project => ({ ...base, quotes });
  const direct = (project: Project, id: string) => {
    const { money } = estimated(evaluated(project));
    const { columns } = money.lines;
    return {
      direct: money.result.money(columns.direct, id)?.cents ?? Number.NaN,
      computed: money.result.money(columns.computed, id)?.cents ?? Number.NaN,
    };
  };

  test('a lump sum replaces its lines to the cent in proportion to the computed cost, which stays beside it', () => {
    const project = quoted(quote({}));
    const [cable, felt] = [direct(project, 'cable-stripping'), direct(project, 'pcb-felt-removal')];
    expect(cable.direct + felt.direct).toBe(10000001);
    expect(cable.computed).toBe(direct(base, 'cable-stripping').direct);
    const share = (10000001 * cable.computed) / (cable.computed + felt.computed);
    expect(Math.abs(cable.direct - share)).toBeLessThanOrEqual(1);
  });

  test('half a line quoted keeps the other half worked out', () => {
    const half = direct(
      quoted(quote({ covers: [{ item: 'cable-stripping', share: '0.5' }] })),
      'cable-stripping',
    );
    expect(Math.abs(half.direct - 10000001 - half.computed / 2)).toBeLessThanOrEqual(3);
  });

  test('a price per unit is multiplied by the quantity of its line', () => {
    const line = summarise(parts).lines.find(candidate => candidate.id === 'cable-stripping');
    if (line?.quantity === undefined) throw new Error('the line has a quantity');
    const project = quoted(
      quote({
        covers: [{ item: line.id, share: '1' }],
        amount: {
          value: '2.5',
          unit: `USD/${line.unit}`,
          basis: 'quoted',
          source: 'Invented quote',
          year: 2026,
        },
      }),
    );
    expect(direct(project, line.id).direct).toBe(Math.round(line.quantity * 250));
  });

  test('one expired, one that leaves work out, and two for one line are findings; one not chosen changes nothing', () => {
    const codes = (project: Project) => evaluated(project).findings.map(finding => finding.code);
    expect(codes(quoted(quote({ validUntil: '2026-11-23' })))).toContain('quotes/expired');
    expect(codes(quoted(quote({ validUntil: '2026-11-24' })))).not.toContain('quotes/expired');
    expect(codes(quoted(quote({ exclusions: ['scaffolding'] })))).toContain('quotes/covers-in-part');
    expect(codes(quoted(quote({}), quote({ id: 'other' })))).toContain('quotes/covered-twice');
    expect(direct(quoted(quote({ chosen: false })), 'cable-stripping')).toEqual(
      direct(base, 'cable-stripping'),
    );
  });
});

describe('figures out of date', () => {
  test('a wage table above the rate book is a finding, one below is not', () => {
    const [trade] = library.rateBook.trades;
    if (trade === undefined) throw new Error('no trades');
    const wages = (factor: number): Project => ({
      ...base,
      rates: {
        ...base.rates,
        wages: [
          {
            trade: trade.id,
            figure: {
              ...trade.wage,
              low: undefined,
              high: undefined,
              value: (Number(trade.wage.value) * factor).toFixed(2),
            },
          },
        ],
      },
    });
    const codes = (project: Project) => evaluated(project).findings.map(finding => finding.code);
    expect(codes(wages(1.1))).toContain('rates/below-wage-table');
    expect(codes(wages(0.9))).not.toContain('rates/below-wage-table');
  });
});
