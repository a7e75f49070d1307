import { editCell, REMOVE_COLUMN, removeCell, words } from './cells';
import type { EstimateContext } from './context';
import type { Column, Row, TableRows } from './rows';

const COLUMNS: readonly Column[] = [
  { key: 'name', title: 'File', kind: 'words' },
  { key: 'page', title: 'Page', kind: 'words' },
  { key: 'note', title: 'What it proves', kind: 'words' },
  { key: 'usedBy', title: 'Named by', kind: 'words' },
  { key: 'sum', title: 'Check sum, first part', kind: 'words', wide: true },
  REMOVE_COLUMN,
];

export interface EvidenceView {
  readonly attachments: TableRows;
}

/** The files that prove a figure: their name and check sum are kept, the files stay where they are. */
export function evidenceView({ evaluation: { project } }: EstimateContext): EvidenceView {
  const rows = project.attachments.map((one, index): Row => {
    const at = `/attachments/${index}`;
    const users = project.quotes.filter(quote => quote.attachment === one.name).map(quote => quote.vendor);
    return {
      id: `attachment-${index}`,
      kind: 'line',
      cells: {
        name: words(one.name),
        page: editCell({
          at: `${at}/page`,
          kind: 'whole',
          value: one.page === undefined ? '' : String(one.page),
          label: `Page of ${one.name}`,
          optional: true,
        }),
        note: editCell({
          at: `${at}/note`,
          kind: 'text',
          value: one.note ?? '',
          label: `What ${one.name} proves`,
          optional: true,
        }),
        usedBy: words(users.join('; ')),
        sum: words(one.sha256.slice(0, 16)),
        remove: removeCell(at, `the file ${one.name}`),
      },
    };
  });
  return { attachments: { id: 'attachments', caption: 'Evidence', columns: COLUMNS, rows } };
}
