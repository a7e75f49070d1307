import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import {
  importMappingSchema,
  importTable,
  suggestedMapping,
  type ImportKind,
  type ImportMapping,
  type Project,
} from '../../../core/project';
import { demoProject } from '../evaluation/demo';

const library = shippedLibrary();
const demo = demoProject();
/** The example without what a table brings. */
const project: Project = {
  ...demo,
  quotes: [],
  vessel: { ...demo.vessel, tanks: [], weights: [] },
  survey: { ...demo.survey, laboratory: [] },
};
const mapping = (kind: ImportKind, fields: Partial<ImportMapping>): ImportMapping =>
  importMappingSchema.parse({ id: 'odd', title: 'Odd table (invented)', kind, columns: {}, ...fields });

const tanks = mapping('tanks', {
  columns: { title: 'Tank', capacity: 'Cap', unit: 'Unit', sounding: 'Sounded' },
});

describe('a table that is not as its mapping expects', () => {
  test('a row that ends early has empty cells: without a needed one it is left out', () => {
    const { project: after, findings } = importTable(
      project,
      library,
      [
        ['Tank', 'Cap', 'Unit', 'Sounded'],
        ['Fuel 1', '120', 'm3', '80'],
        ['Fuel 2', '90', 'm3'],
        ['Fuel 3'],
        ['', '40', 'm3'],
      ],
      tanks,
    );
    expect(after.vessel.tanks.map(({ id, sounding }) => [id, sounding?.value])).toEqual([
      ['fuel-1', '80'],
      ['fuel-2', undefined],
    ]);
    expect(findings.map(({ code, place }) => [code, place])).toEqual([
      ['imports/row-not-read', '/imports/odd/row-4'],
      ['imports/row-not-read', '/imports/odd/row-5'],
    ]);
  });

  test('a tank that was sounded is told with what was found in it', () => {
    const { changes } = importTable(
      project,
      library,
      [
        ['Tank', 'Cap', 'Unit', 'Sounded'],
        ['Fuel 1', '120', 'm3', '80'],
      ],
      tanks,
    );
    expect(changes.map(({ after }) => after)).toEqual(['120 m³, unknown, sounded 80 m³']);
  });

  test('titles without a Latin letter or digit get keys of their own all the same', () => {
    const { project: after } = importTable(
      project,
      library,
      [
        ['Tank', 'Cap', 'Unit', 'Sounded'],
        ['Ω', '1', 'm3', ''],
        ['Ψ', '2', 'm3', ''],
      ],
      tanks,
    );
    expect(after.vessel.tanks.map(({ id, title }) => [id, title])).toEqual([
      ['row', 'Ω'],
      ['row-2', 'Ψ'],
    ]);
  });

  test('without a column that may be missing the rest is read; without a needed one nothing is', () => {
    const table = [
      ['Tank', 'Cap', 'Unit'],
      ['Fuel 1', '120', 'm3'],
    ];
    const less = importTable(project, library, table, tanks);
    expect(less.project.vessel.tanks).toHaveLength(1);
    expect(less.findings).toMatchObject([
      { code: 'imports/no-such-column', weight: 'warns', meaning: 'That field stays empty.' },
    ]);
    const none = importTable(project, library, [['Tank'], ['Fuel 1']], tanks);
    expect(none.project.vessel.tanks).toEqual([]);
    expect(none.findings.filter(({ weight }) => weight === 'blocks')).toHaveLength(2);
  });

  test('a table that ends above the row of its headings gives nothing', () => {
    const below = { ...tanks, headingRow: 4 };
    const { project: after, findings } = importTable(project, library, [['Tank', 'Cap', 'Unit']], below);
    expect(after.vessel.tanks).toEqual([]);
    expect(findings.filter(({ weight }) => weight === 'blocks')).toHaveLength(3);
    expect(suggestedMapping('tanks', [['Tank', 'Cap', 'Unit']], 'New', [below])).toMatchObject({
      headingRow: 1,
      columns: { title: 'Tank', capacity: 'Cap', unit: 'Unit' },
    });
  });

  test('an empty table suggests a mapping without columns', () => {
    expect(suggestedMapping('wages', [], 'Nothing', [])).toMatchObject({ headingRow: 1, columns: {} });
  });
});

describe('rows of each kind that lack something', () => {
  test('a weight without a centre, or without a name, is left out', () => {
    const weights = mapping('weights', {
      columns: { title: 'Item', mass: 'Mass', vcg: 'VCG', lcg: 'LCG', tcg: 'TCG' },
      constants: { massUnit: 't', lengthUnit: 'm' },
    });
    const { project: after, findings } = importTable(
      project,
      library,
      [
        ['Item', 'Mass', 'VCG', 'LCG', 'TCG'],
        ['Windlass', '12', '9', '50', '0'],
        ['Anchor', '4', '', '52', '2'],
        ['Chain', '4', '6', '', '2'],
        ['Bollards', '4', '6', '52', ''],
        ['', '4', '6', '52', '2'],
      ],
      weights,
    );
    expect(after.vessel.weights.map(({ id, vcg }) => [id, vcg.unit])).toEqual([['windlass', 'm']]);
    expect(findings).toHaveLength(4);
  });

  test('a price without an item is left out; a quantity goes into the note of its quote', () => {
    const prices = mapping('prices', {
      columns: { item: 'Item', unit: 'Unit', price: 'Price', quantity: 'Qty' },
      constants: { vendor: 'Invented Yard', dated: '2026-10-01', validUntil: '2027-10-01' },
    });
    const { project: after, findings } = importTable(
      project,
      library,
      [
        ['Item', 'Unit', 'Price', 'Qty'],
        ['compartment-survey', 'each', '900', '3'],
        ['tank-washing', 'm3', '12', ''],
        ['', 'each', '900', '3'],
      ],
      prices,
    );
    expect(after.quotes.map(({ covers, note }) => [covers[0]?.item, note])).toEqual([
      ['compartment-survey', 'quantity 3'],
      ['tank-washing', ''],
    ]);
    expect(findings.map(({ code }) => code)).toEqual(['imports/row-not-read']);
  });

  test('a wage without a trade is left out', () => {
    const wages = mapping('wages', { columns: { trade: 'Trade', wage: 'Wage' } });
    const { project: after, findings } = importTable(
      { ...project, rates: { ...project.rates, wages: [] } },
      library,
      [
        ['Trade', 'Wage'],
        ['labourer', '31'],
        ['', '44'],
      ],
      wages,
    );
    expect(after.rates.wages.map(({ trade }) => trade)).toEqual(['labourer']);
    expect(findings.map(({ code }) => code)).toEqual(['imports/row-not-read', 'imports/no-price-year']);
  });

  test('a sample whose result is empty is kept and said to be without one', () => {
    const laboratory = mapping('laboratory', {
      columns: { sample: 'Sample', material: 'Material', result: 'Result', date: 'Date' },
      constants: { analyte: 'Lead', unit: 'mg/L' },
    });
    const { changes } = importTable(
      project,
      library,
      [
        ['Sample', 'Material', 'Result', 'Date'],
        ['P-1', 'lead-paint', '', '2026-09-14'],
      ],
      laboratory,
    );
    expect(changes.map(({ after }) => after)).toEqual(['Lead without a result mg/L']);
  });
});
