import fs from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readProject, type Project } from '../../core/project';
import { projectSchema } from '../../core/project/schema';
import type { Addition, Edit, Row } from '../../core/views';
import {
  asItIsNow,
  keepEditsInScenario,
  scenarioOfPlan,
  setGiven,
  setSwitch,
  takeAway,
  together,
  typedEdit,
} from '../../renderer/edits/edits';
import { addEntry, removeEntry } from '../../renderer/edits/lists';
import { copied, pasted } from '../../renderer/parts/grid/clipboard';
import { isTyping } from '../../renderer/parts/grid/use-grid';
import { edited, isEdited, markSaved, redone, startHistory, undone } from '../../renderer/state/history';

function demo(): Project {
  const { project } = readProject(
    fs.readFileSync(path.join(import.meta.dirname, '../../demo/wrenfield.reef.json'), 'utf8'),
  );
  if (project === undefined) throw new Error('the demo does not read');
  return project;
}

const length: Edit = { at: '/vessel/length', kind: 'figure', value: '', unit: 'ft', label: 'Length overall' };
const quantity: Edit = {
  at: '/items/hull-visit/hoursPerUnit',
  kind: 'figure',
  value: '',
  unit: 'h/each',
  label: 'Hours',
};
const wage: Edit = {
  at: '/rates/overrides/trades~1burner~1wage/figure',
  kind: 'figure',
  value: '',
  unit: 'USD/h',
  label: 'Wage',
};

test('a number typed by hand says so, and its old range goes with the old number', () => {
  const after = edited(startHistory(demo()), setGiven(length, 'none', { value: '400' })).project;
  expect(after.vessel.length).toEqual({
    value: '400',
    unit: 'ft',
    basis: 'judgement',
    source: 'Entered by hand',
  });
});

test('the first change of an item and of a rate makes its entry, and taking it back leaves nothing in its place', () => {
  const first = edited(startHistory(demo()), setGiven(quantity, 'none', { value: '9' }));
  expect(first.project.items.find(item => item.item === 'hull-visit')?.hoursPerUnit?.value).toBe('9');
  const back = edited(first, takeAway(quantity, 'none'));
  expect(back.project.items.find(item => item.item === 'hull-visit')?.hoursPerUnit).toBeUndefined();
  const rate = edited(startHistory(demo()), setGiven(wage, 'none', { value: '30' })).project.rates.overrides;
  expect(rate).toContainEqual({
    at: 'trades/burner/wage',
    figure: { value: '30', unit: 'USD/h', basis: 'judgement', source: 'Entered by hand' },
  });
});

test('a rate typed again stays at the prices of its year; another one is of the year it is typed in, or of the one said', () => {
  const at = '/rates/overrides/streams~1used-oil~1unitPrice/figure';
  const edit: Edit = { ...wage, at, value: '80.0', year: 2024, yearNow: 2026 };
  const yearOf = (change: { value: string; year?: number }) =>
    edited(startHistory(demo()), setGiven(edit, 'none', change)).project.rates.overrides.find(
      one => one.at === 'streams/used-oil/unitPrice',
    )?.figure.year;
  expect(yearOf({ value: '80' })).toBe(2024);
  expect(yearOf({ value: '91.4' })).toBe(2026);
  expect(yearOf({ value: '91.4', year: 2025 })).toBe(2025);
  expect(yearOf({ value: '80', year: 2025 })).toBe(2025);
});

test('what a scenario changes is edited in the scenario, and the project stays as it was', () => {
  const project = demo();
  const scenario = project.scenarios.find(one => one.changes.length > 0);
  const change = scenario?.changes[0];
  if (scenario === undefined || change === undefined)
    throw new Error('the demo has no scenario that differs');
  const edit: Edit = { at: change.at, kind: 'choice', value: '', label: 'Choice' };
  const after = edited(startHistory(project), setSwitch(edit, scenario.id, true)).project;
  expect(after.scenarios.find(one => one.id === scenario.id)?.changes[0]?.to).toBe(true);
  expect({ ...after, scenarios: [] }).toEqual({ ...project, scenarios: [] });
});

test('undo restores the document exactly, and doing it again restores the edit', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.constantFrom(length, quantity, wage), fc.integer({ min: 1, max: 999 })), {
        minLength: 1,
        maxLength: 12,
      }),
      edits => {
        const start = startHistory(demo());
        const all = edits.reduce(
          (history, [edit, value]) => edited(history, setGiven(edit, 'none', { value: String(value) })),
          start,
        );
        const back = edits.reduce(undone, all);
        expect(back.project).toEqual(start.project);
        expect(edits.reduce(redone, back).project).toEqual(all.project);
      },
    ),
    { numRuns: 60 },
  );
});

test('a paste of many cells is one step to undo', () => {
  const history = edited(
    startHistory(demo()),
    together('paste 2 cells', [
      setGiven(length, 'none', { value: '1' }),
      setGiven(wage, 'none', { value: '2' }),
    ]),
  );
  expect(history.past).toHaveLength(1);
  expect(undone(history).project).toEqual(demo());
});

