import { describe, expect, test } from 'vitest';
import { dayOf, isoOf, noticeBy } from '../../../core/calendar';
import { asbestosNoticeBy } from '../../../core/materials';
import { datedNotices } from '../../../core/evaluation/rules';
import { calendarFile } from '../../../core/papers';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const { library } = evaluated(base);
const vessel = (changes: Partial<Project['vessel']>): Project => ({
  ...base,
  vessel: { ...base.vessel, ...changes },
});
const options = (changes: Record<string, string>): Project => ({
  ...base,
  options: { ...base.options, ...changes },
});
const items = (...rows: Project['items']): Project => ({ ...base, items: rows });
const rules = (project: Project) =>
  evaluated(project).findings.filter(finding => /^(rules|survey)\//.test(finding.code));
const codes = (project: Project) => rules(project).map(finding => finding.code);
const found = (project: Project, code: string) => rules(project).find(finding => finding.code === code);
const startOf = (project: Project, id: string) =>
  estimated(evaluated(project)).schedule.activities.find(activity => activity.id === id)?.start;

describe('the asbestos notice (40 CFR 61.145(b))', () => {
  test('is dated ten working days before the first activity that disturbs asbestos or cuts the structure, and given in time', () => {
    const parts = estimated(evaluated(base));
    const notice = datedNotices(parts).find(one => one.item === 'asbestos-notice');
    const asbestos = new Set(library.materials.filter(row => row.family === 'asbestos').map(row => row.id));
    const starts = parts.items
      .filter(
        item =>
          item.hazard === 'asbestos-enclosure' ||
          item.disturbs !== undefined ||
          item.meets.some(id => asbestos.has(id)),
      )
      .flatMap(item => parts.schedule.activities.find(activity => activity.id === item.id)?.start ?? [])
      .sort();
    expect(notice?.starts).toBe(starts[0]);
    expect(notice?.by).toBe(asbestosNoticeBy(library.tripPoints, starts[0] ?? ''));
    expect((notice?.given ?? '9') <= (notice?.by ?? '')).toBe(true);
    const due = found(base, 'rules/notice-due');
    expect(due).toMatchObject({ place: '/items/asbestos-notice', rule: '40 CFR 61.145(b)' });
    expect(due?.message).toContain(notice?.by ?? 'no date');
  });

  test('moves with the work: work held back to Monday 2028-07-10 makes it due by 2028-06-26', () => {
    const asbestos = estimated(evaluated(base)).items.filter(item =>
      item.hazard === 'asbestos-enclosure' ? true : item.disturbs?.includes('load-bearing member'),
    );
    const held = items(
      ...asbestos.map(item => ({ item: item.id, notBefore: '2028-07-10', note: 'held back' })),
    );
    const notice = datedNotices(estimated(evaluated(held))).find(one => one.item === 'asbestos-notice');
    expect([notice?.starts, notice?.by]).toEqual(['2028-07-10', '2028-06-26']);
  });

  test('is asked for below the three amounts too, because a load-bearing member is cut', () => {
    const clean = vessel({ built: 1992, lastRefit: 1992, plant: 'diesel' });
    const message = found(clean, 'rules/notice-due')?.message ?? '';
    expect(message).toContain('a load-bearing member is cut: demolition notifies below the amounts too');
    expect(message).not.toMatch(/ft of pipe|sq ft of other/);
  });

  test('left out, given too late, or due before the project starts is a finding', () => {
    expect(codes(items({ item: 'asbestos-notice', include: false, note: 'left out' }))).toContain(
      'rules/notice-missing',
    );
    const start = startOf(base, 'asbestos-enclosure') ?? '';
    const late = items({
      item: 'asbestos-enclosure',
      actualStart: '2027-02-01',
      actualFinish: '2027-02-05',
      note: 'begun before the notice',
    });
    expect(start > '2027-02-05').toBe(true);
    expect(codes({ ...late, statusDate: '2027-02-08' })).toContain('rules/notice-day-passed');
    expect(codes(base).filter(code => /missing|late|passed/.test(code))).toEqual([]);
  });

  test('stands in the calendar file as a dated event', () => {
    const evaluation = evaluated(base);
    const text = calendarFile(evaluation) ?? '';
    const start = startOf(base, 'asbestos-notice')?.replaceAll('-', '') ?? 'no date';
    const event = text.split('BEGIN:VEVENT').find(part => part.includes('UID:asbestos-notice.'));
    expect(event).toContain(`DTSTART;VALUE=DATE:${start}`);
  });
});

describe('solid PCB by route (40 CFR 761.62)', () => {
  test('to a State landfill asks for the notice fifteen days before the first load', () => {
    const parts = estimated(evaluated(base));
    const notice = datedNotices(parts).find(one => one.item === 'pcb-landfill-notice');
    const haul = startOf(base, 'haul-pcb-solids') ?? '';
    const days = (Date.parse(haul) - Date.parse(notice?.by ?? '')) / 86_400_000;
    expect([notice?.starts, days]).toEqual([haul, 15]);
    expect(found(base, 'rules/pcb-route')?.rule).toBe('40 CFR 761.62(b)');
  });

  test('to a TSCA landfill needs no notice and cites (a); risk-based waits for its approval and cites (c)', () => {
    const tsca = options({ 'pcb-route': 'tsca-landfill' });
    expect(found(tsca, 'rules/pcb-route')?.rule).toBe('40 CFR 761.62(a)');
    expect(datedNotices(estimated(evaluated(tsca))).map(one => one.item)).not.toContain(
      'pcb-landfill-notice',
    );
    const risk = options({ 'pcb-route': 'risk-based' });
    expect(found(risk, 'rules/pcb-route')?.rule).toBe('40 CFR 761.62(c)');
    const without = {
      ...risk,
      items: [{ item: 'risk-based-application', include: false, note: 'left out' }],
    };
    expect(codes(without)).toContain('rules/pcb-approval-first');
  });
});

describe('a planned episodic event (40 CFR 262 subpart L)', () => {
  test('has its notice thirty days before, and the work that makes the waste waits for it', () => {
    const planned = options({ 'episodic-event': 'planned' });
    const parts = estimated(evaluated(planned));
    const notice = datedNotices(parts).find(one => one.item === 'episodic-notice');
    const given = parts.schedule.activities.find(activity => activity.id === 'episodic-notice');
    expect(notice?.starts).toBe(parts.generator?.event?.start);
    expect((Date.parse(notice?.starts ?? '') - Date.parse(notice?.by ?? '')) / 86_400_000).toBe(30);
    expect((given?.start ?? '9') <= (notice?.by ?? '')).toBe(true);
    const counting = new Set(library.rateBook.streams.filter(row => row.counts).map(row => row.id));
    for (const item of parts.items.filter(one => one.wastes.some(waste => counting.has(waste.stream))))
      expect((startOf(planned, item.id) ?? '') > (given?.finish ?? '9'), item.id).toBe(true);
  });

  test('held back to the day before the work, it holds the work back by its thirty days', () => {
    const late = {
      ...options({ 'episodic-event': 'planned' }),
      items: [{ item: 'episodic-notice', notBefore: '2028-03-01', note: 'given late' }],
    };
    expect((startOf(late, 'treated-ballast-removal') ?? '') >= '2028-03-31').toBe(true);
  });
});

describe('tributyltin by the last coating', () => {
  test('before 2003 it is presumed with its rule, from 2003 on nothing is said, without a year nobody can tell', () => {
    expect(found(vessel({ lastCoating: 2002 }), 'rules/tbt-presumed')?.rule).toMatch(/33 USC 3801/);
    expect(codes(vessel({ lastCoating: 2003 })).filter(code => /tbt|coating/.test(code))).toEqual([]);
    const { lastCoating: _unknown, ...unknown } = base.vessel;
    expect(codes({ ...base, vessel: unknown })).toContain('rules/coating-date-unknown');
  });

  test('a sample below 2,500 mg of tin a kg takes its removal out, one at it makes it certain', () => {
    const sampled = (result: string): Project => ({
      ...base,
      survey: {
        ...base.survey,
        laboratory: [
          {
            sample: 'A-1',
            space: 'flat bottom',
            material: 'tbt-antifouling',
            analyte: 'Organotin as Sn',
            result,
            unit: 'mg/kg',
            qualifier: '',
            date: '2026-09-14',
          },
        ],
      },
    });
    const lines = (project: Project) => estimated(evaluated(project)).items.map(item => item.id);
    expect(lines(sampled('2499'))).not.toContain('antifouling-removal');
    expect(lines(sampled('2500'))).toContain('antifouling-removal');
    expect(estimated(evaluated(sampled('2500'))).input.presence.get('tbt-antifouling')?.likely).toBe(1);
    expect(codes(sampled('2499'))).not.toContain('rules/tbt-presumed');
  });
});

describe('the water over the reef', () => {
  const site = (changes: Partial<Project['site']>, extent = 'half'): Project => ({
    ...options({ 'topside-extent': extent }),
    site: { ...base.site, ...changes },
  });
  const feet = (value: string) => ({
    value,
    unit: 'ft',
    basis: 'surveyed' as const,
    source: 'Depth of the test',
    year: 2026,
  });

  test('less than the permit asks for, after what is taken off, is a finding', () => {
    // Two tiers of house stay: 1.6 times the depth of 38 ft, 60.8 ft above the keel (proportions of the program).
    expect(codes(site({ waterDepth: feet('110.8') }))).not.toContain('rules/clearance-too-small');
    expect(codes(site({ waterDepth: feet('110.7') }))).toContain('rules/clearance-too-small');
    expect(codes(site({ waterDepth: feet('110.7') }, 'most'))).not.toContain('rules/clearance-too-small');
    expect(codes(site({ clearanceRequired: feet('60') }))).toContain('rules/clearance-too-small');
  });

  test('where topside goes for the clearance, the house is cut down to it and the finding says to what height', () => {
    const cut = found(site({}, 'clearance'), 'rules/clearance-asks');
    expect(cut?.message).toMatch(/allow 68 ft/);
    expect(codes(site({ waterDepth: feet('93.4') }, 'clearance'))).not.toContain('rules/clearance-too-small');
    // The hull itself, 1.14 times 38 ft at the bow, cannot be cut down.
    expect(codes(site({ waterDepth: feet('93.2') }, 'clearance'))).toContain('rules/clearance-too-small');
  });

  test('a top above half of the depth is not under the State’s general permit', () => {
    expect(codes(site({ waterDepth: feet('121.6') }))).not.toContain('rules/not-under-general-permit');
    expect(codes(site({ waterDepth: feet('121.5') }))).toContain('rules/not-under-general-permit');
  });

  test('a permit that ends before the sinking is a finding', () => {
    const { permit } = base.site;
    if (permit === undefined) throw new Error('the example has a permit');
    const sunk = estimated(evaluated(base)).schedule.activities.find(
      activity => activity.id === 'sinking-by-flooding',
    );
    const expires = (day: string) => site({ permit: { ...permit, expires: day } }, 'clearance');
    expect(codes(expires(sunk?.finish ?? ''))).not.toContain('rules/permit-expires');
    expect(codes(expires('2027-06-30'))).toContain('rules/permit-expires');
  });
});

describe('leach tests of paint (40 CFR 261.24)', () => {
  const sampled = (...rows: [analyte: string, result: string, unit: string][]): Project => ({
    ...base,
    survey: {
      ...base.survey,
      laboratory: rows.map(([analyte, result, unit], i) => ({
        sample: `P-${i === 0 ? 1 : i}`,
        space: 'Boiler room',
        material: 'flaking-paint',
        analyte,
        result,
        unit,
        qualifier: '',
        date: '2026-09-14',
      })),
    },
  });
  const tonnes = (project: Project, item: string, stream: string) => {
    const { work } = estimated(evaluated(project));
    const key = `${item}.${stream}`;
    return work.wastes.scope.index.has(key) ? work.result.number(work.wastes.columns.tonnes, key) : undefined;
  };
  const split = (project: Project) =>
    ['paint-hazardous', 'paint-plain'].map(stream => tonnes(project, 'paint-inside', stream) !== undefined);

  test('without a result the assumed split stays; lead at 5.0 mg/L sends all to the hazardous stream, at 4.9 none', () => {
    const none = { ...base, survey: { ...base.survey, laboratory: [] } };
    expect(split(none)).toEqual([true, true]);
    expect(split(sampled(['Lead TCLP', '5.0', 'mg/L']))).toEqual([true, false]);
    expect(split(sampled(['Lead TCLP', '4.9', 'mg/L']))).toEqual([false, true]);
    const [h = 0, p = 0] = ['paint-hazardous', 'paint-plain'].map(stream =>
      tonnes(none, 'paint-inside', stream),
    );
    const all = tonnes(sampled(['Lead TCLP', '5.0', 'mg/L']), 'paint-inside', 'paint-hazardous') ?? 0;
    expect(Math.abs(all - h - p)).toBeLessThanOrEqual(0.0002);
  });

  test('total lead of 99 mg/kg clears, 100 asks for the test and keeps the assumed split', () => {
    expect(split(sampled(['Lead', '99', 'mg/kg']))).toEqual([false, true]);
    const asks = sampled(['Lead', '100', 'mg/kg']);
    expect(split(asks)).toEqual([true, true]);
    expect(found(asks, 'survey/leach-test-asked-for')?.rule).toMatch(/method 1311/);
  });

  test('a leach test of the same sample answers; a reporting limit above the limit cannot tell', () => {
    const answered = sampled(['Lead', '400', 'mg/kg'], ['Lead TCLP', '1.2', 'mg/L']);
    expect(split(answered)).toEqual([false, true]);
    const unclear = sampled(['Cadmium (Cd) TCLP', '< 2', 'mg/L']);
    expect(split(unclear)).toEqual([true, true]);
    expect(codes(unclear)).toContain('survey/leach-result-unclear');
  });

  test('paint found hazardous counts towards the category of its months, paint found clear does not', () => {
    const counted = (project: Project) =>
      (estimated(evaluated(project)).generator?.months ?? []).reduce((sum, month) => sum + month.counted, 0);
    expect(counted(sampled(['Lead TCLP', '5.0', 'mg/L']))).toBeGreaterThan(
      counted(sampled(['Lead TCLP', '4.9', 'mg/L'])) + 1000,
    );
  });
});

describe('the sinking', () => {
  test('asks for its safety zone five working days before, in writing (33 CFR 165.5)', () => {
    const parts = estimated(evaluated(base));
    const notice = datedNotices(parts).find(one => one.item === 'safety-zone-request');
    const starts = startOf(base, 'sinking-by-flooding') ?? '';
    expect(notice?.starts).toBe(starts);
    expect(notice?.by).toBe(isoOf(noticeBy(dayOf(starts), 5)));
    expect((notice?.given ?? '9') <= (notice?.by ?? '')).toBe(true);
  });

  test('with explosives waits for a permit asked for ninety days before (68 FR 13768)', () => {
    const blasted = options({ 'sinking-method': 'explosive' });
    const notice = datedNotices(estimated(evaluated(blasted))).find(one => one.item === 'explosives-permit');
    expect(notice?.by).toBe(isoOf(dayOf(notice?.starts ?? '') - 90));
    expect(datedNotices(estimated(evaluated(base))).map(one => one.item)).not.toContain('explosives-permit');
  });
});

describe('hull, steel, exits and PCB equipment', () => {
  test('an agency releases ships of 1985 or later: 1984 is told, 1985 is not, and no other owner is asked', () => {
    const source = (built: number, from: string) =>
      codes({ ...vessel({ built }), options: { ...base.options, 'hull-source': from } });
    expect(source(1984, 'federal-agency')).toContain('rules/hull-too-old-to-release');
    expect(source(1985, 'federal-agency')).not.toContain('rules/hull-too-old-to-release');
    expect(source(1957, 'private-owner')).not.toContain('rules/hull-too-old-to-release');
  });

  test('plate below a quarter of an inch is told: 6.34 mm is, 6.35 mm is not', () => {
    const plate = (value: string): Project => ({
      ...base,
      benefits: {
        ...(base.benefits ?? {}),
        plateThickness: { value, unit: 'mm', basis: 'surveyed', source: 'gauge', year: 2026 },
      } as Project['benefits'],
    });
    expect(codes(plate('6.34'))).toContain('rules/plate-too-thin');
    expect(codes(plate('6.35'))).not.toContain('rules/plate-too-thin');
  });

  test('a space of more than 60 ft needs a second exit where divers may enter, and none where it is closed', () => {
    const at = (value: string, unit = 'ft') =>
      ({ value, unit, basis: 'surveyed', source: 'general arrangement', year: 2026 }) as const;
    const space = (id: string, from: string, to: string): Project['vessel']['compartments'][number] => ({
      id,
      title: id,
      from: at(from),
      to: at(to),
      bottom: at('0'),
      top: at('30'),
      permeability: at('0.9', '1'),
      openings: [],
      vents: [],
      connections: [],
    });
    const divided = vessel({
      compartments: [space('short-hold', '0', '60'), space('long-hold', '60', '121')],
    });
    const access = (value: string) =>
      rules({ ...divided, options: { ...base.options, 'diver-access': value } }).filter(
        finding => finding.code === 'rules/diver-far-from-exit',
      );
    expect(access('open').map(finding => finding.place)).toEqual(['/vessel/compartments/long-hold']);
    expect(access('open')[0]?.message).toContain('61 ft long: 2 exits');
    expect(access('closed')).toEqual([]);
  });

  test('liquid of 500 ppm makes PCB equipment, 499 ppm does not (40 CFR 761.3)', () => {
    const sampled = (result: string): Project => ({
      ...base,
      survey: {
        ...base.survey,
        laboratory: [
          {
            sample: 'L-1',
            space: 'Switchboard',
            material: 'liquid-pcb',
            analyte: 'PCB total',
            result,
            unit: 'mg/kg',
            qualifier: '',
            date: '2026-10-01',
          },
        ],
      },
    });
    expect(codes(sampled('500'))).toContain('rules/pcb-equipment');
    expect(codes(sampled('499'))).not.toContain('rules/pcb-equipment');
  });

  test('the asbestos notice says that a change of a fifth is notified anew (40 CFR 61.145(b))', () => {
    expect(found(base, 'rules/notice-due')?.message).toContain('updated when the amount changes by 20 %');
  });

  test('after an event was elected, a later month of another category within the year is told', () => {
    const elected = options({ 'episodic-event': 'planned' });
    const { generator } = estimated(evaluated(elected));
    const event = generator?.event;
    const later = generator?.months.filter(
      ({ month, category }) => category !== 'very small' && `${month}-01` > (event?.finish ?? '9'),
    );
    expect(codes(elected).includes('rules/second-event')).toBe((later?.length ?? 0) > 0);
    expect(codes(base)).not.toContain('rules/second-event');
  });
});
