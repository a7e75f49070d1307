import { describe, expect, test } from 'vitest';
import { addMonths, dayOf, isoOf } from '../../../core/calendar';
import { estimateJson, evaluate, summarise } from '../../../core/evaluation';
import { materialOf } from '../../../core/evaluation/rules';
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

describe('a survey below the trip-point', () => {
  const sampled = (result: string, materials: readonly string[]): Project => ({
    ...base,
    survey: {
      ...base.survey,
      laboratory: base.survey.laboratory
        .filter(row => !materials.includes(row.material))
        .concat(
          materials.map((material, i) => ({
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
        ),
    },
  });
  const families = ['pcb-cable', 'pcb-felt'];
  const removalsOf = (materials: readonly string[]) =>
    parts.items
      .filter(item => materials.includes(materialOf(item, library) ?? ''))
      .map(item => item.id)
      .sort();

  test('removes exactly the lines of the sampled materials, and the scenario stays permittable', () => {
    const clear = sampled('ND', families);
    expect(removalsOf(families)).toEqual(
      expect.arrayContaining(['cable-stripping', 'cable-way-cleaning', 'pcb-felt-removal']),
    );
    expect(gone(base, clear).sort()).toEqual(removalsOf(families));
    expect(gone(clear, base)).toEqual([]);
    expect(estimateJson(evaluated(clear))).toMatchObject({ permittable: true, unmetGoals: [] });
  });

  test('of every solid PCB also removes its haul, the notice to the landfill and what is watched because of it', () => {
    const solids = library.materials
      .filter(material => material.family === 'pcb' && !['liquid-pcb', 'pcb-ballasts'].includes(material.id))
      .map(material => material.id);
    const clear = sampled('49.9', solids);
    expect(gone(base, clear).sort()).toEqual(
      [...removalsOf(solids), 'haul-pcb-solids', 'pcb-landfill-notice', 'tissue-sampling'].sort(),
    );
    expect(gone(base, sampled('50.0', solids))).toEqual([]);
    expect(evaluated(clear).findings.map(finding => finding.code)).not.toContain('rules/pcb-route');
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

  test('moving one activity over a month’s end changes that month’s category, its pick-ups and the disposal cost', () => {
    const before = disposalOf(base);
    const counting = new Set(library.rateBook.streams.filter(row => row.counts).map(row => row.id));
    const makers = parts.items.filter(item => item.wastes.some(waste => counting.has(waste.stream)));
    const moved = makers.flatMap(({ id }) => {
      const activity = parts.schedule.activities.find(candidate => candidate.id === id);
      if (activity === undefined) return [];
      const left = activity.finish.slice(0, 7);
      const next = isoOf(addMonths(dayOf(`${left}-01`), 1)).slice(0, 7);
      const after = disposalOf({
        ...base,
        items: [{ item: id, notBefore: `${next}-03`, note: 'moved over the month’s end' }],
      });
      const of = ({ months }: typeof before) => months.find(row => row.month === left);
      const [a, b] = [of(before), of(after)];
      return [
        {
          id,
          category: a?.category !== b?.category,
          pickUps: a?.pickUps !== b?.pickUps,
          cost: after.cents !== before.cents,
        },
      ];
    });
    expect(moved.length).toBeGreaterThan(3);
    expect(moved.filter(row => row.category && row.pickUps && row.cost).map(row => row.id)).not.toEqual([]);
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

  test('amounts are exact where doubles are not: 1.005 and 8.575 USD round half up', () => {
    const of = (value: string) =>
      direct(
        quoted(
          quote({
            covers: [{ item: 'pcb-felt-removal', share: '1' }],
            amount: { value, unit: 'USD', basis: 'quoted', source: 'Invented quote', year: 2026 },
          }),
        ),
        'pcb-felt-removal',
      ).direct;
    expect([1.005 * 100, 8.575 * 100].map(Math.round)).toEqual([100, 857]);
    expect([of('1.005'), of('8.575')]).toEqual([101, 858]);
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
    const told = evaluated(wages(1.1)).findings.find(({ code }) => code === 'rates/below-wage-table');
    expect(told?.weight).toBe('notes');
    expect(codes(wages(0.9))).not.toContain('rates/below-wage-table');
  });

  test('scrap and tug rates older than this year ask; a rate of this year, entered, does not', () => {
    const asked = (project: Project, today = '2026-11-24') =>
      evaluate(project, { today, seed: 1, schedules: 20, upright: false })
        .findings.filter(finding => finding.code === 'rates/market-rate-out-of-date')
        .map(finding => finding.message)
        .join(' ');
    const titles = [
      library.rateBook.scrap.find(row => row.id === 'cut-steel')?.title ?? '',
      library.rateBook.equipment.find(row => row.id === 'ocean-tug')?.title ?? '',
    ];
    const named = (words: string) => titles.map(title => words.includes(`${title} at $`));
    expect(named(asked(base))).toEqual([true, true]);
    const entered = (year: number): Project => {
      const rows = [
        ['scrap/cut-steel/price', library.rateBook.scrap.find(row => row.id === 'cut-steel')?.price],
        ['equipment/ocean-tug/rate', library.rateBook.equipment.find(row => row.id === 'ocean-tug')?.rate],
      ] as const;
      const overrides = rows.flatMap(([at, figure]) =>
        figure === undefined ? [] : [{ at, figure: { ...figure, year, basis: 'quoted' as const } }],
      );
      return { ...base, rates: { ...base.rates, overrides } };
    };
    expect(named(asked(entered(2026)))).toEqual([false, false]);
    expect(named(asked(entered(2025)))).toEqual([true, true]);
    // A rate of this year asks again when the year has turned.
    expect(named(asked(entered(2026), '2027-01-02'))).toEqual([true, true]);
  });

  test('rates of one year are one finding with their number and names', () => {
    const found = evaluated(base).findings.filter(one => one.code === 'rates/market-rate-out-of-date');
    const years = found.map(one => /of (\d{4}), and it is/.exec(one.message)?.[1]);
    expect(new Set(years).size).toBe(found.length);
    const counted = found.map(one => Number(/^(\d+) rates are/.exec(one.message)?.[1] ?? 1));
    const listed = found.map(one => one.message.split(' per ').length - 1);
    expect(counted).toEqual(listed);
  });
});
