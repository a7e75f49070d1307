import { useEffect, useRef, useState } from 'react';
import { lowerFirst, type Basis } from '../../core/base';
import { readTyped, unitWords, type Edit, type WhyRow, type WhyRows } from '../../core/views';
import { setGiven, takeAway } from '../edits/edits';
import { BasisMark } from '../parts/basis-mark';
import { Figure } from '../parts/figure';
import { InlineField } from '../parts/field';
import { change, useWindow } from '../state/store';
import { askWhy, closeWhy, whyBack } from '../state/why';
import { edit } from '../state/working-out';
import { goToInput } from './go-to-input';
import { VIEWS } from './view-table';

/** The derivation of the figure asked about, beside the surface. It stays open while it is followed. */
export function WhyPanel() {
  const trail = useWindow(window => window.why);
  const open = trail.at(-1);
  const panel = useRef<HTMLElement>(null);
  const id = open?.id;
  useEffect(() => {
    if (id !== undefined) panel.current?.focus({ preventScroll: true });
  }, [id]);
  if (open === undefined) return null;
  return (
    <aside className="why-panel" aria-label="Why this figure" tabIndex={-1} ref={panel}>
      <div className="why-bar">
        {trail.length > 1 ? (
          <button type="button" className="text-button" onClick={whyBack}>
            ‹ Back
          </button>
        ) : null}
        <span className="quiet why-path">{open.path}</span>
        <button type="button" className="text-button" onClick={closeWhy}>
          Close
        </button>
      </div>
      <h2 className="head">{open.title}</h2>
      <p className="why-figure">
        {open.value.text} <small>{open.value.unit}</small>
      </p>
      <p className="serif why-words">{open.words}</p>
      <ol className="why-rows">
        {open.rows.map((row, at) => (
          <Step key={`${at}-${row.words}`} row={row} />
        ))}
      </ol>
      <UsedBy open={open} />
      <FigureNote open={open} key={`note-${open.id}`} />
      <Actions open={open} key={open.id} />
    </aside>
  );
}

function Step({ row }: { row: WhyRow }) {
  const { value } = row;
  return (
    <li className="why-row" data-depth={row.depth} style={{ paddingInlineStart: `${row.depth * 14}px` }}>
      <span className="why-operator">{row.operator}</span>
      <span className="why-value">
        <Figure shown={value} />
      </span>
      <span className="why-name">
        <Words words={row.words} why={value.why} /> <span className="unit">{value.unit}</span>
        {value.basis === undefined ? null : (
          <span className="why-source">
            <BasisMark basis={value.basis} source={value.source} /> {value.source}
          </span>
        )}
        {row.range === undefined ? null : <Range range={row.range} />}
      </span>
    </li>
  );
}

/** The words of a step open it as its number does; the keyboard stops at the number alone. */
function Words({ words, why }: { words: string; why: string | undefined }) {
  if (why === undefined) return <>{words}</>;
  return (
    <button type="button" className="why-step" tabIndex={-1} onClick={() => void askWhy(why)}>
      {words}
    </button>
  );
}

function Range({ range }: { range: NonNullable<WhyRow['range']> }) {
  return (
    <span className="why-range">
      {range.low}
      <svg width="52" height="9" viewBox="0 0 52 9" aria-hidden="true">
        <path d="M1 1.5V7.5M51 1.5V7.5M1 4.5H51" stroke="var(--data)" strokeWidth="1" fill="none" />
        <circle cx={1 + range.at * 50} cy="4.5" r="3" fill="var(--data)" />
      </svg>
      {range.high}
    </span>
  );
}

