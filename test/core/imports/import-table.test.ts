import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { evaluate, shippedLibrary } from '../../../core/evaluation';
import {
  importMappingSchema,
  importTable,
  readProject,
  suggestedMapping,
  writeProject,
  type ImportMapping,
  type Project,
} from '../../../core/project';
import { readCsv } from '../../../electron/imports/read-table';
import { demoProject } from '../evaluation/demo';

const library = shippedLibrary();
/** The example without its own quotes and overrides. */
const project: Project = { ...demoProject(), quotes: [] };
const mapping = (fields: Partial<ImportMapping> & Pick<ImportMapping, 'kind'>): ImportMapping =>
  importMappingSchema.parse({ id: 'north-bench', title: 'North Bench (invented)', columns: {}, ...fields });
const laboratory = mapping({
  kind: 'laboratory',
  columns: {
    sample: 'Sample',
    material: 'Material',
    result: 'Result',
    qualifier: 'Flag',
    reportingLimit: 'RL',
    date: 'Date',
  },
  constants: { analyte: 'PCB total', unit: 'mg/kg' },
  words: { Cable: 'pcb-cable', Felt: 'pcb-felt' },
});
const results = readCsv(
  'Sample,Material,Result,Flag,RL,Date\nC-01,Cable,340,,5,2026-09-14\nC-02,Cable,12,,5,2026-09-15\nF-01,Felt,ND,U,5,2026-09-15\nF-02,Felt,3,,5,someday\n',
);

describe('an import of laboratory results', () => {
  const preview = importTable(project, library, results, laboratory);

  test('says what is new, what changes, what stays, and what was left out, before anything is written', () => {
    // The demo holds C-01 already, with its space: the table says nothing of the space, and it stays.
    expect(preview).toMatchObject({ added: 2, changed: 0, same: 1 });
    expect(preview.changes.map(change => [change.kind, change.title, change.after])).toEqual([
      ['added', 'Sample C-02, pcb-cable', 'PCB total 12 mg/kg'],
      ['added', 'Sample F-01, pcb-felt', 'PCB total ND mg/kg U'],
    ]);
    expect(preview.findings.map(finding => finding.code)).toEqual(['imports/row-not-read']);
    expect(project.survey.laboratory).toHaveLength(3);
    expect(preview.project.survey.laboratory).toHaveLength(5);
    expect(preview.project.survey.laboratory[0]?.space).toBe('House, first deck');
  });

  test('keeps its mapping in the project; the same table again changes nothing', () => {
    const { project: kept } = readProject(writeProject(preview.project));
    if (kept === undefined) throw new Error('the written project opens');
    expect(kept.imports).toEqual([laboratory]);
    expect(suggestedMapping('laboratory', results, 'other', kept.imports ?? [])).toEqual(laboratory);
    expect(importTable(kept, library, results, laboratory)).toMatchObject({ added: 0, changed: 0, same: 3 });
  });

  test('moves the estimate: felt that is clear of PCB is not taken out', () => {
    const lines = (seen: typeof project) =>
      evaluate(seen, { today: '2026-11-24', seed: 1, schedules: 20, upright: false }).estimate?.items.map(
        item => item.id,
      );
    expect(lines(project)).toContain('pcb-felt-removal');
    expect(lines(preview.project)).not.toContain('pcb-felt-removal');
  });

  test('of a material that does not exist is told by the checks of the document', () => {
    const odd = importTable(project, library, results, {
      ...laboratory,
      words: { Cable: 'cable-stuff', Felt: 'pcb-felt' },
    });
    expect(odd.findings.map(finding => finding.code)).toContain('document/unknown-material');
  });
});

