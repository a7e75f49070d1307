import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { sampledClasses } from '../../../core/materials/waste-class';
import { resultFinding, surveyedPresence, tripPoint } from '../../../core/materials';
import type { SampleResult } from '../../../core/materials/survey';

const points = () => shippedLibrary().tripPoints;
const sample = (result: string, unit: string, more: Partial<SampleResult> = {}): SampleResult => ({
  ...{
    sample: 'P-1',
    material: 'lead-paint',
    analyte: 'Lead',
    result,
    unit,
    qualifier: '',
    date: '2026-05-02',
  },
  ...more,
});
const classOf = (...results: SampleResult[]) => sampledClasses(results, points())[0]?.wasteClass;
const findingsOf = (...results: SampleResult[]) => sampledClasses(results, points())[0]?.findings;

// 40 CFR 261.24 table 1: lead 5.0, barium 100.0, mercury 0.2 mg/L; SW-846 method 1311, 1.2: a total below twenty times clears.
describe('the class of sampled waste', () => {
  test.each([
    ['4.99', 'mg/L', 'not hazardous'],
    ['5', 'mg/L', 'hazardous'],
    ['4999', 'ug/L', 'not hazardous'],
    ['5000', 'µg/L', 'hazardous'],
    ['99.9', 'mg/kg', 'not hazardous'],
    ['100', 'mg/kg', 'test asked for'],
    ['100', 'ppm', 'test asked for'],
    ['100', 'ug/g', 'test asked for'],
    ['99999', 'ug/kg', 'not hazardous'],
    ['100000', 'µg/kg', 'test asked for'],
    ['0.00999', '%', 'not hazardous'],
    ['0.01', '%', 'test asked for'],
    ['7', 'ug/wipe', 'cannot tell'],
    ['lost', 'mg/L', 'cannot tell'],
    ['ND', 'mg/L', 'cannot tell'],
    ['<5', ' MG/L ', 'not hazardous'],
    ['<5.1', 'mg/L', 'cannot tell'],
  ])('lead of %s %s is %s', (result, unit, expected) => {
    expect(classOf(sample(result, unit))).toBe(expected);
  });
  test.each([
    ['Total lead', '100', 'test asked for'],
    ['Pb', '100', 'test asked for'],
    ['lead, total (Pb)', '100', 'test asked for'],
    ['Barium', '1999', 'not hazardous'],
    ['Ba', '2000', 'test asked for'],
    ['MERCURY', '4', 'test asked for'],
    ['Chromium', '99.9', 'not hazardous'],
  ])('the metal of "%s" is known', (analyte, result, expected) => {
    expect(classOf(sample(result, 'mg/kg', { analyte }))).toBe(expected);
  });
  test.each(['PCB, total', 'leaded', 'pb', 'Tin'])('"%s" is none of the metals', analyte => {
    expect(sampledClasses([sample('100', 'mg/kg', { analyte })], points())).toEqual([]);
  });

  test('a leach test of the same sample and metal answers for its total', () => {
    const total = sample('500', 'mg/kg');
    expect(classOf(total, sample('1', 'mg/L'))).toBe('not hazardous');
    expect(classOf(total, sample('6', 'mg/L'))).toBe('hazardous');
    expect(classOf(total, sample('1', 'mg/L', { sample: 'P-2' }))).toBe('test asked for');
    expect(classOf(total, sample('0.1', 'mg/L', { analyte: 'Mercury' }))).toBe('test asked for');
    expect(classOf(total, sample('lost', 'mg/L'))).toBe('test asked for');
  });
  test('one result past the limit outweighs whatever else there is', () => {
    expect(
      classOf(
        sample('1', 'mg/L'),
        sample('lost', 'mg/L'),
        sample('500', 'mg/kg'),
        sample('6', 'mg/L', { sample: 'P-9' }),
      ),
    ).toBe('hazardous');
    expect(classOf(sample('1', 'mg/L', { sample: 'P-2' }), sample('lost', 'mg/L'))).toBe('cannot tell');
  });
  test('each material has its own, with its samples and the year of the latest', () => {
    const results = [
      sample('1', 'mg/L'),
      sample('1', 'mg/L', { analyte: 'Mercury', result: '0.1', date: '2024-01-01' }),
      sample('2', 'mg/L', { sample: 'P-2', date: '2023-01-01' }),
      sample('9', 'mg/L', { material: 'other-paint', date: '2020-01-01' }),
    ];
    expect(sampledClasses(results, points()).map(({ findings: _, ...rest }) => rest)).toEqual([
      { material: 'lead-paint', wasteClass: 'not hazardous', samples: 2, year: 2026 },
      { material: 'other-paint', wasteClass: 'hazardous', samples: 1, year: 2020 },
    ]);
  });

  test('findings say what is open and what to do', () => {
    expect(findingsOf(sample('100', 'mg/kg'))).toEqual([
      {
        code: 'survey/leach-test-asked-for',
        weight: 'warns',
        place: '/survey/laboratory/0',
        message:
          'Sample P-1: total lead of 100 mg/kg is at or above 100 mg/kg, twenty times the leach limit.',
        meaning: 'Whether the waste is hazardous is open; the assumed share stays.',
        remedy: 'Have the leach test made on this sample and enter its result in mg/L.',
        rule: tripPoint(points(), 'leach-screen').rule,
      },
    ]);
    expect(findingsOf(sample('6', 'mg/L'))).toEqual([
      {
        code: 'survey/fails-leach-test',
        weight: 'notes',
        place: '/survey/laboratory/0',
        message: 'Sample P-1: lead of 6 mg/L in the leachate is at or above 5 mg/L.',
        meaning:
          'The waste of this material is hazardous: all of it is priced so and counts towards the generator category.',
        remedy: 'Sample more spaces if part of it may be clear, and keep the two apart.',
        rule: tripPoint(points(), 'leach-lead').rule,
      },
    ]);
    expect(findingsOf(sample('lost', 'mg/L'))).toEqual([
      {
        code: 'survey/leach-result-unclear',
        weight: 'warns',
        place: '/survey/laboratory/0',
        message: 'Sample P-1: "lost" mg/L does not tell whether lead clears its limit.',
        meaning: 'Whether the waste is hazardous is open; the assumed share stays.',
        remedy: 'Give the result, or a reporting limit below the limit of the rule.',
        rule: '40 CFR 261.24 table 1',
      },
    ]);
    expect(findingsOf(sample('1', 'mg/L'))).toEqual([]);
  });
});

