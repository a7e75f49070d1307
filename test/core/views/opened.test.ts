import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { evaluate, shippedLibrary } from '../../../core/evaluation';
import { readProject, type Project } from '../../../core/project';
import { importView, WhyDesk, windowRows, type OpenedName } from '../../../core/views';

function demo(): Project {
  const file = path.join(import.meta.dirname, '../../../demo/wrenfield.reef.json');
  const { project } = readProject(fs.readFileSync(file, 'utf8'));
  if (project === undefined) throw new Error('the demo does not read');
  return project;
}

const VIEWS = ['materials', 'funding', 'bid', 'review', 'scenarios'] as const satisfies readonly OpenedName[];
const project = demo();
const evaluation = evaluate(project, { today: project.statusDate ?? '2027-01-04', seed: 1 });
const desk = new WhyDesk(evaluation, 'us');

/** The names of all figures in some rows, wherever they stand. */
function whysIn(value: unknown, found = new Set<string>()): Set<string> {
  if (Array.isArray(value)) value.forEach(one => whysIn(one, found));
  else if (value !== null && typeof value === 'object') {
    for (const [key, held] of Object.entries(value)) {
      if (key === 'why' && typeof held === 'string' && ('text' in value || 'words' in value)) found.add(held);
      else whysIn(held, found);
    }
  }
  return found;
}

describe.each(VIEWS)('the view %s', name => {
  test('every figure opens a derivation with at least one step', () => {
    const silent = [...whysIn(desk.opened(name))].filter(id => (desk.answer(id)?.rows.length ?? 0) === 0);
    expect(silent).toEqual([]);
  });
});

test('every figure of the views that follow each edit opens a derivation', () => {
  const rows = windowRows(project, evaluation, 'us', undefined)?.rows;
  const silent = [...whysIn(rows)].filter(id => (desk.answer(id)?.rows.length ?? 0) === 0);
  expect(silent).toEqual([]);
}, 60_000);

test('every input of these views stands at a place of the document or makes one', () => {
  const places = (value: unknown, found: string[] = []): string[] => {
    if (Array.isArray(value)) value.forEach(one => places(one, found));
    else if (value !== null && typeof value === 'object') {
      for (const [key, held] of Object.entries<unknown>({ ...value })) {
        if (key === 'edit' && held !== null && typeof held === 'object' && 'at' in held)
          found.push(String(held.at));
        else places(held, found);
      }
    }
    return found;
  };
  for (const name of VIEWS) {
    for (const at of places(desk.opened(name))) expect(at).toMatch(/^\/[a-zA-Z]+(\/[^/]+)*$/);
  }
});

test('whole dollars of the form add up down every column', () => {
  const table = desk.opened('funding')?.awards[0]?.table;
  const amount = (text: string | undefined) =>
    text === undefined || text === '–' ? 0 : Number(text.replaceAll(',', '').replace('\u2212', '-'));
  for (const column of table?.columns.filter(one => one.kind === 'number') ?? []) {
    const cells = (table?.rows ?? []).map(row => [row.id, amount(row.cells[column.key]?.text)] as const);
    const sum = cells.filter(([id]) => /^[a-h]$/.test(id)).reduce((all, [, value]) => all + value, 0);
    const of = (id: string) => cells.find(([row]) => row === id)?.[1];
    expect(of('i')).toBe(sum);
    expect(of('k')).toBe(sum + (of('j') ?? Number.NaN));
  }
});

test('a laboratory table is shown before it is taken in, and its words are asked for', () => {
  const table = [
    ['Sample ID', 'Location', 'Matrix', 'Analyte', 'Result', 'Units', 'Date'],
    ['X-1', 'Shaft alley', 'Cable jacket', 'PCB total', '12', 'mg/kg', '2026-10-01'],
  ];
  const library = shippedLibrary();
  const guessed = importView(project, library, { kind: 'laboratory', title: 'results.csv', table });
  expect(guessed.count).toBe(0);
  expect(guessed.meanings).toEqual([{ word: 'Cable jacket', means: 'Cable jacket' }]);
  const mapping = { ...guessed.mapping, words: { 'Cable jacket': 'pcb-cable' } };
  const told = importView(project, library, { kind: 'laboratory', title: 'results.csv', table, mapping });
  expect(told.count).toBe(1);
  expect(told.sections.survey.laboratory.at(-1)).toMatchObject({ sample: 'X-1', material: 'pcb-cable' });
});

test('a change of a scenario names the work item and what is set of it, in words', () => {
  const rows = desk.opened('scenarios')?.changes.rows ?? [];
  const said = rows.map(({ cells }) => `${cells['what']?.text ?? ''}: ${cells['to']?.text ?? ''}`);
  expect(said).toContain('Openings in bulkheads and decks cut: crews at once: 2');
  expect(said).toContain('Shifts: Two shifts, five days');
});
