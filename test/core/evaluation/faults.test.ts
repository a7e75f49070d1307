import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { estimateJson, shippedLibrary } from '../../../core/evaluation';
import { readProject, type Project } from '../../../core/project';
import { demoProject, evaluated } from './demo';

const TEXT = readFileSync('demo/wrenfield.reef.json', 'utf8');

function changed(change: (document: Record<string, never>) => void) {
  const document = JSON.parse(TEXT) as Record<string, never>;
  change(document);
  return readProject(JSON.stringify(document));
}

function blocking(project: Project) {
  return evaluated(project).findings.filter(finding => finding.weight === 'blocks');
}

describe('a fault of the document is a finding with place and remedy, and no figure is worked out from it', () => {
  test('a unit that is missing', () => {
    const { project, findings } = changed(
      document =>
        delete (document as unknown as { vessel: { length: { unit?: string } } }).vessel.length.unit,
    );
    expect(project).toBeUndefined();
    expect(findings[0]).toMatchObject({ code: 'document/missing-field', place: '/vessel/length/unit' });
    expect(findings[0]?.remedy).toMatch(/unit/);
  });

  test('a unit that does not measure what is asked for, and a negative tonnage', () => {
    const project = demoProject();
    for (const figure of [
      { value: '5150', unit: 'ft' },
      { value: '-5150', unit: 'long-ton' },
    ]) {
      const faulty = {
        ...project,
        vessel: { ...project.vessel, lightship: { ...project.vessel.length, ...figure } },
      };
      const findings = blocking(faulty);
      expect(
        findings.some(finding => finding.place.startsWith('/vessel/lightship') && finding.remedy !== ''),
      ).toBe(true);
      expect(estimateJson(evaluated(faulty))).not.toHaveProperty('total');
    }
  });

  test('relationships in a circle', () => {
    const project = {
      ...demoProject(),
      relationships: [{ from: 'ocean-tow', to: 'tank-washing', kind: 'FS' as const }],
    };
    const findings = blocking(project);
    expect(findings[0]).toMatchObject({ code: 'items/loop', place: '/relationships' });
    expect(estimateJson(evaluated(project))).not.toHaveProperty('total');
  });

  test('a tank, a compartment or an own item that is listed twice', () => {
    const project = demoProject();
    const [tank] = project.vessel.tanks;
    const [space] = project.vessel.compartments;
    const [own] = shippedLibrary().items;
    if (tank === undefined || space === undefined || own === undefined)
      throw new Error('the example has them');
    const twice = { ...own, id: 'own-work', after: [] };
    const vessel = (change: Partial<Project['vessel']>): Partial<Project> => ({
      vessel: { ...project.vessel, ...change },
    });
    const faults: [string, Partial<Project>][] = [
      ['/vessel/tanks', vessel({ tanks: [tank, tank] })],
      ['/vessel/compartments', vessel({ compartments: [space, space] })],
      ['/ownItems', { ownItems: [twice, twice] }],
    ];
    for (const [place, change] of faults) {
      const faulty = { ...project, ...change };
      expect(blocking(faulty)).toContainEqual(
        expect.objectContaining({ code: 'document/same-key-twice', place }),
      );
      expect(estimateJson(evaluated(faulty))).not.toHaveProperty('total');
    }
  });

  test('a trade that does not exist', () => {
    const project = demoProject();
    const wages = [
      { trade: 'no-such-trade', figure: { ...project.vessel.length, value: '30', unit: 'USD/h' } },
    ];
    const findings = blocking({ ...project, rates: { ...project.rates, wages } });
    expect(findings[0]).toMatchObject({ code: 'document/unknown-trade', place: '/rates/wages' });
  });

  test.each([
    [
      'a number that does not fit',
      TEXT.replace('"version": 1', '"version": 1e999'),
      'document/number-out-of-range',
    ],
    ['a file cut short', TEXT.slice(0, 900), 'document/not-json'],
    ['an empty file', '', 'document/empty'],
    ['a newer version', TEXT.replace('"version": 1', '"version": 999'), 'document/newer-version'],
    ['another format', '[]', 'document/other-format'],
    ['a poisoned key', '{"__proto__":{"a":1}}', 'document/forbidden-field'],
    ['a key given twice', '{"a":1,"a":2}', 'document/field-twice'],
    ['nesting without end', '['.repeat(200), 'document/too-deep'],
    ['a list without end', `[${'1,'.repeat(50_001)}1]`, 'document/too-long'],
    ['a text without end', `["${'x'.repeat(1_000_001)}"]`, 'document/too-long'],
  ])('%s', (_, text, code) => {
    const { project, findings } = readProject(text);
    expect(project).toBeUndefined();
    expect(findings[0]?.code).toBe(code);
    expect(findings[0]?.remedy).not.toBe('');
    expect(findings[0]?.place).not.toBe('');
  });

  test('an unknown field is named and not dropped', () => {
    const { project, findings } = changed(document => Object.assign(document, { colour: 'grey' }));
    expect(project).toBeUndefined();
    expect(findings[0]?.message).toContain('colour');
  });
});
