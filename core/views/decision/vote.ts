import type { Evaluation } from '../../evaluation';
import type { Decision } from '../../papers';
import { editCell, words } from '../cells';
import type { Column, Row, TableRows } from '../rows';

const CHOICE: readonly Column[] = [
  { key: 'what', title: 'The vote', kind: 'words' },
  { key: 'value', title: 'Now', kind: 'words' },
];

/** What the board has chosen. Only scenarios that may be carried out can be chosen. */
export function choiceTable({ project }: Evaluation, { table }: Decision): TableRows {
  const { chosen, note } = project.decision ?? {};
  const able = table.ranked.toSorted((a, b) => (a.letter < b.letter ? -1 : 1));
  const choices = [
    { id: '', title: 'not yet' },
    ...able.map(({ scenario, letter, title }) => ({ id: scenario, title: `${letter}, ${title}` })),
  ];
  const value = able.some(one => one.scenario === chosen) ? (chosen ?? '') : '';
  const rows: Row[] = [
    {
      id: 'chosen',
      kind: 'line',
      cells: {
        what: words('The board has chosen'),
        value: editCell({
          at: '/decision/chosen',
          kind: 'choice',
          value,
          label: 'The scenario the board has chosen',
          choices,
          optional: true,
        }),
      },
    },
    {
      id: 'note',
      kind: 'line',
      cells: {
        what: words('Who chose, and why'),
        value: editCell({
          at: '/decision/note',
          kind: 'text',
          value: note ?? '',
          label: 'Who chose, and why',
          optional: true,
        }),
      },
    },
  ];
  const runs = table.leftOut.map(({ letter, reason }) => `${letter} cannot be chosen: it ${reason}.`);
  return {
    id: 'board-choice',
    caption: 'The vote',
    columns: CHOICE,
    rows,
    ...(runs.length === 0 ? {} : { note: [runs.join(' ')] }),
  };
}
