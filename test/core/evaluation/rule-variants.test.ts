import { describe, expect, it } from 'vitest';
import {
  evaluate,
  measurementPrices,
  milestones,
  roughOrder,
  shippedLibrary,
  summarise,
  towOf,
  uprightJson,
} from '../../../core/evaluation';
import { ageingFindings } from '../../../core/evaluation/ageing';
import { datedNotices, ruleFindings } from '../../../core/evaluation/rules';
import { coatingFindings, siteFindings } from '../../../core/evaluation/rules/coating-and-water';
import { classedItems } from '../../../core/evaluation/rules/leach-class';
import { splitAgainstHistory } from '../../../core/evaluation/split-history';
import type { Figure } from '../../../core/base';
import { fromCents } from '../../../core/money';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const evaluation = evaluate(base, { today: '2026-11-24', seed: 1, schedules: 20, upright: true });
const parts = estimated(evaluation);
const { library } = evaluation;
const figure = (value: string, unit: string, year?: number): Figure => ({
  ...{ value, unit, basis: 'judgement', source: 'A test' },
  ...(year === undefined ? {} : { year }),
});
const codes = (findings: readonly { code: string }[]) => findings.map(finding => finding.code);

/** The parts of the example under other options, its plan and its work as they were. */
function under(options: Record<string, string>) {
  return { ...parts, input: { ...parts.input, options: { ...parts.input.options, ...options } } };
}

describe('the last antifouling coating', () => {
  const { lastCoating: _, ...vessel } = base.vessel;
  const unknown: Project = { ...base, vessel };

  it('of an unknown year is told with the removal that is in the estimate, or without when none is', () => {
    const told = (items: typeof parts.items) =>
      coatingFindings(unknown, parts.input, items).map(finding => finding.meaning)[0];
    expect(told(parts.items)).toMatch(/stands in for it; .* is in the estimate\.$/);
    expect(told([])).toMatch(/stands in for it\.$/);
  });
});

describe('the water over the reef', () => {
  const found = (depth: Figure) => {
    const site = { ...base.site, waterDepth: depth };
    return codes(siteFindings({ ...base, site }, parts.input, parts.work, parts.schedule));
  };

  it('is not looked at where its depth is in no unit of length', () => {
    expect(found(figure('118', 'kg'))).toEqual([]);
  });

  it('that is deep enough for all of the ship raises nothing, and shallow water does', () => {
    expect(found(figure('400', 'ft'))).toEqual([]);
    expect(found(figure('70', 'ft')).length).toBeGreaterThan(0);
  });
});

describe('a leach test', () => {
  const sample = (name: string, result: string) => ({
    ...{ sample: name, space: 'Boiler room', material: 'flaking-paint', analyte: 'Lead TCLP', result },
    ...{ unit: 'mg/L', qualifier: '', reportingLimit: '0.1', date: '2026-09-14' },
  });
  const classed = (of: typeof parts.items, ...results: string[]) => {
    const laboratory = results.map((result, i) => sample(`P-${String(i)}`, result));
    return classedItems(of, library, { ...base, survey: { ...base.survey, laboratory } });
  };
  const plain = classed(shippedItems(), '0.2');
  function shippedItems() {
    const work = new Map(library.items.map(item => [item.id, item]));
    return parts.items.map(item => work.get(item.id) ?? item);
  }

  it('is told by how many samples a waste is classed, where one stands', () => {
    const sources = (of: readonly (typeof parts.items)[number][]) =>
      of.flatMap(item => item.wastes.map(waste => waste.perUnit.source)).join(' ');
    expect(sources(plain)).toContain('classed not hazardous by one sample of 2026');
    expect(sources(classed(shippedItems(), '6.2', '7.1'))).toContain(
      'classed hazardous by 2 samples of 2026',
    );
  });

  it('adds the split amounts up, with a range only where both had one', () => {
    const split = shippedItems().find(
      item => plain.find(one => one.id === item.id)?.wastes.length === item.wastes.length - 1,
    );
    if (split === undefined) throw new Error('an item of the library splits its waste');
    const bare = split.wastes.map(waste => {
      const { low: _low, high: _high, ...perUnit } = waste.perUnit;
      return { ...waste, perUnit };
    });
    const [whole, single] = [split, { ...split, wastes: bare }].map(item => classed([item], '0.2')[0]);
    const moved = (item: typeof whole) => item?.wastes.at(-1)?.perUnit;
    expect(Number(moved(whole)?.value)).toBeCloseTo(
      split.wastes.reduce((sum, waste) => sum + Number(waste.perUnit.value), 0),
      9,
    );
    expect(moved(whole)).toHaveProperty('high');
    expect(moved(single)?.value).toBe(moved(whole)?.value);
    expect(moved(single)).not.toHaveProperty('high');
  });
});

