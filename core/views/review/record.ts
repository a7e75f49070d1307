import type { EstimateContext } from '../context';
import { editCell, REMOVE_COLUMN, removeCell } from '../cells';
import type { Column, Row, TableRows } from '../rows';

const LESSON_COLUMNS: readonly Column[] = [
  { key: 'on', title: 'Day', kind: 'words' },
  { key: 'title', title: 'What went otherwise', kind: 'words' },
  { key: 'lesson', title: 'For the next estimate', kind: 'words' },
  REMOVE_COLUMN,
];

/** What was learned, kept for the next estimate. */
export function recordTables({ evaluation: { project } }: EstimateContext): readonly TableRows[] {
  const rows = (project.record?.lessons ?? []).map((one): Row => {
    const at = `/record/lessons/${one.id}`;
    return {
      id: one.id,
      kind: 'line',
      cells: {
        on: editCell({ at: `${at}/on`, kind: 'date', value: one.on, label: `Day of ${one.title}` }),
        title: editCell({ at: `${at}/title`, kind: 'text', value: one.title, label: 'What went otherwise' }),
        lesson: editCell({
          at: `${at}/lesson`,
          kind: 'text',
          value: one.lesson,
          label: `Lesson of ${one.title}`,
        }),
        remove: removeCell(at, `the lesson ${one.title}`),
      },
    };
  });
  return [
    {
      id: 'lessons',
      caption: 'Lessons',
      columns: LESSON_COLUMNS,
      rows,
      ...(project.record === undefined
        ? {}
        : {
            add: {
              at: '/record/lessons',
              what: 'a lesson',
              idFrom: 'title',
              entry: {},
              fields: [
                { path: 'on', kind: 'date', label: 'Day' },
                { path: 'title', kind: 'text', label: 'What went otherwise' },
                { path: 'lesson', kind: 'text', label: 'For the next estimate' },
              ],
            },
          }),
    },
  ];
}
