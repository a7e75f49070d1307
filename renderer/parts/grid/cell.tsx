import { useState, type ReactNode } from 'react';
import type { Column, Edit, Shown } from '../../../core/views';
import { asItIsNow } from '../../edits/edits';
import { change, state, useWindow } from '../../state/store';
import { BasisMark } from '../basis-mark';
import { takeTyped } from '../field';

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
  readonly onDone: (move: 'stay' | 'down' | 'right' | 'left') => void;
}

/** The editor inside a cell. Enter takes and goes down, Tab takes and goes on, Escape leaves it as it was. */
export function CellEditor({ edit: shown, first, onDone }: EditorProps) {
  const scenario = useWindow(window => window.scenario);
  const [edit] = useState(() => asItIsNow(shown, state().history?.project, scenario));
  const [typed, setTyped] = useState(first ?? edit.value);
  const [fault, setFault] = useState<string>();
  // A number typed anew was entered, by whatever key the cell is left.
  const [isRetyped, setRetyped] = useState(first !== undefined);
  const take = (move: 'stay' | 'down' | 'right' | 'left', text = typed) => {
    const wrong = takeTyped(edit, scenario, text, isRetyped || move === 'down');
    setFault(wrong);
    if (wrong === undefined) onDone(move);
    else change({ status: wrong });
  };
  if (edit.choices !== undefined) {
    return (
      <select
        autoFocus
        className="cell-input"
        aria-label={edit.label}
        value={typed}
        onChange={event => take('stay', event.target.value)}
        onBlur={() => onDone('stay')}
        onKeyDown={event => {
          if (event.key !== 'Escape') return;
          event.stopPropagation();
          onDone('stay');
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
        onBlur={() => take('stay')}
        onKeyDown={event => {
          event.stopPropagation();
          if (event.key === 'Enter') take('down');
          if (event.key === 'Escape') onDone('stay');
          if (event.key === 'Tab') {
            event.preventDefault();
            take(event.shiftKey ? 'left' : 'right');
          }
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
