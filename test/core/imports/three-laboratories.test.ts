import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { readResult } from '../../../core/materials';
import {
  importLaboratory,
  importMappingSchema,
  importTanks,
  importWages,
  importWeights,
  importPrices,
} from '../../../core/project';
import { readCsv, readXlsx } from '../../../electron/imports/read-table';

const cable = {
  'Cable jacket': 'pcb-cable',
  CBL: 'pcb-cable',
  Kabelmantel: 'pcb-cable',
  Felt: 'pcb-felt',
  FLT: 'pcb-felt',
};

// Three invented laboratories: order, headings, dates, number format and the way of saying "not detected" differ.
const first = {
  text: 'Sample,Space,Material,Analyte,Result,Unit,Flag,RL,Date\nS-1,Frame 40,Cable jacket,PCB,1250.5,mg/kg,,5,2026-05-04\nS-2,Frame 62,Felt,PCB,<5,mg/kg,,5,2026-05-05\nS-3,Frame 70,Felt,PCB,,mg/kg,,5,2026-05-05\n',
  mapping: importMappingSchema.parse({
    id: 'north-bench',
    title: 'North Bench Laboratory (invented)',
    kind: 'laboratory',
    columns: {
      sample: 'Sample',
      space: 'Space',
      material: 'Material',
      analyte: 'Analyte',
      result: 'Result',
      unit: 'Unit',
      qualifier: 'Flag',
      reportingLimit: 'RL',
      date: 'Date',
    },
    words: cable,
  }),
};
const second = {
  text: 'Tidewater Assay (invented);;;;;;;\n;;;;;;;\nCollected;Id;Where;Matrix;Value;Q;Limit\n04.05.2026;S-1;Frame 40;CBL;1.250,5;;5\n05.05.2026;S-2;Frame 62;FLT;< 5,0 U;;5\n05.05.2026;S-3;Frame 70;FLT;;;5\n',
  mapping: importMappingSchema.parse({
    id: 'tidewater',
    title: 'Tidewater Assay (invented)',
    kind: 'laboratory',
    headingRow: 3,
    columns: {
      date: 'Collected',
      sample: 'Id',
      space: 'Where',
      material: 'Matrix',
      result: 'Value',
      qualifier: 'Q',
      reportingLimit: 'Limit',
    },
    constants: { analyte: 'PCB', unit: 'mg/kg' },
    words: cable,
    dates: 'DD.MM.YYYY',
    decimals: 'comma',
  }),
};
const third = importMappingSchema.parse({
  id: 'saltpan',
  title: 'Saltpan Testing (invented)',
  kind: 'laboratory',
  columns: {
    sample: 'LAB NO',
    result: 'CONC',
    qualifier: 'QUAL',
    reportingLimit: 'MRL',
    unit: 'UNITS',
    material: 'TYPE',
    space: 'LOCATION',
    analyte: 'PARAMETER',
    date: 'SAMPLED',
  },
  words: cable,
  dates: 'MM/DD/YYYY',
});

async function thirdTable() {
  const workbook = new ExcelJS.Workbook();
  workbook.addWorksheet('Results').addRows([
    ['LAB NO', 'CONC', 'QUAL', 'MRL', 'UNITS', 'TYPE', 'LOCATION', 'PARAMETER', 'SAMPLED'],
    ['S-1', 1250.5, '', 5, 'mg/kg', 'CBL', 'Frame 40', 'PCB', '05/04/2026'],
    ['S-2', 'ND', 'U', 5, 'mg/kg', 'FLT', 'Frame 62', 'PCB', '05/05/2026'],
    ['S-3', '', '', 5, 'mg/kg', 'FLT', 'Frame 70', 'PCB', '05/05/2026'],
  ]);
  const written = await workbook.xlsx.writeBuffer();
  return readXlsx(written);
}

describe('laboratory results of three layouts', () => {
  test('say the same once imported: a number, below 5, and no result', async () => {
    const imports = [
      importLaboratory(readCsv(first.text), first.mapping),
      importLaboratory(readCsv(second.text), second.mapping),
      importLaboratory(await thirdTable(), third),
    ];
    const said = imports.map(({ rows, findings }) => {
      expect(findings).toEqual([]);
      return rows.map(row => ({
        sample: row.sample,
        space: row.space,
        material: row.material,
        analyte: row.analyte,
        unit: row.unit,
        date: row.date,
        says: readResult(row),
      }));
    });
    expect(said[0]?.map(row => row.says)).toEqual([
      { kind: 'measured', value: '1250.5' },
      { kind: 'below', limit: '5' },
      { kind: 'empty' },
    ]);
    expect(said[1]).toEqual(said[0]);
    expect(said[2]).toEqual(said[0]);
  });

  test('a heading that is not there blocks the import and is named', () => {
    const { rows, findings } = importLaboratory(
      readCsv(first.text.replace('Result', 'Outcome')),
      first.mapping,
    );
    expect(rows).toEqual([]);
    expect(findings[0]?.message).toMatch(/Result/);
  });

  test('a row whose date is no date of the calendar is left out with a finding', () => {
    const { rows, findings } = importLaboratory(
      readCsv(first.text.replace('2026-05-04', '2026-02-30')),
      first.mapping,
    );
    expect(rows).toHaveLength(2);
    expect(findings[0]?.code).toBe('imports/row-not-read');
  });
});

describe('other tables', () => {
  const mapping = (kind: string, columns: Record<string, string>) =>
    importMappingSchema.parse({ id: 'table', title: 'Invented table', kind, columns });

  test('tanks, weights, prices and wages are read; an empty cell is a finding and never zero', () => {
    const tanks = importTanks(
      readCsv('Tank,Cap,U,Holds\nNo. 1 port,"1,250.5",m3,Fuel\nNo. 2 port,,m3,Fuel\n'),
      mapping('tanks', { title: 'Tank', capacity: 'Cap', unit: 'U', contents: 'Holds' }),
    );
    expect(tanks.rows).toMatchObject([
      { id: 'no-1-port', capacity: { value: '1250.5', unit: 'm3' }, contents: 'fuel' },
    ]);
    expect(tanks.findings).toHaveLength(1);
    const weights = importWeights(
      readCsv('Item,Mass,MU,V,L,T,LU\nMast,12.5,long-ton,70,-3,0,ft\n'),
      mapping('weights', {
        title: 'Item',
        mass: 'Mass',
        massUnit: 'MU',
        vcg: 'V',
        lcg: 'L',
        tcg: 'T',
        lengthUnit: 'LU',
      }),
    );
    expect(weights.rows).toMatchObject([{ id: 'mast', mass: { value: '12.5' }, lcg: { value: '-3' } }]);
    const prices = importPrices(
      readCsv('Item,Unit,Price\ncable-stripping,m,$12.50\n'),
      mapping('prices', { item: 'Item', unit: 'Unit', price: 'Price' }),
    );
    expect(prices.rows).toMatchObject([
      { item: 'cable-stripping', price: { value: '12.50', unit: 'USD/m' } },
    ]);
    const wages = importWages(
      readCsv('Trade,Wage\nburner,41.20\n'),
      mapping('wages', { trade: 'Trade', wage: 'Wage' }),
    );
    expect(wages.rows).toMatchObject([
      { trade: 'burner', figure: { value: '41.20', unit: 'USD/h', basis: 'judgement' } },
    ]);
    const said = importWages(
      readCsv('Trade,Wage,Basis\nburner,41.20,Published\n'),
      mapping('wages', { trade: 'Trade', wage: 'Wage', basis: 'Basis' }),
    );
    expect(said.rows).toMatchObject([{ figure: { basis: 'published' } }]);
  });
});
