import { describe, expect, test } from 'vitest';
import { unitWords } from '../../../core/units';
import { WhyDesk, windowRows, type Measures, type Row } from '../../../core/views';
import { onShip } from '../../../core/views/measures';
import { DEMO, evaluatedAs, figure } from './awkward';

// NIST SP 811 (2008), appendix B.8: one foot is 0.3048 m, one mile 1609.344 m.
test('a length on the ship is told in feet however long it is', () => {
  expect(onShip('12712.8', 'm', 'us')).toEqual({ value: '41708.7', unit: 'ft' });
  expect(onShip('12712.8', 'm', 'metric')).toEqual({ value: '12712.8', unit: 'm' });
});

/** What is typed in a row is in the unit that stands in it. */
function unitsOf(rows: readonly Row[], key: string) {
  return rows.flatMap(row => {
    const [unit, edit] = [row.cells['unit']?.text, row.cells[key]?.edit];
    return unit === undefined || unit === '' || edit === undefined
      ? []
      : [{ row: row.id, unit, typed: unitWords(edit.unit ?? '') }];
  });
}

const survey = (value: string, unit: string) => ({
  ...DEMO,
  survey: {
    ...DEMO.survey,
    measured: [{ driver: 'pcb-cable', figure: figure(value, unit), note: '' }],
  },
});

const materialsOf = (project: typeof DEMO, measures: Measures): readonly Row[] =>
  new WhyDesk(evaluatedAs(project), measures).opened('materials')?.table.rows ?? [];

describe.each<Measures>(['us', 'metric'])('a number is typed in the unit beside it, %s', measures => {
  test.each([
    ['as the templates have it', DEMO],
    ['of a survey in miles', survey('12', 'mi')],
    ['of a survey in feet', survey('900', 'ft')],
  ])('of materials, %s', (_, project) => {
    const units = unitsOf(materialsOf(project, measures), 'measured');
    expect(units.length).toBeGreaterThan(10);
    expect(units.filter(({ unit, typed }) => unit !== typed)).toEqual([]);
  });

  test('of work items', () => {
    const units = unitsOf(
      windowRows(DEMO, evaluatedAs(DEMO), measures, undefined)?.rows.work.table.rows ?? [],
      'quantity',
    );
    expect(units.length).toBeGreaterThan(50);
    expect(units.filter(({ unit, typed }) => unit !== typed)).toEqual([]);
  });
});

test('a survey in miles is told in the feet of its row', () => {
  const project = survey('2.5', 'mi');
  const row = materialsOf(project, 'us').find(({ id }) => id === 'pcb-cable');
  expect([row?.cells['measured']?.text, row?.cells['quantity']?.text, row?.cells['unit']?.text]).toEqual([
    '13,200',
    '13,200',
    'ft',
  ]);
});
