import { useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import type { Column, Edit, Shown } from '../../../core/views';
import { asItIsNow } from '../../edits/edits';
import { change, state, useWindow } from '../../state/store';
import { BasisMark } from '../basis-mark';
import { takeTyped } from '../field';
import type { Leaving } from './use-grid';

/** What stands in a cell that is not being edited. */
export function CellContent({ shown, column }: { shown: Shown | undefined; column: Column }): ReactNode {
  if (shown === undefined) return null;
  if (column.kind === 'basis') {
    return shown.basis === undefined ? shown.text : <BasisMark basis={shown.basis} source={shown.source} />;
  }
  const tone =
    shown.absent === true ? 'missing' : shown.accent === true ? 'accent' : shown.text === '–' ? 'dash' : '';
  return (
    <>
      <span
        className={`${shown.why === undefined ? '' : 'figure'} ${shown.remove === undefined ? '' : 'text-button'} ${tone}`.trim()}
      >
        {shown.edit === undefined ? shown.text : <Editable shown={shown} edit={shown.edit} />}
      </span>
      {shown.pad === undefined ? null : (
        <span className="hidden-digits" aria-hidden="true">
          {shown.pad}
        </span>
      )}
    </>
  );
}

/** What may be edited: words as the document has them now, also before the rest has been worked out. */
function Editable({ shown, edit }: { shown: Shown; edit: Edit }): ReactNode {
  const words = useWindow(window => asItIsNow(edit, window.history?.project, window.scenario).value);
  if (edit.choices !== undefined) return chosenTitle(edit);
  return shown.text === edit.value ? words : shown.text;
}

function chosenTitle(edit: Edit): string {
  return edit.choices?.find(choice => choice.id === edit.value)?.title ?? edit.value;
}

interface EditorProps {
  readonly edit: Edit;
  readonly first: string | undefined;
  readonly onDone: (way: Leaving) => void;
}

/**
 * The editor inside a cell. Enter takes and goes down, Tab takes and goes on, going elsewhere takes, Escape leaves it as
 * it was. A choice made by keys waits for one of these; one picked from the list is taken at once.
 */
export function CellEditor({ edit: shown, first, onDone }: EditorProps) {
  const scenario = useWindow(window => window.scenario);
  const [edit] = useState(() => asItIsNow(shown, state().history?.project, scenario));
  const [typed, setTyped] = useState(first ?? edit.value);
  const [fault, setFault] = useState<string>();
  // A number typed anew was entered, by whatever key the cell is left.
  const [isRetyped, setRetyped] = useState(first !== undefined);
  const isByKey = useRef(false);
  const isLeft = useRef(false);
  const leave = (way: Leaving) => {
    isLeft.current = true;
    onDone(way);
  };
  const take = (way: Leaving, text = typed) => {
    if (isLeft.current) return;
    const wrong = takeTyped(edit, scenario, text, isRetyped || way === 'down');
    setFault(wrong);
    if (wrong === undefined) leave(way);
    else change({ status: wrong });
  };
  if (edit.choices !== undefined) {
    return (
      <select
        autoFocus
        className="cell-input"
        aria-label={edit.label}
        value={typed}
        onMouseDown={() => {
          isByKey.current = false;
        }}
        onChange={event => {
          if (isByKey.current) setTyped(event.target.value);
          else take('stay', event.target.value);
        }}
        onBlur={() => take('gone')}
        onKeyDown={event => {
          isByKey.current = true;
          leaveByKey(event, take, leave);
        }}
      >
        {(edit.choices ?? []).map(choice => (
          <option key={choice.id} value={choice.id}>
            {choice.title}
          </option>
        ))}
      </select>
    );
  }
  return (
    <>
      <input
        autoFocus
        data-typed="true"
        className="cell-input"
        aria-label={edit.label}
        aria-invalid={fault !== undefined}
        value={typed}
        onFocus={event => {
          if (first === undefined) event.target.select();
        }}
        onChange={event => {
          setTyped(event.target.value);
          setRetyped(true);
        }}
        onBlur={() => take('gone')}
        onKeyDown={event => {
          event.stopPropagation();
          leaveByKey(event, take, leave);
        }}
      />
      {fault === undefined ? null : (
        <span className="field-fault" role="alert">
          {fault}
        </span>
      )}
    </>
  );
}

/** Enter, Tab and Escape leave an editor. */
function leaveByKey(event: KeyboardEvent, take: (way: Leaving) => void, leave: (way: Leaving) => void): void {
  if (event.key === 'Enter') take('down');
  else if (event.key === 'Escape') leave('stay');
  else if (event.key === 'Tab') take(event.shiftKey ? 'left' : 'right');
  else return;
  event.preventDefault();
  event.stopPropagation();
}
