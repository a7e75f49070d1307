import { useId, useState } from 'react';
import type { Column, Row, TableRows } from '../../../core/views';
import { change, useWindow } from '../../state/store';
import { toldAt, toldOfRow } from '../../state/told-at';
import { AddForm } from '../add-form';
import { Says } from '../figure';
import { CellContent, CellEditor } from './cell';
import { useGrid, type GridState } from './use-grid';
import { useShownRows } from './use-shown-rows';

interface DataTableProps {
  readonly table: TableRows;
  /** Leaves the caption to a heading beside it. */
  readonly isCaptionUnseen?: boolean;
  readonly isSticky?: boolean;
  /** Shows its groups folded at first. */
  readonly startsFolded?: boolean;
  /** Something drawn at the end of a row, such as its bar. */
  readonly after?: (row: Row) => React.ReactNode;
}

/** A table of ready-made rows that is moved through, asked, edited, copied and pasted like a sheet. */
export function DataTable({
  table,
  isCaptionUnseen = false,
  isSticky = false,
  startsFolded = false,
  after,
}: DataTableProps) {
  const [folded, setFolded] = useState<ReadonlySet<string>>(
    () => new Set(startsFolded ? table.rows.filter(row => row.kind === 'group').map(row => row.id) : []),
  );
  const unfolded = table.rows.filter(row => row.under === undefined || !folded.has(row.under));
  const toggle = (row: Row) => {
    const next = new Set(folded);
    if (!next.delete(row.id)) next.add(row.id);
    setFolded(next);
  };
  const isTree = table.rows.some(row => row.kind === 'group');
  const grid = useGrid(unfolded, table.columns, toggle);
  useChosen(table.rows, unfolded, folded, setFolded, grid);
  const shown = useShownRows(unfolded, grid.body, grid.at.row);
  return (
    <>
      <table
        className={isSticky ? 'data-table sticky' : 'data-table'}
        role={isTree ? 'treegrid' : 'grid'}
        aria-rowcount={unfolded.length + 1}
        aria-colcount={table.columns.length}
        aria-multiselectable="true"
        ref={grid.body}
        onKeyDown={grid.onKeyDown}
        onCopy={grid.onCopy}
        onPaste={grid.onPaste}
      >
        <caption className={isCaptionUnseen ? 'unseen' : 'head caption'}>{table.caption}</caption>
        <thead>
          <tr aria-rowindex={1}>
            {table.columns.map(column => (
              <Head key={column.key} column={column} />
            ))}
            {after === undefined ? null : <td aria-hidden="true" />}
          </tr>
        </thead>
        <tbody>
          {shown.before > 0 ? <Space height={shown.before} columns={table.columns.length} /> : null}
          {shown.rows.map(({ row, index }) => (
            <TableRow
              key={row.id}
              row={row}
              index={index}
              columns={table.columns}
              grid={grid}
              isFolded={folded.has(row.id)}
              isTree={isTree}
              after={after}
            />
          ))}
          {shown.after > 0 ? <Space height={shown.after} columns={table.columns.length} /> : null}
        </tbody>
      </table>
      {table.note === undefined ? null : (
        <p className="table-note">
          <Says sentence={table.note} />
        </p>
      )}
      {table.add === undefined ? null : <AddForm addition={table.add} />}
    </>
  );
}

/** What is chosen elsewhere is among the rows that are kept in the page: its group is opened, and it is the place of the keys. */
function useChosen(
  rows: readonly Row[],
  unfolded: readonly Row[],
  folded: ReadonlySet<string>,
  setFolded: (folded: ReadonlySet<string>) => void,
  grid: GridState,
): void {
  const chosen = useWindow(window => window.chosen);
  const [last, setLast] = useState<string>();
  if (chosen === last) return;
  const row = chosen === undefined ? undefined : rows.find(one => one.subject === chosen);
  if (row?.under !== undefined && folded.has(row.under)) {
    setFolded(new Set([...folded].filter(id => id !== row.under)));
    return;
  }
  setLast(chosen);
  const at = row === undefined ? -1 : unfolded.indexOf(row);
  if (at >= 0 && unfolded[grid.at.row]?.subject !== chosen) grid.place({ row: at, column: 0 });
}

function Space({ height, columns }: { height: number; columns: number }) {
  return (
    <tr aria-hidden="true">
      <td colSpan={columns} style={{ height: `${height}px`, padding: 0, border: 0 }} />
    </tr>
  );
}

function Head({ column }: { column: Column }) {
  const isNumber = column.kind === 'number' || column.kind === 'share' || column.kind === 'range';
  return (
    <th
      scope="col"
      className={`${isNumber ? 'number' : ''} ${column.wide === true ? 'wide-only' : ''}`.trim()}
    >
      {column.kind === 'action' ? <span className="unseen">{column.title}</span> : column.title}
      {column.unit === undefined ? null : <span className="unit">{column.unit}</span>}
    </th>
  );
}

