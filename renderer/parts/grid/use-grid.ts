import { useCallback, useRef, useState, type ClipboardEvent, type KeyboardEvent } from 'react';
import type { Column, Row } from '../../../core/views';
import { change, state } from '../../state/store';
import { askWhy } from '../../state/why';
import { edit as makeEdit } from '../../state/working-out';
import { removeEntry } from '../../edits/lists';
import { copied, pasted } from './clipboard';
import { isInside, moved, rangeOf, type Place } from './move';

export interface GridState {
  readonly at: Place;
  readonly isChosen: (place: Place) => boolean;
  readonly editing: Editing | undefined;
  /** Where the keys begin, without taking the focus there. */
  readonly place: (place: Place) => void;
  readonly focus: (place: Place, extend: boolean) => void;
  readonly act: (place: Place) => void;
  readonly doneEditing: (way: Leaving) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onCopy: (event: ClipboardEvent) => void;
  readonly onPaste: (event: ClipboardEvent) => void;
  readonly body: React.RefObject<HTMLTableElement | null>;
}

/** The cell whose editor is open, and the sign with which typing began there. */
interface Editing {
  readonly place: Place;
  readonly first: string | undefined;
}

/** How an editor is left: to the cell itself or one beside it, or to wherever the reader has gone already. */
export type Leaving = 'stay' | 'down' | 'right' | 'left' | 'gone';

const AFTER = { stay: '', down: 'ArrowDown', right: 'ArrowRight', left: 'ArrowLeft' } as const;

/** Whether an event comes from an editor, which has its own keys and its own clipboard. */
function isFromEditor({ target }: { readonly target: EventTarget }): boolean {
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement;
}

/** Where the focus is in a grid, what is chosen, and what the keys do. */
export function useGrid(
  rows: readonly Row[],
  columns: readonly Column[],
  onToggle: (row: Row) => void,
): GridState {
  const [at, setAt] = useState<Place>({ row: 0, column: 0 });
  const [anchor, setAnchor] = useState<Place>({ row: 0, column: 0 });
  const [editing, setEditing] = useState<Editing>();
  const body = useRef<HTMLTableElement>(null);
  // Of several places asked for within a frame the last one has the focus.
  const wanted = useRef<Place>(undefined);
  const extent = { rows: rows.length, columns: columns.length };
  const cell = (place: Place) => rows[place.row]?.cells[columns[place.column]?.key ?? ''];

  const focus = useCallback((place: Place, extend: boolean) => {
    setAt(place);
    if (!extend) setAnchor(place);
    wanted.current = place;
    requestAnimationFrame(() => {
      if (wanted.current !== place) return;
      const cell = body.current?.querySelector<HTMLElement>(`[data-place="${place.row}-${place.column}"]`);
      if (cell?.contains(window.document.activeElement) === false) cell.focus();
    });
  }, []);

  const act = (place: Place) => {
    const row = rows[place.row];
    const shown = cell(place);
    if (shown?.edit !== undefined) setEditing({ place, first: undefined });
    else if (shown?.remove !== undefined) makeEdit(removeEntry(shown.remove, state().scenario));
    else if (row?.kind === 'group' && shown?.why === undefined) onToggle(row);
    else if (shown?.why !== undefined) void askWhy(shown.why);
  };

  const doneEditing = (way: Leaving) => {
    setEditing(undefined);
    if (way === 'gone' || editing === undefined) return;
    focus(moved(AFTER[way], false, editing.place, extent) ?? editing.place, false);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (isFromEditor(event)) return;
    const to = moved(event.key, event.ctrlKey || event.metaKey, at, extent);
    if (to !== undefined && !event.altKey) {
      event.preventDefault();
      event.stopPropagation();
      focus(to, event.shiftKey);
      return;
    }
    const shown = cell(at);
    if (event.altKey && event.key === 'Enter' && shown?.why !== undefined) void askWhy(shown.why);
    else if (event.key === 'Enter' || event.key === 'F2') act(at);
    else if (isTyping(event) && shown?.edit !== undefined && shown.edit.choices === undefined)
      setEditing({ place: at, first: event.key });
    else return;
    event.preventDefault();
  };

  const onCopy = (event: ClipboardEvent) => {
    if (isFromEditor(event)) return;
    event.preventDefault();
    event.clipboardData.setData('text/plain', copied(rows, columns, rangeOf(at, anchor)));
    change({ status: 'Copied.' });
  };

  const onPaste = (event: ClipboardEvent) => {
    if (isFromEditor(event)) return;
    event.preventDefault();
    const done = pasted(
      event.clipboardData.getData('text/plain'),
      rows,
      columns,
      rangeOf(at, anchor).from,
      state().scenario,
      state().settings.measures,
    );
    const refused = done.edit === undefined ? undefined : makeEdit(done.edit);
    change({ status: refused ?? done.words });
  };

  const range = rangeOf(at, anchor);
  return {
    at,
    isChosen: place => (at.row !== anchor.row || at.column !== anchor.column) && isInside(place, range),
    editing,
    place: place => {
      setAt(place);
      setAnchor(place);
    },
    focus,
    act,
    doneEditing,
    onKeyDown,
    onCopy,
    onPaste,
    body,
  };
}

/** Any letter, digit or sign starts typing; a space alone moves the page, as elsewhere. */
export function isTyping({
  key,
  ctrlKey,
  metaKey,
  altKey,
}: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>): boolean {
  return key.length === 1 && key !== ' ' && !ctrlKey && !metaKey && !altKey;
}