test('the unsaved mark goes with saving and comes back with undo', () => {
  const first = edited(startHistory(demo()), setGiven(length, 'none', { value: '1' }));
  expect(isEdited(first)).toBe(true);
  const saved = markSaved(first);
  expect(isEdited(saved)).toBe(false);
  expect(isEdited(undone(saved))).toBe(true);
  expect(isEdited(redone(undone(saved)))).toBe(false);
  expect(isEdited(edited(undone(saved), setGiven(length, 'none', { value: '3' })))).toBe(true);
});

const COLUMNS = [
  { key: 'title', title: 'Title', kind: 'words' as const },
  { key: 'value', title: 'Value', kind: 'number' as const },
];
const ROWS: readonly Row[] = [
  { id: 'a', kind: 'line', cells: { title: { text: 'A' }, value: { text: '1,234.5', edit: length } } },
  { id: 'b', kind: 'line', cells: { title: { text: 'B' }, value: { text: '\u22127', edit: wage } } },
];

test('a copied range is what a spreadsheet reads as numbers', () => {
  expect(copied(ROWS, COLUMNS, { from: { row: 0, column: 0 }, to: { row: 1, column: 1 } })).toBe(
    'A\t1234.5\nB\t-7',
  );
});

test('a paste changes what may be changed, passes over the rest, and says so', () => {
  const done = pasted('x\t10\ny\tnot a number\n', ROWS, COLUMNS, { row: 0, column: 0 }, 'none', 'metric');
  expect(done.words).toBe('Pasted 1 cells; 3 could not be changed and stay.');
  const after = done.edit === undefined ? demo() : edited(startHistory(demo()), done.edit).project;
  expect(after.vessel.length.value).toBe('10');
});

test('a word is put into a list of the document and taken out again', () => {
  const project = demo();
  const closure = project.calendars.closures[0];
  if (closure === undefined) throw new Error('the demo has no closure');
  const sea: Edit = {
    at: `/calendars/closures/${closure.id}/calendars/sea`,
    kind: 'switch',
    value: '',
    label: 'Stops the sea',
    member: true,
  };
  const listOf = (of: Project) => of.calendars.closures[0]?.calendars.toSorted();
  const isIn = closure.calendars.includes('sea');
  const once = edited(startHistory(project), typedEdit(sea, 'none', String(!isIn)));
  expect(listOf(once.project)?.includes('sea')).toBe(!isIn);
  const twice = edited(once, typedEdit(sea, 'none', String(isIn)));
  expect(listOf(twice.project)).toEqual(closure.calendars.toSorted());
});

test('an entry that the document holds once is written whole, with the section around it, and taken out again', () => {
  const { record: _, ...without } = demo();
  const approval: Addition = {
    at: '/record/approval',
    what: 'the approval',
    single: true,
    entry: {},
    fields: [
      { path: 'by', kind: 'text', label: 'By' },
      { path: 'on', kind: 'date', label: 'On' },
    ],
  };
  const written = edited(
    startHistory(without),
    addEntry(approval, 'none', { by: 'The invented board', on: '2026-12-01' }),
  );
  expect(written.project.record).toEqual({
    crossChecks: [],
    leftOut: [],
    reasons: [],
    lessons: [],
    approval: { by: 'The invented board', on: '2026-12-01' },
  });
  expect(projectSchema.safeParse(written.project).success).toBe(true);
  const back = edited(written, removeEntry({ at: '/record/approval', label: 'the approval' }, 'none'));
  expect(back.project.record?.approval).toBeUndefined();
});

test('words are edited as the document has them now, in the scenario too, not as they were shown', () => {
  const project = demo();
  const [first] = project.scenarios;
  if (first === undefined) throw new Error('the demo has no scenario');
  const shown: Edit = { at: '/vessel/name', kind: 'text', value: 'Before', label: 'Name' };
  expect(asItIsNow(shown, project, first.id)).toEqual({ ...shown, value: project.vessel.name });
  expect(asItIsNow(shown, undefined, first.id)).toEqual(shown);
  const own = { ...first, changes: [{ at: '/vessel', to: { name: 'Own' } }] };
  const changed = { ...project, scenarios: [own, ...project.scenarios.slice(1)] };
  expect(asItIsNow(shown, changed, first.id).value).toBe('Own');
  expect(asItIsNow(shown, changed, 'none').value).toBe(project.vessel.name);
  const exact = { ...first, changes: [{ at: '/vessel/name', to: 'Exactly' }] };
  expect(asItIsNow(shown, { ...project, scenarios: [exact] }, first.id).value).toBe('Exactly');
  // A note by its place, and one that is not there: looking makes nothing.
  const at = '/vessel/length';
  const note: Edit = {
    at: `/notes/${at.replaceAll('/', '~1')}/text`,
    kind: 'text',
    value: '',
    label: 'Note',
  };
  const noted = { ...project, notes: [{ at, text: 'Measured twice' }] };
  expect(asItIsNow(note, noted, first.id).value).toBe('Measured twice');
  const bare = { ...project, notes: [] };
  expect(asItIsNow(note, bare, first.id)).toEqual(note);
  expect(bare.notes).toEqual([]);
  // A number is shown in units of its own.
  const length: Edit = { at: '/vessel/length/value', kind: 'figure', value: '9', label: 'Length' };
  expect(asItIsNow(length, project, first.id)).toEqual(length);
});

