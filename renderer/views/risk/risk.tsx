import { useState } from 'react';
import type { FoundRisk, RiskRows } from '../../../core/views';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { StudyProgress } from '../../parts/study-progress';
import { Frontier } from '../../pictures/risk/frontier';
import { SCurve } from '../../pictures/risk/s-curve';
import { useWidth } from '../../pictures/use-width';
import { study, useStudy } from '../../state/studies';
import { Drivers } from './drivers';
import { Register } from './register';
import './risk.css';

const FACES = [
  { id: 'curves', title: 'Curves' },
  { id: 'drivers', title: 'Drivers' },
  { id: 'register', title: 'Register' },
  { id: 'contingency', title: 'Contingency' },
  { id: 'settings', title: 'How it is run' },
];

/** How sure cost and finish are: a run on demand, beside everything else that goes on. */
export default function Risk() {
  const { answer, working, fault } = useStudy('risk');
  const [face, setFace] = useState('curves');
  return (
    <>
      <TitleLine
        sentence={answer?.sentence ?? ['Making the register and the ranges ready.']}
        faces={FACES}
        face={face}
        onFace={setFace}
      />
      <StudyProgress name="risk" working={working} />
      {fault === undefined ? null : (
        <div className="caution notice" role="alert">
          <strong>The run could not be made.</strong> {fault} The last answer stays. Change what the message
          names, or run it again.
        </div>
      )}
      {answer === undefined ? null : <Face answer={answer} face={face} isWorking={working !== undefined} />}
    </>
  );
}

function Face({ answer, face, isWorking }: { answer: RiskRows; face: string; isWorking: boolean }) {
  const { found } = answer;
  if (answer.missing.length > 0) {
    return (
      <div className="empty">
        <p>The runs need a schedule and a total.</p>
        {answer.missing.map(words => (
          <p key={words}>{words}</p>
        ))}
      </div>
    );
  }
  if (face === 'register') return <Register rows={answer} />;
  if (face === 'settings') return <Settings rows={answer} />;
  if (found === undefined) return <NoRun isWorking={isWorking} />;
  return (
    <>
      <p className="quiet run-line">
        {answer.run}.{' '}
        <button
          type="button"
          className="text-button"
          disabled={isWorking}
          onClick={() => study('risk', true)}
        >
          Run again
        </button>
      </p>
      {answer.noted.map(words => (
        <p key={words} className="caution risk-note">
          {words}
        </p>
      ))}
      {face === 'curves' ? <Curves found={found} /> : null}
      {face === 'drivers' ? <Drivers found={found} /> : null}
      {face === 'contingency' ? <Contingency found={found} /> : null}
    </>
  );
}

function NoRun({ isWorking }: { isWorking: boolean }) {
  return (
    <div className="empty">
      <p>
        Cost and finish of thousands of runs stand here. Each run draws every range, event and weather window,
        then schedules and prices the project again.
      </p>
      <button type="button" className="main-button" disabled={isWorking} onClick={() => study('risk', true)}>
        Run the trials
      </button>
    </div>
  );
}

function Curves({ found }: { found: FoundRisk }) {
  const left = useWidth<HTMLDivElement>(500);
  const right = useWidth<HTMLDivElement>(500);
  const height = left.width > 700 ? 300 : 186;
  return (
    <div className="two-columns risk">
      <div className="column" ref={left.ref}>
        <h2 className="head">{found.cost.title}, in 100 runs</h2>
        <SCurve curve={found.cost} width={left.width} height={height} />
        <h2 className="head">{found.finish.title}, in 100 runs</h2>
        <SCurve curve={found.finish} width={left.width} height={height} />
        <div className="scroll-x">
          <DataTable table={found.percentiles} />
        </div>
        <p className="table-note">
          <Says sentence={found.planWords} />
        </p>
        <p className="table-note">
          <Says sentence={found.pastHulls} />
        </p>
      </div>
      <div className="column" ref={right.ref}>
        <h2 className="head">{found.frontier.title}</h2>
        <Frontier picture={found.frontier} width={right.width} height={height + 12} />
        <DataTable table={found.chances} />
        <DataTable table={found.frontier.table} />
      </div>
    </div>
  );
}

function Contingency({ found }: { found: FoundRisk }) {
  return (
    <div className="two-columns risk">
      <div className="column">
        <DataTable table={found.contingency} />
      </div>
      <div className="column">
        {found.surveys.rows.length === 0 ? null : <DataTable table={found.surveys} />}
        <p className="caution risk-note">{found.contingencyNote}</p>
      </div>
    </div>
  );
}

function Settings({ rows }: { rows: RiskRows }) {
  return (
    <div className="risk-settings">
      <DataTable table={rows.settings} />
    </div>
  );
}