interface TableRowProps {
  readonly row: Row;
  readonly index: number;
  readonly columns: readonly Column[];
  readonly grid: GridState;
  readonly isFolded: boolean;
  readonly isTree: boolean;
  readonly after: ((row: Row) => React.ReactNode) | undefined;
}

function TableRow({ row, index, columns, grid, isFolded, isTree, after }: TableRowProps) {
  const chosen = useWindow(window => window.chosen);
  const isChosen = row.subject !== undefined && row.subject === chosen;
  const words = [row.kind === 'line' ? '' : row.kind, isChosen ? 'chosen' : '']
    .filter(word => word !== '')
    .join(' ');
  const told = toldOfRow(
    useWindow(window => toldAt(window.rows)),
    row,
  );
  const id = useId();
  return (
    <>
      <tr
        className={words === '' ? undefined : words}
        data-subject={row.subject}
        aria-rowindex={index + 2}
        aria-expanded={row.kind === 'group' ? !isFolded : undefined}
        aria-level={isTree ? (row.under === undefined ? 1 : 2) : undefined}
        onClick={row.subject === undefined ? undefined : () => change({ chosen: row.subject })}
      >
        {columns.map((column, at) => (
          <TableCell
            key={column.key}
            row={row}
            column={column}
            place={{ row: index, column: at }}
            grid={grid}
            toldBy={told[column.key] === undefined ? undefined : `${id}${column.key}`}
          />
        ))}
        {after === undefined ? null : <td aria-hidden="true">{after(row)}</td>}
      </tr>
      {Object.keys(told).length === 0 ? null : (
        <tr className="told">
          <td role="gridcell" colSpan={columns.length + (after === undefined ? 0 : 1)}>
            {Object.entries(told).map(([key, words]) => (
              <span key={key} id={`${id}${key}`} className="field-fault">
                {words}
              </span>
            ))}
          </td>
        </tr>
      )}
    </>
  );
}

/** Inputs that are never broken over lines. */
const TIGHT = new Set(['date', 'whole', 'decimal', 'figure']);
/** A choice of no more letters than this stays on one line, too. */
const SHORT = 12;

function isTight(kind: string, text: string): boolean {
  return TIGHT.has(kind) || (kind === 'choice' && text.length <= SHORT);
}

interface TableCellProps {
  readonly row: Row;
  readonly column: Column;
  readonly place: { readonly row: number; readonly column: number };
  readonly grid: GridState;
  /** The id of what the findings say of its input, below the row. */
  readonly toldBy: string | undefined;
}

function TableCell({ row, column, place, grid, toldBy }: TableCellProps) {
  const shown = row.cells[column.key];
  const isHere = grid.at.row === place.row && grid.at.column === place.column;
  const { place: open } = grid.editing ?? {};
  const editing = open?.row === place.row && open.column === place.column ? grid.editing : undefined;
  const isEdited = editing !== undefined && shown?.edit !== undefined;
  const isNumber = column.kind === 'number' || column.kind === 'share' || column.kind === 'range';
  const isEditable = shown?.edit !== undefined;
  const className = [
    isNumber ? 'number' : column.kind === 'unit' || column.kind === 'action' ? column.kind : '',
    isEditable ? 'editable' : '',
    isEdited ? 'edited' : '',
    shown?.edit !== undefined && isTight(shown.edit.kind, shown.text) ? 'tight' : '',
    column.wide === true ? 'wide-only' : '',
  ]
    .filter(word => word !== '')
    .join(' ');
  return (
    <td
      role="gridcell"
      className={className === '' ? undefined : className}
      tabIndex={isHere ? 0 : -1}
      aria-selected={grid.isChosen(place) ? true : undefined}
      aria-readonly={isEditable ? undefined : true}
      aria-invalid={toldBy === undefined ? undefined : true}
      aria-describedby={toldBy}
      data-place={`${place.row}-${place.column}`}
      data-why={shown?.why}
      data-edit={shown?.edit?.at}
      data-kind={shown?.edit?.kind}
      data-remove={shown?.remove?.at}
      onFocus={event => {
        if (event.target === event.currentTarget && !isHere) grid.focus(place, false);
      }}
      onMouseDown={event => {
        if (event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement) return;
        grid.focus(place, event.shiftKey);
      }}
      onClick={event => {
        if (isEdited || event.shiftKey) return;
        if (isHere || shown?.why !== undefined || shown?.remove !== undefined || isEditable) grid.act(place);
      }}
    >
      {isEdited ? (
        <>
          <span className="cell-under" aria-hidden="true">
            <CellContent shown={shown} column={column} />
          </span>
          <span className="cell-over">
            <CellEditor edit={shown.edit} first={editing.first} onDone={grid.doneEditing} />
          </span>
        </>
      ) : (
        <CellContent shown={shown} column={column} />
      )}
    </td>
  );
}
