import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { DataTable } from '../../parts/grid/data-table';
import { TimeChart } from '../../pictures/time/time-chart';
import { useWidth } from '../../pictures/use-width';
import { useWindow } from '../../state/store';
import { Crews } from './crews';
import './schedule.css';

const FACES = [
  { id: 'picture', title: 'Picture' },
  { id: 'table', title: 'Table' },
  { id: 'crews', title: 'Crews' },
  { id: 'calendar', title: 'Calendar and limits' },
];

/** The levelled schedule: when what is done where, what holds it, and how many people it takes. */
export default function Schedule() {
  const view = useWindow(window => window.rows?.schedule);
  const [face, setFace] = useState('picture');
  const { ref, width } = useWidth<HTMLDivElement>(1048);
  if (view === undefined) {
    return (
      <>
        <TitleLine sentence={['There is no schedule: a finding withholds it.']} />
        <div className="empty">
          <p>
            The work appears here in time once its hours and calendars are known. Review lists what is
            missing.
          </p>
        </div>
      </>
    );
  }
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      <div ref={ref} className="scroll-x schedule-body">
        {face === 'picture' ? (
          <>
            <TimeChart view={view} width={Math.max(width, 720)} />
            <ScheduleLegend
              hasMoved={view.lanes.some(lane => lane.bars.some(bar => bar.earlier !== undefined))}
            />
          </>
        ) : null}
        {face === 'table' ? (
          <>
            <DataTable table={view.table} isSticky isCaptionUnseen />
            <DataTable table={view.peopleTable} />
          </>
        ) : null}
        {face === 'crews' ? <Crews /> : null}
        {face === 'calendar' ? (
          <>
            <DataTable table={view.calendar} />
            <DataTable table={view.closures} />
          </>
        ) : null}
      </div>
    </>
  );
}

function ScheduleLegend({ hasMoved }: { hasMoved: boolean }) {
  return (
    <p className="legend schedule-legend" aria-hidden="true">
      <span>
        <svg width="24" height="12">
          <rect
            x="1"
            y="1"
            width="22"
            height="10"
            fill="var(--data3)"
            stroke="var(--text)"
            strokeWidth="2.5"
          />
        </svg>{' '}
        holds the finish
      </span>
      <span>
        <svg width="24" height="12">
          <rect x="1" y="2" width="22" height="8" fill="var(--data3)" stroke="var(--data2)" />
        </svg>{' '}
        work with float
      </span>
      <span>
        <svg width="24" height="12">
          <path d="M0 6H24" stroke="var(--data2)" strokeWidth="2.5" strokeDasharray="6 3" />
        </svg>{' '}
        waiting
      </span>
      <span>
        <svg width="24" height="12">
          <path d="M0 12L12 0M8 12L20 0M16 12L24 4" stroke="var(--hatch)" />
          <rect width="24" height="12" fill="none" stroke="var(--hatch)" />
        </svg>{' '}
        closed
      </span>
      <span>
        <svg width="24" height="12">
          <path d="M2 3h2M8 3h2M14 3h2M20 3h2M5 8h2M11 8h2M17 8h2" stroke="var(--hatch2)" strokeWidth="2" />
          <rect width="24" height="12" fill="none" stroke="var(--hatch2)" />
        </svg>{' '}
        weather window
      </span>
      {hasMoved ? (
        <span>
          <svg width="24" height="12">
            <path d="M2 6V9H22V6" fill="none" stroke="var(--text)" />
          </svg>{' '}
          start and finish when the project was opened
        </span>
      ) : null}
    </p>
  );
}
