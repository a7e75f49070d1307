import type { ImportView } from '../../core/views';

type Mapping = ImportView['mapping'];

interface ImportColumnsProps {
  readonly view: ImportView;
  readonly onChange: (mapping: Mapping) => void;
}

const DATES: readonly Mapping['dates'][] = ['YYYY-MM-DD', 'MM/DD/YYYY', 'DD.MM.YYYY'];

/** Which column of the file is which field, what holds for the whole file, and what its words mean. */
export function ImportColumns({ view, onChange }: ImportColumnsProps) {
  const { mapping } = view;
  return (
    <>
      <div className="import-grid">
        <label>
          <span className="add-label">Row of the headings</span>
          <input
            inputMode="numeric"
            value={mapping.headingRow}
            onChange={event => {
              const row = Number(event.target.value);
              if (Number.isInteger(row) && row >= 1 && row <= 200) onChange({ ...mapping, headingRow: row });
            }}
          />
        </label>
        <label>
          <span className="add-label">Dates are written</span>
          <select
            value={mapping.dates}
            onChange={event =>
              onChange({ ...mapping, dates: DATES.find(one => one === event.target.value) ?? 'YYYY-MM-DD' })
            }
          >
            {DATES.map(one => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <label>
          <span className="add-label">Decimals follow a</span>
          <select
            value={mapping.decimals}
            onChange={event =>
              onChange({ ...mapping, decimals: event.target.value === 'comma' ? 'comma' : 'point' })
            }
          >
            <option>point</option>
            <option>comma</option>
          </select>
        </label>
      </div>
      <h3 className="head">Which column is which</h3>
      <div className="import-grid">
        {view.fields.map(field => (
          <Field key={field.field} field={field} view={view} onChange={onChange} />
        ))}
      </div>
      <Meanings view={view} onChange={onChange} />
    </>
  );
}

interface FieldProps extends ImportColumnsProps {
  readonly field: ImportView['fields'][number];
}

/** A field comes from a column, or holds for the whole file. */
function Field({ field, view, onChange }: FieldProps) {
  const { mapping } = view;
  const put = (heading: string, constant: string) => {
    const columns = { ...mapping.columns };
    const constants = { ...mapping.constants };
    Reflect.deleteProperty(columns, field.field);
    Reflect.deleteProperty(constants, field.field);
    if (heading !== '') columns[field.field] = heading;
    if (constant !== '') constants[field.field] = constant;
    onChange({ ...mapping, columns, constants });
  };
  return (
    <div className="import-field">
      <label>
        <span className="add-label">
          {field.title}
          {field.required ? '' : ', if there is one'}
        </span>
        <select value={field.heading} onChange={event => put(event.target.value, '')}>
          <option value="">no column</option>
          {view.headings.map(heading => (
            <option key={heading}>{heading}</option>
          ))}
        </select>
      </label>
      {field.heading === '' ? (
        <input
          aria-label={`${field.title}, the same for the whole file`}
          placeholder="same for all"
          defaultValue={field.constant}
          onBlur={event => {
            if (event.target.value !== field.constant) put('', event.target.value);
          }}
        />
      ) : null}
    </div>
  );
}

/** What the words of the file mean in the document. */
function Meanings({ view, onChange }: ImportColumnsProps) {
  const { mapping, meaningChoices } = view;
  if (view.meanings.length === 0 || meaningChoices.length === 0) return null;
  return (
    <>
      <h3 className="head">What its words mean</h3>
      <div className="import-grid">
        {view.meanings.map(({ word, means }) => (
          <label key={word}>
            <span className="add-label">{word}</span>
            <select
              value={meaningChoices.some(one => one.id === means) ? means : ''}
              onChange={event =>
                onChange({ ...mapping, words: { ...mapping.words, [word]: event.target.value } })
              }
            >
              <option value="">not known</option>
              {meaningChoices.map(choice => (
                <option key={choice.id} value={choice.id}>
                  {choice.title}
                </option>
              ))}
            </select>
          </label>
        ))}
      </div>
    </>
  );
}
