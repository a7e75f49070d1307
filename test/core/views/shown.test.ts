import fs from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../../core/evaluation';
import { readProject } from '../../../core/project';
import {
  packNames,
  printed,
  roundText,
  wholeDollars,
  wholeDollarTable,
  windowRows,
} from '../../../core/views';

const cents = fc.array(fc.integer({ min: -5_000_000, max: 500_000_000 }), { minLength: 1, maxLength: 30 });

test('whole dollars add up to the shown total, each within a dollar of its amount', () => {
  fc.assert(
    fc.property(cents, amounts => {
      const shown = wholeDollars(amounts);
      const sum = amounts.reduce((a, b) => a + b, 0);
      expect(Math.abs(shown.reduce((a, b) => a + b, 0) - sum / 100)).toBeLessThanOrEqual(0.5);
      shown.forEach((dollars, at) => expect(Math.abs(dollars - (amounts[at] ?? 0) / 100)).toBeLessThan(1));
    }),
  );
});

test('every row and column of a table in whole dollars adds up, each cell within a dollar, and the totals add up to the total', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: -9999, max: 9_999_999 }), fc.integer({ min: 0, max: 999_999 })), {
        minLength: 1,
        maxLength: 12,
      }),
      rows => {
        const { cells, columnTotals, rowTotals, total } = wholeDollarTable(rows);
        columnTotals.forEach((column, at) =>
          expect(cells.reduce((sum, row) => sum + (row[at] ?? 0), 0)).toBe(column),
        );
        cells.forEach((row, at) => {
          expect(row.reduce((a, b) => a + b, 0)).toBe(rowTotals[at]);
          row.forEach((cell, column) =>
            expect(Math.abs(cell - (rows[at]?.[column] ?? 0) / 100)).toBeLessThan(1),
          );
        });
        expect(columnTotals.reduce((a, b) => a + b, 0)).toBe(total);
        expect(rowTotals.reduce((a, b) => a + b, 0)).toBe(total);
      },
    ),
  );
});

test.each([
  ['2.345', 2, '2.35'],
  ['-2.345', 2, '-2.35'],
  ['0.5', 0, '1'],
  ['-0.4', 0, '0'],
  ['1234567.995', 2, '1234568.00'],
  ['12', 2, '12.00'],
  ['999.9996', 3, '1000.000'],
])('%s at %d decimals is %s', (text, decimals, rounded) => {
  expect(roundText(text, decimals)).toBe(rounded);
});

test('printed figures have thousands marks and a true minus', () => {
  expect([printed('1234567.5'), printed('-1234'), printed('999')]).toEqual([
    '1,234,567.5',
    '\u22121,234',
    '999',
  ]);
});

test('no two names or bars of a sub-lane meet, and no name is shortened', () => {
  const bar = fc.record({
    id: fc.uuid(),
    from: fc.integer({ min: 300, max: 900 }),
    length: fc.integer({ min: 2, max: 200 }),
    nameWidth: fc.integer({ min: 20, max: 250 }),
  });
  fc.assert(
    fc.property(fc.uniqueArray(bar, { minLength: 1, maxLength: 25, selector: one => one.id }), bars => {
      const all = bars.map(one => ({
        id: one.id,
        from: one.from,
        to: one.from + one.length,
        nameWidth: one.nameWidth,
      }));
      const { packed, lanes } = packNames(all, 1100, 8);
      const extents = packed.map(place => {
        const one = all.find(other => other.id === place.id);
        const [from, to, width] = [one?.from ?? 0, one?.to ?? 0, one?.nameWidth ?? 0];
        return {
          lane: place.lane,
          from: Math.min(from, place.nameAt),
          to: Math.max(to, place.nameAt + width),
        };
      });
      expect(Math.max(...packed.map(place => place.lane))).toBeLessThan(lanes);
      extents.forEach((a, i) =>
        extents.slice(i + 1).forEach(b => {
          if (a.lane === b.lane) expect(a.to <= b.from || b.to <= a.from).toBe(true);
        }),
      );
    }),
  );
});

test('the window shows the figures of the evaluation: total, finish, lines, and every column adds up', () => {
  const { project } = readProject(
    fs.readFileSync(path.join(import.meta.dirname, '../../../demo/wrenfield.reef.json'), 'utf8'),
  );
  if (project === undefined) throw new Error('the demo does not read');
  const evaluation = evaluate(project, { today: '2027-01-04', seed: 1 });
  const rows = windowRows(project, evaluation, 'us', undefined)?.rows;
  const money = evaluation.estimate?.money;
  const whole = (text: string | undefined) =>
    text === undefined || text === '–' ? 0 : Number(text.replaceAll(',', '').replace('\u2212', '-'));
  const exact = Number(money?.result.figure('sums/total').text);
  const table = rows?.budget.byStage;
  const totalRow = table?.rows.find(row => row.kind === 'total');
  expect(whole(totalRow?.cells['total']?.text)).toBe(Math.round(exact));
  expect(rows?.bottom[0]?.value.text).toBe(`$${printed(String(Math.round(exact)))}`);
  for (const column of table?.columns.filter(one => one.kind === 'number') ?? []) {
    const sum = table?.rows
      .filter(row => row.kind === 'line')
      .reduce((all, row) => all + whole(row.cells[column.key]?.text), 0);
    expect(sum, column.title).toBe(whole(totalRow?.cells[column.key]?.text));
  }
  for (const line of rows?.work.stages.flatMap(stage => stage.lines) ?? []) {
    expect(
      Math.abs(whole(line.cost.text) - Number(money?.result.figure(`lines/${line.id}/total`).text)),
      line.id,
    ).toBeLessThan(1);
  }
  expect(rows?.schedule?.lanes.flatMap(lane => lane.bars).length).toBe(
    evaluation.estimate?.schedule.activities.filter(one => one.workDays > 0).length,
  );
});