test('a first alternate is kept, with a bid made around it that fits the document', () => {
  const { bid: _, ...without } = demo();
  const addition: Addition = {
    ...{ at: '/bid/alternates', what: 'an alternate', idFrom: 'title', entry: {} },
    fields: [
      { path: 'title', kind: 'text', label: 'Words' },
      { path: 'amount', kind: 'figure', label: 'Adds', unit: 'USD' },
    ],
  };
  const { project } = edited(
    startHistory(without),
    addEntry(addition, 'none', { title: 'Add a buoy', amount: '5000' }),
  );
  expect(project.bid?.items).toEqual([]);
  expect(project.bid?.alternates).toMatchObject([
    { id: 'add-a-buoy', amount: { value: '5000', unit: 'USD' } },
  ]);
  expect(projectSchema.safeParse(project).success).toBe(true);
});

test('a crew plan becomes a scenario beside the one it was found for, and its crews take the place of what lay inside', () => {
  const project = demo();
  const [first] = project.scenarios;
  if (first === undefined) throw new Error('the demo has no scenario');
  const figure = { value: '2', unit: 'each', basis: 'judgement', source: 'Crew plan' };
  const own = { at: '/items/hull-visit/hoursPerUnit', to: { ...figure, unit: 'h/each' } };
  const changes = [{ at: '/items/hull-visit', to: { item: 'hull-visit', note: '', crews: figure } }];
  const before = {
    ...project,
    scenarios: [{ ...first, changes: [...first.changes, own] }, ...project.scenarios.slice(1)],
  };
  const plan = scenarioOfPlan(first.id, { id: 'crew-plan-b', title: 'Crew plan B', changes });
  const history = edited(startHistory(before), plan);
  const made = history.project.scenarios.at(-1);
  expect(made).toEqual({ id: 'crew-plan-b', title: 'Crew plan B', changes: [...first.changes, ...changes] });
  expect(history.project.scenarios.slice(0, -1)).toEqual(before.scenarios);
  expect(
    readProject(JSON.stringify(history.project)).findings.filter(one => one.weight === 'blocks'),
  ).toEqual([]);
  expect(undone(history).project).toEqual(before);
  expect(edited(history, plan).project.scenarios).toHaveLength(before.scenarios.length + 1);
});

test('the first day of a grant takes the award date along where it has none of its own', () => {
  const [source] = demo().funding?.sources ?? [];
  if (source === undefined) throw new Error('the demo has sources');
  const at = `/funding/sources/${source.id}/period/start`;
  const firstDay: Edit = { at, kind: 'date', value: '', label: 'First day', pair: 'finish' };
  const given = (edit: Edit) =>
    edited(startHistory(demo()), typedEdit(edit, 'none', '2027-02-01')).project.funding;
  expect(given(firstDay)?.awardDate).toBe(demo().funding?.awardDate);
  const along = given({ ...firstDay, takesAlong: '/funding/awardDate' });
  expect(along?.awardDate).toBe('2027-02-01');
  expect(along?.sources[0]?.period?.start).toBe('2027-02-01');
});

test('what a choice puts is put whole, for all scenarios or for the chosen one alone', () => {
  const puts = { policy: 'confidence', confidence: '0.8' } as const;
  const edit: Edit = {
    ...{ at: '/contingency', kind: 'choice', value: 'percentage', label: 'How the contingency is set' },
    choices: [{ id: 'confidence', title: 'a confidence', puts }],
  };
  const project = demo();
  const scenario = project.scenarios[0]?.id ?? '';
  const shared = edited(startHistory(project), typedEdit(edit, scenario, 'confidence')).project;
  expect(shared.contingency).toEqual(puts);
  keepEditsInScenario(true);
  const alone = edited(startHistory(project), typedEdit(edit, scenario, 'confidence')).project;
  keepEditsInScenario(false);
  expect(alone.contingency).toEqual(project.contingency);
  expect(alone.scenarios[0]?.changes).toContainEqual({ at: '/contingency', to: puts });
});

test('every letter, digit and sign starts typing in a cell; keys of commands and a space do not', () => {
  const key = (name: string, held = {}) => ({
    ...{ key: name, ctrlKey: false, metaKey: false, altKey: false },
    ...held,
  });
  expect(['4', '-', '.', '$', 'R', 'é', '<'].map(name => isTyping(key(name)))).toEqual(Array(7).fill(true));
  expect(['Enter', 'F2', 'Tab', ' '].map(name => isTyping(key(name)))).toEqual(Array(4).fill(false));
  expect(isTyping(key('c', { ctrlKey: true }))).toBe(false);
  expect(isTyping(key('v', { metaKey: true }))).toBe(false);
});
