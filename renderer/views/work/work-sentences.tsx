import { useEffect, useRef, useState } from 'react';
import type { WorkLine, WorkStage, WorkView } from '../../../core/views';
import { setSwitch } from '../../edits/edits';
import { BasisMark } from '../../parts/basis-mark';
import { InlineField } from '../../parts/field';
import { Figure } from '../../parts/figure';
import { change, useWindow } from '../../state/store';
import { edit } from '../../state/working-out';

/** Every item as a sentence a contractor would write, with each of its numbers editable in place. */
export function WorkSentences({ view }: { view: WorkView }) {
  return (
    <div className="work-sentences">
      {view.stages.map(stage => (
        <Stage key={stage.id} stage={stage} />
      ))}
      <LeftOut view={view} />
    </div>
  );
}

function Stage({ stage }: { stage: WorkStage }) {
  const [isOpen, setOpen] = useState(true);
  return (
    <section aria-labelledby={`stage-${stage.id}`}>
      <div className="stage-head">
        <h2 id={`stage-${stage.id}`} className="head">
          <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            <span aria-hidden="true" className="fold">
              {isOpen ? '−' : '+'}
            </span>
            {stage.title} <span className="count">{stage.count}</span>
          </button>
        </h2>
        <span className="stage-hours">
          <Figure shown={stage.hours} />
        </span>
        <span className="stage-cost">
          <Figure shown={stage.cost} />
        </span>
        <span className="stage-basis" />
      </div>
      {isOpen ? (
        <ul>
          {stage.lines.map(line => (
            <Line key={line.id} line={line} />
          ))}
        </ul>
      ) : null}
    </section>
  );
}

function Line({ line }: { line: WorkLine }) {
  const isChosen = useWindow(window => window.chosen === line.id);
  const item = useRef<HTMLLIElement>(null);
  const [hasNote, setNote] = useState(line.note.value !== '');
  useEffect(() => {
    if (isChosen) item.current?.scrollIntoView({ block: 'nearest' });
  }, [isChosen]);
  return (
    <li
      ref={item}
      className={isChosen ? 'work-line chosen' : 'work-line'}
      data-subject={line.id}
      onFocus={() => {
        if (!isChosen) change({ chosen: line.id });
      }}
    >
      <div className="work-says">
        <p>
          {line.says.map((part, at) =>
            typeof part === 'string' ? (
              part
            ) : part.edit === undefined ? (
              <Figure key={`${at}-${part.why ?? ''}`} shown={part} />
            ) : (
              <InlineField key={`${at}-${part.edit.at}`} edit={part.edit} />
            ),
          )}
        </p>
        {hasNote ? null : (
          <button type="button" className="note-button" onClick={() => setNote(true)}>
            Note
          </button>
        )}
        {line.quotes.map(quote => (
          <p key={quote} className="quiet">
            {quote}
          </p>
        ))}
        {hasNote ? (
          <p className="quiet note-line">
            Note: <InlineField edit={line.note} className="words note-input" />
          </p>
        ) : null}
        {line.findings.map(words => (
          <p key={words} className="field-fault">
            {words}
          </p>
        ))}
      </div>
      <span className="work-hours">
        <Figure shown={line.hours} />
      </span>
      <span className="work-cost">
        <Figure shown={line.cost} />
      </span>
      <span className="work-basis">{line.basis === undefined ? null : <BasisMark basis={line.basis} />}</span>
    </li>
  );
}

/** Items of the library that are not in this scenario, and why; any can be taken in. */
function LeftOut({ view }: { view: WorkView }) {
  const scenario = useWindow(window => window.scenario);
  const [isOpen, setOpen] = useState(false);
  if (view.leftOut.length === 0) return null;
  return (
    <section aria-labelledby="left-out">
      <div className="stage-head">
        <h2 id="left-out" className="head">
          <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            <span aria-hidden="true" className="fold">
              {isOpen ? '−' : '+'}
            </span>
            Not in this scenario <span className="count">{view.leftOut.length}</span>
          </button>
        </h2>
      </div>
      {isOpen ? (
        <ul>
          {view.leftOut.map(item => (
            <li key={item.id} className="work-line">
              <p className="work-says">
                {item.title} <span className="quiet">{item.why}</span>
              </p>
              <button
                type="button"
                className="text-button"
                onClick={() => edit(setSwitch(item.include, scenario, true))}
              >
                Take it in
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
