import { basisCell, editCell, givenCell, REMOVE_COLUMN, removeCell, words } from '../cells';
import type { EstimateContext } from '../context';
import type { AddField, Addition, Column, Edit, Row, Shown, TableRows } from '../rows';

const LESSON_COLUMNS: readonly Column[] = [
  { key: 'on', title: 'Day', kind: 'words' },
  { key: 'title', title: 'What went otherwise', kind: 'words' },
  { key: 'lesson', title: 'For the next estimate', kind: 'words' },
  REMOVE_COLUMN,
];

/** What was agreed, kept to compare with, checked by others and learned. */
export function recordTables(context: EstimateContext): readonly TableRows[] {
  return [approvalTable(context), baselineTable(context), independentTable(context), lessonTable(context)];
}

const COLUMNS: readonly Column[] = [
  { key: 'what', title: 'What', kind: 'words' },
  { key: 'value', title: 'As written down', kind: 'words' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
  REMOVE_COLUMN,
];

function line(id: string, what: string, value: Shown, more: Row['cells'] = {}): Row {
  return {
    id,
    kind: 'line',
    cells: {
      what: words(what),
      value,
      ...(value.unit === undefined ? {} : { unit: words(value.unit) }),
      ...(value.basis === undefined ? {} : { basis: basisCell(value.basis, value.source, value.why) }),
      ...more,
    },
  };
}

/** A cell of one field of an entry. */
function fieldAt(entry: string) {
  return (field: string, kind: Edit['kind'], value: string | undefined, label: string, optional = false) =>
    editCell({
      at: `${entry}/${field}`,
      kind,
      value: value ?? '',
      label,
      ...(optional ? { optional: true as const } : {}),
    });
}

/** The entry as a table with one row a field, or the way to write it. */
function entryTable(id: string, caption: string, rows: readonly Row[], add: Addition): TableRows {
  return { id, caption, columns: COLUMNS, rows, ...(rows.length === 0 ? { add } : {}) };
}

const remove = (at: string, label: string): Row['cells'] => ({ remove: removeCell(at, label) });
const day = (path: string, label: string, value?: string): AddField => ({
  path,
  kind: 'date',
  label,
  ...(value === undefined ? {} : { value }),
});
const note: AddField = { path: 'note', kind: 'text', label: 'Note', optional: true };

function approvalTable({ evaluation: { project } }: EstimateContext): TableRows {
  const at = '/record/approval';
  const cell = fieldAt(at);
  const approval = project.record?.approval;
  const rows =
    approval === undefined
      ? []
      : [
          line(
            'by',
            'Read and agreed by',
            cell('by', 'text', approval.by, 'Who agreed'),
            remove(at, 'the approval'),
          ),
          line('role', 'In the role of', cell('role', 'text', approval.role, 'Role', true)),
          line('on', 'On', cell('on', 'date', approval.on, 'Day of the approval')),
          line('note', 'Note', cell('note', 'text', approval.note, 'Note on the approval', true)),
        ];
  return entryTable('approval', 'Approval', rows, {
    at,
    what: 'the approval',
    single: true,
    entry: {},
    fields: [
      { path: 'by', kind: 'text', label: 'Read and agreed by' },
      { path: 'role', kind: 'text', label: 'In the role of', optional: true },
      day('on', 'On'),
      note,
    ],
  });
}

function baselineTable({ evaluation: { project }, parts, summary, measures }: EstimateContext): TableRows {
  const at = '/record/baseline';
  const cell = fieldAt(at);
  const kept = project.record?.baseline;
  const rows =
    kept === undefined
      ? []
      : [
          line(
            'keptOn',
            'Kept on',
            cell('keptOn', 'date', kept.keptOn, 'Day the plan was kept'),
            remove(at, 'the plan kept'),
          ),
          line('finish', 'Finish', cell('finish', 'date', kept.finish, 'Finish of the plan kept')),
          ...(kept.total === undefined
            ? []
            : [
                line(
                  'total',
                  'Total',
                  givenCell(`${at}/total`, 'Total of the plan kept', kept.total, measures),
                ),
              ]),
          line('note', 'Note', cell('note', 'text', kept.note, 'Note on the plan kept', true)),
        ];
  const total = summary?.total?.cents;
  return entryTable('baseline', 'Plan kept to compare with', rows, {
    at,
    what: 'this plan as the one to compare with',
    single: true,
    entry: {},
    fields: [
      day('keptOn', 'Kept on', project.statusDate),
      day('finish', 'Finish', parts.schedule.finish),
      {
        path: 'total',
        kind: 'figure',
        label: 'Total, $',
        unit: 'USD',
        optional: true,
        ...(total === undefined ? {} : { value: (total / 100).toFixed(2) }),
      },
      note,
    ],
  });
}

function independentTable({ evaluation: { project }, measures }: EstimateContext): TableRows {
  const at = '/record/independent';
  const cell = fieldAt(at);
  const other = project.record?.independent;
  const rows =
    other === undefined
      ? []
      : [
          line(
            'by',
            'Made by',
            cell('by', 'text', other.by, 'Who made it'),
            remove(at, 'the estimate of others'),
          ),
          line('on', 'On', cell('on', 'date', other.on, 'Day of the estimate of others')),
          line(
            'total',
            'Total',
            givenCell(`${at}/total`, 'Total of the estimate of others', other.total, measures),
          ),
          line(
            'explanation',
            'Why it differs',
            cell('explanation', 'text', other.explanation, 'Why it differs', true),
          ),
        ];
  return entryTable('independent', 'Estimate by others', rows, {
    at,
    what: 'an estimate by others',
    single: true,
    entry: {},
    fields: [
      { path: 'by', kind: 'text', label: 'Made by' },
      day('on', 'On'),
      { path: 'total', kind: 'figure', label: 'Total, $', unit: 'USD', basis: 'quoted' },
      { path: 'explanation', kind: 'text', label: 'Why it differs', optional: true },
    ],
  });
}

function lessonTable({ evaluation: { project } }: EstimateContext): TableRows {
  const rows = (project.record?.lessons ?? []).map((one): Row => {
    const cell = fieldAt(`/record/lessons/${one.id}`);
    return {
      id: one.id,
      kind: 'line',
      cells: {
        on: cell('on', 'date', one.on, `Day of ${one.title}`),
        title: cell('title', 'text', one.title, 'What went otherwise'),
        lesson: cell('lesson', 'text', one.lesson, `Lesson of ${one.title}`),
        remove: removeCell(`/record/lessons/${one.id}`, `the lesson ${one.title}`),
      },
    };
  });
  return {
    id: 'lessons',
    caption: 'Lessons',
    columns: LESSON_COLUMNS,
    rows,
    add: {
      at: '/record/lessons',
      what: 'a lesson',
      idFrom: 'title',
      entry: {},
      fields: [
        day('on', 'Day'),
        { path: 'title', kind: 'text', label: 'What went otherwise' },
        { path: 'lesson', kind: 'text', label: 'For the next estimate' },
      ],
    },
  };
}
