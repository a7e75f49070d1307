import { useId, useState } from 'react';
import { readTyped, type AddField, type Addition, type Measures, type Typed } from '../../core/views';
import { addEntry, type Filled } from '../edits/lists';
import { change, useWindow } from '../state/store';
import { edit } from '../state/working-out';

/** Adds an entry to a list: a button, then its fields side by side. What is missing is told below, so that no field moves. */
export function AddForm({ addition }: { addition: Addition }) {
  const [isOpen, setOpen] = useState(false);
  if (!isOpen) {
    return (
      <button
        type="button"
        className="plain-button add-button"
        data-add={addition.at}
        onClick={() => setOpen(true)}
      >
        Add {addition.what}
      </button>
    );
  }
  return <Fields addition={addition} onDone={() => setOpen(false)} />;
}

function startOf({ fields }: Addition): Filled {
  return Object.fromEntries(fields.map(field => [field.path, field.value ?? field.choices?.[0]?.id ?? '']));
}

function Fields({ addition, onDone }: { addition: Addition; onDone: () => void }) {
  const scenario = useWindow(window => window.scenario);
  const measures = useWindow(window => window.settings.measures);
  const [filled, setFilled] = useState<Filled>(() => startOf(addition));
  const [faults, setFaults] = useState<Filled>({});
  const [refused, setRefused] = useState<string>();
  const formId = useId();
  const told = [...Object.entries(faults), ...(refused === undefined ? [] : [['', refused] as const])];
  const take = () => {
    const read = addition.fields.map(
      field => [field.path, readField(field, filled[field.path] ?? '', measures)] as const,
    );
    const wrong = read.flatMap(([path, typed]) => ('fault' in typed ? [[path, typed.fault] as const] : []));
    setFaults(Object.fromEntries(wrong));
    if (wrong.length > 0) return;
    const values = read.flatMap(([path, typed]) => ('value' in typed ? [[path, typed.value] as const] : []));
    const refused = edit(addEntry(addition, scenario, Object.fromEntries(values)));
    setRefused(refused);
    if (refused !== undefined) return;
    change({ status: `Added ${addition.what}.` });
    onDone();
  };
  return (
    <form
      className="add-form"
      aria-label={`Add ${addition.what}`}
      onSubmit={event => {
        event.preventDefault();
        take();
      }}
    >
      {addition.fields.map((field, at) => (
        <Field
          key={field.path}
          field={field}
          value={filled[field.path] ?? ''}
          told={faults[field.path] === undefined ? undefined : `${formId}-${field.path}`}
          isFirst={at === 0}
          onChange={value => setFilled({ ...filled, [field.path]: value })}
        />
      ))}
      <div className="add-buttons">
        <button type="submit" className="main-button">
          Add
        </button>
        <button type="button" className="plain-button" onClick={onDone}>
          Leave it
        </button>
        <div className="add-faults">
          {told.map(([path, fault]) => (
            <p key={path} className="field-fault" id={`${formId}-${path}`} role="alert">
              {fault}
            </p>
          ))}
        </div>
      </div>
    </form>
  );
}

/** What was typed into a field of the form, or what is missing. */
function readField(field: AddField, text: string, measures: Measures): Typed {
  if (text.trim() === '')
    return field.optional === true
      ? { value: '' }
      : { fault: `${field.label} is needed before this can be added.` };
  const typed = readTyped(field, text, measures);
  return 'fault' in typed ? { fault: `${field.label}: ${typed.fault}` } : typed;
}

interface FieldProps {
  readonly field: AddField;
  readonly value: string;
  /** Where it is told what is wrong with it. */
  readonly told: string | undefined;
  readonly isFirst: boolean;
  readonly onChange: (value: string) => void;
}

function Field({ field, value, told, isFirst, onChange }: FieldProps) {
  const isNumber = field.kind === 'figure' || field.kind === 'whole';
  return (
    <label className={isNumber || field.kind === 'date' ? 'short' : undefined}>
      <span className="add-label">{field.label}</span>
      {field.choices === undefined ? (
        <input
          autoFocus={isFirst}
          value={value}
          placeholder={field.kind === 'date' ? 'YYYY-MM-DD' : undefined}
          inputMode={isNumber ? 'decimal' : 'text'}
          aria-invalid={told !== undefined}
          aria-describedby={told}
          onChange={event => onChange(event.target.value)}
        />
      ) : (
        <select autoFocus={isFirst} value={value} onChange={event => onChange(event.target.value)}>
          {field.choices.map(choice => (
            <option key={choice.id} value={choice.id}>
              {choice.title}
            </option>
          ))}
        </select>
      )}
    </label>
  );
}