describe('rates that move with the market', () => {
  const overridden = (figures: Record<string, Figure>): Project => ({
    ...base,
    rates: { ...base.rates, overrides: Object.entries(figures).map(([at, own]) => ({ at, figure: own })) },
  });
  const told = (project: Project, today: string) =>
    ageingFindings(project, library, parts.items, today).filter(
      finding => finding.code === 'rates/market-rate-out-of-date',
    );

  it('are told one by one or together, with their year or that they have none', () => {
    const place = 'scrap/cut-steel/price';
    expect(told(base, '2025-06-01')).toEqual([]);
    const [one, ...more] = told(overridden({ [place]: figure('300', 'USD/t', 2023) }), '2025-06-01');
    expect([one?.place, more]).toEqual([`/rates/overrides/${place}`, []]);
    expect(one?.message).toMatch(/is of 2023, and it is 2025\.$/);
    const [ageless] = told(overridden({ [place]: figure('300', 'USD/t') }), '2025-06-01');
    expect(ageless?.message).toContain('is of no stated year, and it is 2025');
    expect(told(base, '2026-06-01')[0]?.message).toMatch(/^\d+ rates are of 2025/);
  });

  it('a wage in another unit is not compared with the rate book', () => {
    const wages = [{ trade: 'labourer', figure: figure('90', 'm') }];
    const asks = (of: typeof wages) =>
      codes(ageingFindings({ ...base, rates: { ...base.rates, wages: of } }, library, [], '2025-06-01'));
    expect(asks(wages)).toEqual([]);
    expect(asks([{ trade: 'labourer', figure: figure('90', 'USD/h') }])).toEqual(['rates/below-wage-table']);
  });
});

describe('notices and routes', () => {
  it('a notice that the scenario has no item for is called by its name all the same', () => {
    const items = parts.items.filter(item => item.id !== 'asbestos-notice');
    const activities = parts.schedule.activities.filter(one => one.id !== 'asbestos-notice');
    const notices = datedNotices({ ...parts, items, schedule: { ...parts.schedule, activities } });
    const notice = notices.find(one => one.item === 'asbestos-notice');
    expect(notice?.title).toBe('Asbestos notice');
    expect(notice).not.toHaveProperty('given');
  });

  it('the risk-based route without its application is told', () => {
    const found = ruleFindings(base, under({ 'pcb-route': 'risk-based' }));
    const late = found.find(finding => finding.code === 'rules/pcb-approval-first');
    expect(late?.message).toContain('under the risk-based route, without its application');
  });

  it('a space whose ends are in no unit of length is not asked for a second exit', () => {
    const exits = (project: Project) =>
      codes(ruleFindings(project, under({ 'diver-access': 'open' }))).filter(
        code => code === 'rules/diver-far-from-exit',
      ).length;
    const long = (unit: string) => {
      const compartments = base.vessel.compartments.map(space => ({
        ...{ ...space, to: { ...space.to, value: String(Number(space.to.value) + 200), unit } },
      }));
      return exits({ ...base, vessel: { ...base.vessel, compartments } });
    };
    expect([long('ft') > 0, long('kg')]).toEqual([true, 0]);
  });
});

