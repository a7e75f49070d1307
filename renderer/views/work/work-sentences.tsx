import { useState } from 'react';
import type { Column, WorkStage, WorkView } from '../../../core/views';
import { setSwitch } from '../../edits/edits';
import { Figure } from '../../parts/figure';
import { useWindow } from '../../state/store';
import { edit } from '../../state/working-out';
import { WorkLines } from './work-lines';

/** Up to this many lines all are kept in the page. */
const ALL = 300;

/** Every item as a sentence a contractor would write, with each of its numbers editable in place. */
export function WorkSentences({ view }: { view: WorkView }) {
  const isLong = view.stages.reduce((sum, stage) => sum + stage.lines.length, 0) > ALL;
  return (
    <div className="work-sentences">
      <Heads columns={view.table.columns} />
      {view.stages.map(stage => (
        <Stage key={stage.id} stage={stage} isLong={isLong} />
      ))}
      <LeftOut view={view} />
    </div>
  );
}

/** What the sentences and their columns are, as in the table of the same work. */
function Heads({ columns }: { columns: readonly Column[] }) {
  return (
    <div className="work-heads">
      {['title', 'hours', 'total', 'basis'].map(key => {
        const column = columns.find(one => one.key === key);
        return (
          <span key={key} className={column?.kind === 'number' ? 'number' : undefined}>
            {column?.title}
            {column?.unit === undefined ? null : <span className="unit">{column.unit}</span>}
          </span>
        );
      })}
    </div>
  );
}

function Stage({ stage, isLong }: { stage: WorkStage; isLong: boolean }) {
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
      {isOpen ? <WorkLines lines={stage.lines} isLong={isLong} /> : null}
    </section>
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
