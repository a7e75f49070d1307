import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { Choices } from './choices';
import { VerdictMark } from '../../parts/verdict-mark';
import { DeckPlan } from '../../pictures/ship/deck-plan';
import { ShipLegend } from '../../pictures/ship/legend';
import { SectionStrip } from '../../pictures/sinking/section-strip';
import { TimeCurves } from '../../pictures/sinking/time-curves';
import { useWidth } from '../../pictures/use-width';
import { useWindow } from '../../state/store';
import type { SinkingView } from '../../../core/views';
import './sinking.css';

const FACES = [
  { id: 'picture', title: 'Picture' },
  { id: 'table', title: 'Table' },
];

/** Whether she stays upright on the way down: a screening. */
export default function Sinking() {
  const view = useWindow(window => window.rows?.sinking);
  const ship = useWindow(window => window.rows?.vessel?.picture);
  const [face, setFace] = useState('picture');
  const { ref, width } = useWidth<HTMLDivElement>(596);
  if (view === undefined) {
    return (
      <>
        <TitleLine
          sentence={['The upright screen cannot be run yet: a particular of the ship is missing.']}
        />
        <div className="empty">
          <p>The ship is followed down here once length, beam, depth, draught and lightship are known.</p>
        </div>
      </>
    );
  }
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      <div className="two-columns sinking">
        <div className="column" ref={ref}>
          {face === 'picture' ? (
            <>
              {ship === undefined || ship.steps.length === 0 ? null : (
                <>
                  <DeckPlan picture={ship} width={width} tallest={190} />
                  <ShipLegend picture={ship} />
                </>
              )}
              <SectionStrip view={view} width={width} />
              {view.stripNote === '' ? null : <p className="table-note">{view.stripNote}</p>}
              <TimeCurves view={view} width={width} />
              {view.stages.note === undefined ? null : (
                <p className="table-note">
                  <Says sentence={view.stages.note} />
                </p>
              )}
            </>
          ) : (
            <DataTable table={view.stages} />
          )}
        </div>
        <div className="column">
          <Verdict view={view} />
          {view.sizing.rows.length === 0 ? null : <DataTable table={view.sizing} />}
          <div className="caution screening">
            {view.caution} It cannot see: {view.cannotSee.join('; ')}.
          </div>
        </div>
      </div>
      <Choices />
    </>
  );
}

function Verdict({ view }: { view: SinkingView }) {
  return (
    <div className="verdict">
      <VerdictMark verdict={view.verdict} />
      <div>
        <h2 className="serif verdict-word">{view.verdict}</h2>
        {view.reasons.map(reason => (
          <p key={reason} className="verdict-reason">
            {reason}
          </p>
        ))}
      </div>
    </div>
  );
}