describe('milestones of a rough order', () => {
  it('end with the charges where the ship is not flooded, and leave out what no activity tells', () => {
    const activities = parts.schedule.activities.map(one =>
      one.id === 'sinking-by-flooding' ? { ...one, id: 'scuttling-firm' } : one,
    );
    const scuttled = { ...parts, schedule: { ...parts.schedule, activities } };
    expect(milestones({ ...evaluation, estimate: scuttled })).toEqual(milestones(evaluation));
    expect(Object.keys(milestones({ ...evaluation, estimate: { ...parts, items: [] } }))).toEqual([
      'monthsToSink',
    ]);
  });

  it('stand in the prices of the year asked for, from its first working days on', () => {
    const request = { hullType: 'escort', length: figure('366', 'ft'), scope: 'clean' } as const;
    const order = (priceYear?: number) =>
      roughOrder(shippedLibrary(), {
        ...{ ...request, today: '2026-11-24' },
        ...(priceYear === undefined ? {} : { priceYear }),
      });
    const [then, now] = [order(2000), order()];
    expect(then.evaluation.project.calendars.start).toBe('2000-01-04');
    expect(now.evaluation.project.calendars.start).toBe('2026-11-24');
    expect(Number(then.json['total'])).toBeLessThan(Number(now.json['total']));
  });
});

describe('what is looked up beside the estimate', () => {
  it('hold points of the tow that are no items of the scenario are left out', () => {
    const points = towOf(base, parts)?.scheduledHoldPoints.map(point => point.id) ?? [];
    expect(points.length).toBeGreaterThan(0);
    const items = parts.items.filter(item => !points.includes(item.id));
    expect(towOf(base, { ...parts, items })?.scheduledHoldPoints).toEqual([]);
  });

  it('a measurement that was taken out of the estimate has no price', () => {
    expect(Object.keys(measurementPrices(parts)).length).toBeGreaterThan(0);
    expect(measurementPrices({ ...parts, items: [] })).toEqual({});
  });

  it('the screen is printed without a tow where there is none', () => {
    const { tow: _, ...towless } = evaluation;
    expect(uprightJson(evaluation)).toHaveProperty('tow');
    expect(uprightJson(towless)).not.toHaveProperty('tow');
    expect(uprightJson(towless)).toHaveProperty('verdict');
  });

  it('the share of the clean-up falls below, inside or above what past hulls had', () => {
    const summary = summarise(parts);
    const falls = (cents: number) => {
      const byStage = { ...summary.byStage, 'clean-up': fromCents(cents) };
      const { splits } = splitAgainstHistory(parts, { ...summary, byStage });
      return splits.find(split => split.id === 'removal-share')?.falls;
    };
    expect([falls(1), falls(1e12)]).toEqual(['below', 'above']);
  });
});

describe('a document that leaves things out', () => {
  it('hauls over the usual road, priced before the last published months, and tells a driver nobody knows', () => {
    const { yardDistance: _, ...site } = base.site;
    const measured = [{ driver: 'nobodys', figure: figure('3', 't', 2026) }];
    const rates = { ...base.rates, priceDate: '2020-06-01' };
    const bare = evaluated({ ...base, site, rates, survey: { ...base.survey, measured } });
    const { input, money } = estimated(bare);
    expect(input.ship.yardDistance).toMatchObject({ value: '80000', unit: 'm' });
    expect(codes(bare.findings)).toContain('document/unknown-driver');
    expect([...input.measured.keys()]).toEqual([]);
    const beyond = (of: typeof money) => {
      const block = of.sheet.blocks.find(one =>
        one.entries().some(step => step.home?.key === 'years-beyond'),
      );
      return of.result.figure(`${block?.id ?? ''}/years-beyond`).number;
    };
    expect(beyond(money)).toBe(0);
    expect(beyond(parts.money)).toBeGreaterThan(0);
  });
});