// 40 CFR 761.3: PCB bulk product waste from 50 ppm.
describe('a result that cannot tell', () => {
  const pcb = () => tripPoint(points(), 'pcb-bulk-product');
  const told = (code: string, message: string, remedy: string) => ({
    ...{ code, weight: 'warns', place: '/x', message, remedy, rule: pcb().rule },
    meaning: 'Nobody can tell from it whether the material is there; the assumption by era stays.',
  });
  test('says so by what it is', () => {
    expect(resultFinding({ kind: 'below', limit: '60' }, pcb(), '/x', 'S')).toEqual(
      told(
        'survey/reporting-limit-too-high',
        'Sample S: not detected below 60, but the trip-point is 50.',
        'Ask the laboratory for a lower reporting limit or take another sample.',
      ),
    );
    const give = 'Give the result, or the reporting limit it lies below.';
    expect(resultFinding({ kind: 'below-unknown' }, pcb(), '/x', 'S')).toEqual(
      told('survey/no-result', 'Sample S: not detected, without a reporting limit.', give),
    );
    expect(resultFinding({ kind: 'text', text: 'broken' }, pcb(), '/x', 'S')).toEqual(
      told('survey/no-result', 'Sample S: "broken" is not a result.', give),
    );
    expect(resultFinding({ kind: 'empty' }, pcb(), '/x', 'S')).toEqual(
      told('survey/no-result', 'Sample S: no result is given.', give),
    );
    expect(resultFinding({ kind: 'measured', value: '60' }, pcb(), '/x', 'S')).toBeUndefined();
  });
});

describe('what a survey says of presence', () => {
  const { materials } = shippedLibrary();
  const pcb = (result: string, unit = 'mg/kg', date = '2026-05-02'): SampleResult => ({
    ...{ sample: 'S-1', material: 'pcb-cable', analyte: 'Aroclor 1254', result, unit, qualifier: '', date },
  });
  const surveyed = (...results: SampleResult[]) =>
    surveyedPresence(materials, { built: 1957 }, results, points(), []);

  test('rests on its samples and the latest year', () => {
    expect(surveyed(pcb('1'), pcb('2', 'mg/kg', '2027-01-01')).presence.get('pcb-cable')).toEqual({
      ...{ low: 0, likely: 0, high: 0, basis: 'surveyed', year: 2027 },
      source: 'Laboratory results of 2 samples: all clear of the trip-point',
    });
    expect(surveyed(pcb('60')).presence.get('pcb-cable')).toEqual({
      ...{ low: 1, likely: 1, high: 1, basis: 'surveyed', year: 2026 },
      source: 'Laboratory results of one sample: at least one at or past the trip-point',
    });
    expect([...surveyed(pcb('60')).sampled]).toEqual(['pcb-cable']);
    expect([...surveyed(pcb('lost')).sampled]).toEqual([]);
  });
  test('a unit in which the analyte is not held decides nothing and is told', () => {
    const { findings, presence } = surveyed(pcb('60', 'ug/wipe'));
    expect(findings).toEqual([
      {
        code: 'survey/wrong-unit',
        weight: 'warns',
        place: '/survey/laboratory/0',
        message: 'Sample S-1: "ug/wipe" is not a unit in which Aroclor 1254 is held against its trip-point.',
        meaning: 'The result is not used; the assumption by era stays.',
        remedy: 'Give the result in mg/kg or ppm for PCB.',
      },
    ]);
    expect(presence.get('pcb-cable')?.basis).not.toBe('surveyed');
  });
  test('of another analyte says nothing', () => {
    expect(surveyed({ ...pcb('60'), analyte: 'Lead' }).sampled.size).toBe(0);
  });
  test('the widest of the unknowns that speak of a family widens it, and no other family', () => {
    const wide = (...widenings: number[]) =>
      surveyedPresence(
        materials,
        { built: 1957 },
        [],
        points(),
        widenings.map((widening, i) => ({ item: `q${i}`, families: ['oil-and-fuel'], widening })),
      ).presence;
    expect(wide(0.1, 0.3, 0.2).get('fuel')).toMatchObject({ low: 0.7, high: 1.3 });
    expect(wide().get('fuel')).toEqual(wide(0).get('fuel'));
    expect(wide(0.3).get('pcb-cable')).toEqual(wide().get('pcb-cable'));
  });
});
