import { useId, useState } from 'react';
import { readTyped, unitWords, type Edit } from '../../core/views';
import { takeAway, typedEdit } from '../edits/edits';
import { change, state, useWindow } from '../state/store';
import { toldAt, toldOf } from '../state/told-at';
import { edit as makeEdit } from '../state/working-out';

/**
 * Takes what was typed: makes the edit, or says what is wrong with it. What stands there already is no edit, unless a
 * project begins with it and it was entered, not only passed.
 */
export function takeTyped(edit: Edit, scenario: string, text: string, isEntered = false): string | undefined {
  if (text.trim() === edit.value && !(isEntered && edit.begins === true)) return undefined;
  if (edit.optional === true && text.trim() === '') {
    return makeEdit(takeAway(edit, scenario));
  }
  const typed = readTyped(edit, text, state().settings.measures);
  if ('fault' in typed) return typed.fault;
  return makeEdit(typedEdit(edit, scenario, typed.value));
}

/** The finding about a place of the document, told beside its field. */
function useFinding(at: string): string | undefined {
  return useWindow(window => toldOf(toldAt(window.rows), at));
}

/** A number inside a sentence or a cell, edited in place: Enter or leaving takes it, Escape leaves it as it was. */
export function InlineField({ edit, className = '' }: { edit: Edit; className?: string }) {
  const scenario = useWindow(window => window.scenario);
  const [typed, setTyped] = useState<string>();
  const [fault, setFault] = useState<string>();
  const finding = useFinding(edit.at);
  const id = useId();
  const said = fault ?? finding;
  // A number typed anew was entered, by whatever key the field is left; Enter takes what stands there as well.
  const take = (text = typed) => {
    if (text === undefined) return;
    const wrong = takeTyped(edit, scenario, text, true);
    setFault(wrong);
    if (wrong === undefined) setTyped(undefined);
    else change({ status: wrong });
  };
  if (edit.choices !== undefined) return <ChoiceField edit={edit} scenario={scenario} />;
  const shown = typed ?? edit.value;
  return (
    <span className="inline-field">
      <input
        className={`inline-input ${className}`}
        aria-label={nameOf(edit)}
        aria-invalid={said !== undefined}
        aria-describedby={said === undefined ? undefined : id}
        data-edit={edit.at}
        data-kind={edit.kind}
        value={shown}
        inputMode={edit.kind === 'figure' || edit.kind === 'whole' ? 'decimal' : 'text'}
        style={{ inlineSize: `${Math.max(shown.length, 1)}.9ch` }}
        onChange={event => setTyped(event.target.value)}
        onBlur={() => take()}
        onKeyDown={event => {
          if (event.key === 'Enter') take(shown);
          if (event.key !== 'Escape') return;
          event.stopPropagation();
          setTyped(undefined);
          setFault(undefined);
        }}
      />
      {said === undefined ? null : (
        <span className="field-fault" id={id} role="alert">
          {said}
        </span>
      )}
    </span>
  );
}

/** What the field is called: the unit beside it where it has one. */
function nameOf({ label, unit = '1' }: Edit): string {
  const words = unitWords(unit);
  return words === '' ? label : `${label}, ${words}`;
}

function ChoiceField({ edit, scenario }: { edit: Edit; scenario: string }) {
  return (
    <select
      className="inline-choice"
      aria-label={edit.label}
      data-edit={edit.at}
      data-kind={edit.kind}
      value={edit.value}
      onChange={event => makeEdit(typedEdit(edit, scenario, event.target.value))}
    >
      {(edit.choices ?? []).map(choice => (
        <option key={choice.id} value={choice.id}>
          {choice.title}
        </option>
      ))}
    </select>
  );
}