function UsedBy({ open }: { open: WhyRows }) {
  if (open.usedBy.length === 0) return null;
  return (
    <>
      <h3 className="why-used">Used by</h3>
      <ul>
        {open.usedBy.map(user => (
          <li key={user.why} className="why-user">
            <button type="button" className="text-button" onClick={() => void askWhy(user.why)}>
              {user.title}
            </button>
            <span className="quiet">{user.view}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** A note on the figure, kept with the project. Emptied, it is taken away. */
function FigureNote({ open }: { open: WhyRows }) {
  const note = useWindow(window => window.history?.project.notes.find(one => one.at === open.id)?.text);
  const [isOpen, setOpen] = useState(note !== undefined);
  const step = open.id.replaceAll('~', '~0').replaceAll('/', '~1');
  if (!isOpen && note === undefined) {
    return (
      <button type="button" className="text-button why-note" onClick={() => setOpen(true)}>
        Write a note on this figure
      </button>
    );
  }
  return (
    <p className="why-note">
      Note:{' '}
      <InlineField
        className="words note-input"
        edit={{
          at: `/notes/${step}/text`,
          kind: 'text',
          value: note ?? '',
          label: `Note on ${lowerFirst(open.title)}`,
          optional: true,
        }}
      />
    </p>
  );
}

function Actions({ open }: { open: WhyRows }) {
  const [isOverriding, setOverriding] = useState(false);
  const home = VIEWS.find(view => view.id === open.home);
  return (
    <div className="why-actions">
      {isOverriding && open.edit !== undefined ? (
        <Override given={open.edit} bases={open.bases} onDone={() => setOverriding(false)} />
      ) : null}
      {open.edit !== undefined && !isOverriding ? (
        <button type="button" className="plain-button" onClick={() => setOverriding(true)}>
          Change value or basis
        </button>
      ) : null}
      {home === undefined ? null : (
        <button type="button" className="plain-button" onClick={() => void goToInput(home.id, open.edit?.at)}>
          Go to the input
        </button>
      )}
    </div>
  );
}

interface OverrideProps {
  readonly given: Edit;
  readonly bases: readonly Basis[];
  readonly onDone: () => void;
}

function Override({ given, bases, onDone }: OverrideProps) {
  const scenario = useWindow(window => window.scenario);
  const measures = useWindow(window => window.settings.measures);
  const [value, setValue] = useState(given.value);
  const [basis, setBasis] = useState<Basis>('judgement');
  const [source, setSource] = useState('');
  const [note, setNote] = useState('');
  const [year, setYear] = useState(String(given.yearNow ?? ''));
  const [fault, setFault] = useState<string>();
  const take = () => {
    const typed = readTyped(given, value, measures);
    if ('fault' in typed) setFault(typed.fault);
    else if (source.trim().length < 3)
      setFault('Say where the number comes from, so that others can check it.');
    else if (given.yearNow !== undefined && !/^\d{4}$/.test(year.trim()))
      setFault('Say the year whose prices it is at, such as 2026.');
    else {
      const said = { value: typed.value, basis, source: source.trim(), note: note.trim() };
      const atPrices = given.yearNow === undefined ? said : { ...said, year: Number(year) };
      const wrong = edit(setGiven(given, scenario, atPrices));
      setFault(wrong);
      if (wrong !== undefined) return;
      change({ status: `${given.label} is overridden.` });
      onDone();
    }
  };
  return (
    <form
      className="override"
      onSubmit={event => {
        event.preventDefault();
        take();
      }}
    >
      <label>
        {given.label} <span className="unit">{unitWords(given.unit ?? '1')}</span>
        <input value={value} inputMode="decimal" onChange={event => setValue(event.target.value)} />
      </label>
      <label>
        Basis
        <select
          value={basis}
          onChange={event => setBasis(bases.find(one => one === event.target.value) ?? 'judgement')}
        >
          {bases.map(one => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <label>
        Source
        <input value={source} onChange={event => setSource(event.target.value)} />
      </label>
      {given.yearNow === undefined ? null : (
        <label>
          At the prices of
          <input value={year} inputMode="numeric" onChange={event => setYear(event.target.value)} />
        </label>
      )}
      <label>
        Note
        <input value={note} onChange={event => setNote(event.target.value)} />
      </label>
      {fault === undefined ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <div className="why-buttons">
        <button type="submit" className="main-button">
          Override
        </button>
        <button type="button" className="plain-button" onClick={onDone}>
          Leave it
        </button>
        <button
          type="button"
          className="plain-button"
          onClick={() => {
            edit(takeAway(given, scenario));
            onDone();
          }}
        >
          Take the override back
        </button>
      </div>
    </form>
  );
}
