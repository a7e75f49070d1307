import { produce } from 'immer';
import { expect, test } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { windowRows, type Row } from '../../core/views';
import { rowsOfFindings } from '../../core/views/finding-rows';
import { toldAt, toldOf, toldOfRow } from '../../renderer/state/told-at';
import { demoProject } from '../core/evaluation/demo';

/** What is said below each row of the rates of the example, once some are set to a value. */
function toldInRates(rates: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const project = produce(demoProject(), draft => {
    for (const [at, value] of Object.entries(rates)) {
      const unit = at.endsWith('wage')
        ? 'USD/h'
        : at.endsWith('available')
          ? 'each'
          : at.startsWith('crews')
            ? 'person'
            : '1';
      draft.rates.overrides.push({ at, figure: { value, unit, basis: 'judgement', source: 'test' } });
    }
  });
  const evaluation = evaluate(project, { today: '2026-11-24', seed: 1, upright: false });
  const rows = windowRows(project, evaluation, 'us', undefined)?.rows;
  const told = toldAt(rows);
  return Object.fromEntries(
    (rows?.rates.tables ?? [])
      .flatMap(table => table.rows)
      .flatMap(row => Object.values(toldOfRow(told, row)).map(words => [row.id, words])),
  );
}

test('what is wrong with a rate is told at its cell', () => {
  const told = toldInRates({
    'trades/labourer/wage': '-5',
    'trades/foreman/wage': '99999',
    'markUps/profit/share': '-0.1',
    'crews/tank-crew/available': '-1',
  });
  expect(Object.keys(told)).toHaveLength(4);
  expect(told['trades/labourer/wage']).toMatch(/given as −\$5 per h;/);
  expect(told['trades/foreman/wage']).toMatch(/99,?999/);
  expect(told['markUps/profit/share']).toMatch(/mark-up/);
  expect(told['crews/tank-crew/available']).toMatch(/could never begin/);
});

test('a crew of nobody is told at the first of its people', () => {
  const { rateBook } = evaluate(demoProject(), { today: '2026-11-24', seed: 1, upright: false }).library;
  const crew = rateBook.crews.find(({ id }) => id === 'tank-crew');
  const members = crew?.members.map(({ trade }) => `crews/tank-crew/${trade}`) ?? [];
  const told = toldInRates(Object.fromEntries(members.map(at => [at, '0'])));
  expect(Object.keys(told)).toEqual(members.slice(0, 1));
  expect(Object.values(told)[0]).toMatch(/has nobody in it/);
});

const row = (cells: Record<string, string>): Row => ({
  id: 'r',
  kind: 'line',
  cells: Object.fromEntries(
    Object.entries(cells).map(([key, at]) => [
      key,
      { text: '1', edit: { at, kind: 'figure', value: '1', label: key } },
    ]),
  ),
});
const said = (...places: string[]) =>
  toldAt({
    findings: rowsOfFindings(
      places.map((place, i) => ({
        code: 'a/b',
        weight: 'warns',
        place,
        message: `M${i}.`,
        remedy: `R${i}.`,
      })),
    ),
  });

test('all that is said of an input is told, and what is said of its entry at the first input of the row', () => {
  const told = said('/items/mast/quantity', '/items/mast', '/items/mast/quantity', '/items', '/vessel');
  expect(toldOf(told, '/items/mast/quantity')).toBe('M0. R0. M2. R2.');
  const cells = { quantity: '/items/mast/quantity', rate: '/items/mast/hoursPerUnit' };
  expect(toldOfRow(told, row(cells))).toEqual({ quantity: 'M0. R0. M2. R2. M1. R1.' });
  expect(toldOfRow(told, row({ length: '/vessel/length' }))).toEqual({});
  expect(toldOf(said('/vessel/length/value'), '/vessel/length')).toBe('M0. R0.');
  expect(toldOfRow(said('/rates/wages/rigger'), row({ own: '/rates/wages/rigger/figure' }))).toEqual({
    own: 'M0. R0.',
  });
});
