import { expect, it } from 'vitest';
import { shownNumber } from '../../../core/views/number-text';
import { windowRows } from '../../../core/views';
import { summaryOf } from '../../../core/views/window';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const evaluation = evaluated(project);
const parts = estimated(evaluation);

it('the hours of an item that lasts as long as others are those of all its days, in sentence, table and head', () => {
  const work = windowRows(project, evaluation, 'us', undefined)?.rows.work;
  const lines = new Map(work?.stages.flatMap(stage => stage.lines).map(line => [line.id, line]));
  const rows = new Map(work?.table.rows.map(row => [row.id, row]));
  const paid = summaryOf(parts)?.lines ?? [];
  const hoursOf = new Map(paid.map(line => [line.id, line.hours ?? 0]));
  const spans = parts.items.filter(item => item.span !== undefined && (hoursOf.get(item.id) ?? 0) > 100);
  expect(spans.length).toBeGreaterThan(2);
  for (const { id } of spans) {
    const said = shownNumber((hoursOf.get(id) ?? 0).toFixed(3), 0);
    expect(lines.get(id)?.hours.text, id).toBe(said);
    expect(rows.get(id)?.cells['hours']?.text, id).toBe(said);
  }
  const all = paid.reduce((sum, line) => sum + (line.hours ?? 0), 0);
  expect(rows.get('total')?.cells['hours']?.text).toBe(shownNumber(all.toFixed(3), 0));
});