describe('an import of other tables', () => {
  test('tanks take the place of those of the same name; two of one name both stay', () => {
    const tanks = mapping({
      kind: 'tanks',
      columns: { title: 'Tank', capacity: 'Cap', contents: 'Holds' },
      constants: { unit: 'm3' },
    });
    const table = readCsv('Tank,Cap,Holds\nDeep tank,80,fuel\nDeep tank,90,fuel\n');
    const once = importTable(project, library, table, tanks);
    expect(once.added).toBe(2);
    const twice = importTable(
      once.project,
      library,
      readCsv('Tank,Cap,Holds\nDeep tank,85,fuel\nDeep tank,90,fuel\n'),
      tanks,
    );
    expect(twice.changes).toMatchObject([
      { kind: 'changed', place: '/vessel/tanks/deep-tank', before: '80 m³, fuel', after: '85 m³, fuel' },
    ]);
  });

  test('a wrong unit is told by the checks of the document, not taken as metres', () => {
    const tanks = mapping({
      kind: 'tanks',
      columns: { title: 'Tank', capacity: 'Cap' },
      constants: { unit: 'buckets' },
    });
    expect(
      importTable(project, library, readCsv('Tank,Cap\nDeep tank,80\n'), tanks).findings.map(f => f.code),
    ).toContain('given/wrong-unit');
  });

  test('a price for a place of the rate book stands before it, one for a work item is a quote not yet relied on', () => {
    const prices = mapping({
      kind: 'prices',
      columns: { item: 'Item', unit: 'Unit', price: 'Price' },
      constants: { vendor: 'Tern Industrial (invented)', dated: '2026-10-01', validUntil: '2027-01-31' },
    });
    const table = readCsv('Item,Unit,Price\nstreams/used-oil/unitPrice,t,$95.50\ncable-stripping,m,4.10\n');
    const { project: priced, changes } = importTable(project, library, table, prices);
    expect(changes.map(change => change.place)).toEqual([
      '/rates/overrides/streams/used-oil/unitPrice',
      '/quotes/tern-industrial-invented-cable-stripping',
    ]);
    expect(priced.rates.overrides.at(-1)).toMatchObject({
      at: 'streams/used-oil/unitPrice',
      figure: { value: '95.50', unit: 'USD/t', basis: 'quoted' },
    });
    expect(priced.quotes).toMatchObject([{ vendor: 'Tern Industrial (invented)', chosen: false }]);
    const nobody = importTable(project, library, table, { ...prices, constants: {} });
    expect(nobody.findings.map(finding => finding.code)).toContain('imports/quote-incomplete');
    expect(nobody.project.quotes).toEqual([]);
  });

  test('wages go to the wage table', () => {
    const wages = mapping({ kind: 'wages', columns: { trade: 'Trade', wage: 'Wage' } });
    const trade = library.rateBook.trades[0]?.id ?? '';
    const { project: paid } = importTable(project, library, readCsv(`Trade,Wage\n${trade},41.20\n`), wages);
    expect(paid.rates.wages).toMatchObject([{ trade, figure: { value: '41.20', unit: 'USD/h' } }]);
  });

  test('a table of two letters gives figures that the document takes', () => {
    const wages = mapping({ kind: 'wages', title: 'w2', columns: { trade: 'Trade', wage: 'Wage' } });
    const trade = library.rateBook.trades[0]?.id ?? '';
    const { project: paid } = importTable(project, library, readCsv(`Trade,Wage\n${trade},41.20\n`), wages);
    expect(paid.rates.wages).toMatchObject([{ trade, figure: { source: 'Table w2' } }]);
  });

  test('a wage finds its trade by the title people read; an unknown trade is left out and said', () => {
    const wages = mapping({ kind: 'wages', columns: { trade: 'Trade', wage: 'Wage' } });
    const [first] = library.rateBook.trades;
    const table = readCsv(`Trade,Wage\n${first?.title.toUpperCase()},41.20\nSail maker,30\n`);
    const { project: paid, findings } = importTable(project, library, table, wages);
    expect(paid.rates.wages.map(row => row.trade)).toEqual([first?.id]);
    expect(findings).toMatchObject([
      { code: 'imports/trade-not-known', message: 'The rate book has no trade "Sail maker".' },
      { code: 'imports/no-price-year' },
    ]);
    expect(findings[0]?.remedy).toContain(first?.title);
  });

  test('a wage is of the year that its row or the whole file states, and one of no year is asked about', () => {
    const columns = { trade: 'Trade', wage: 'Wage', year: 'Year' };
    const [first, second] = library.rateBook.trades;
    const table = readCsv(`Trade,Wage,Year\n${first?.title},41.20,2024\n${second?.title},30,\n`);
    const read = importTable(project, library, table, mapping({ kind: 'wages', columns }));
    expect(read.project.rates.wages.map(({ figure }) => figure.year)).toEqual([2024, undefined]);
    expect(read.changes.map(({ after }) => after)).toEqual(['$41.20 per h, prices of 2024', '$30 per h']);
    expect(read.left).toEqual([]);
    expect(read.findings).toMatchObject([
      {
        code: 'imports/no-price-year',
        message: '1 rate is of no year.',
      },
    ]);
    const whole = mapping({
      kind: 'wages',
      columns: { trade: 'Trade', wage: 'Wage' },
      constants: { year: '2025' },
    });
    const stated = importTable(project, library, table, whole);
    expect(stated.project.rates.wages.map(({ figure }) => figure.year)).toEqual([2025, 2025]);
    expect(stated.findings).toEqual([]);
  });

  test('a rate of the rate book carries its price year, and a quote is of its date', () => {
    const at = 'streams/used-oil/unitPrice';
    const prices = mapping({
      kind: 'prices',
      columns: { item: 'Item', unit: 'Unit', price: 'Price' },
      constants: { year: '2023', vendor: 'Vendor One', dated: '2026-01-05', validUntil: '2027-01-05' },
    });
    const table = readCsv(`Item,Unit,Price\n${at},m3,100\nocean-tow,lump sum,9000\n`);
    const read = importTable(project, library, table, prices).project;
    expect(read.rates.overrides.find(row => row.at === at)?.figure.year).toBe(2023);
    expect(read.quotes.find(({ vendor }) => vendor === 'Vendor One')?.amount.year).toBeUndefined();
  });

  test('a basis that is none is told, and the wage rests on judgement', () => {
    const columns = { trade: 'Trade', wage: 'Wage', basis: 'Basis' };
    const title = library.rateBook.trades[0]?.title ?? '';
    const read = (word: string) =>
      importTable(
        project,
        library,
        readCsv(`Trade,Wage,Basis\n${title},41.20,${word}\n`),
        mapping({ kind: 'wages', columns, constants: { year: '2026' } }),
      );
    const [odd, quoted, empty] = [read('hearsay'), read('Quoted'), read('')];
    expect(odd.findings.map(({ code }) => code)).toEqual(['imports/basis-not-known']);
    expect(odd.project.rates.wages[0]?.figure.basis).toBe('judgement');
    expect(quoted.findings).toEqual([]);
    expect(quoted.project.rates.wages[0]?.figure.basis).toBe('quoted');
    expect(empty.findings).toEqual([]);
  });
});

describe('a mapping guessed from the headings', () => {
  test('knows the usual words, and leaves a column it does not know to the reader', () => {
    const table = readCsv(
      'Lab report (invented)\n\nSample ID,Matrix,Parameter,Result,Units,Flag,RL,Collected,Remark\n',
    );
    const guess = suggestedMapping('laboratory', table, 'Harbour lab 7', []);
    expect(guess).toMatchObject({
      id: 'harbour-lab-7',
      headingRow: 3,
      columns: {
        sample: 'Sample ID',
        material: 'Matrix',
        analyte: 'Parameter',
        result: 'Result',
        unit: 'Units',
        qualifier: 'Flag',
        reportingLimit: 'RL',
        date: 'Collected',
      },
    });
    const poor = suggestedMapping('tanks', readCsv('A,B\n1,2\n'), 'x', []);
    expect(importTable(project, library, readCsv('A,B\n1,2\n'), poor).findings.map(f => f.weight)).toContain(
      'blocks',
    );
  });

  test('reads the file of the demo as it was, when nothing is imported', () => {
    expect(readProject(readFileSync('demo/wrenfield.reef.json', 'utf8')).project?.imports ?? []).toEqual([]);
  });
});
