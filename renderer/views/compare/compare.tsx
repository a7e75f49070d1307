import { useState } from 'react';
import type { CompareRows } from '../../../core/views';
import { runCommand } from '../../commands/run';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { StudyProgress } from '../../parts/study-progress';
import { VerdictMark } from '../../parts/verdict-mark';
import { BridgePicture } from '../../pictures/compare/bridge';
import { Frontier } from '../../pictures/risk/frontier';
import { useWidth } from '../../pictures/use-width';
import { study, useStudy } from '../../state/studies';
import { Weights } from './weights';
import './compare.css';

const FACES = [
  { id: 'all', title: 'Side by side' },
  { id: 'differences', title: 'What differs' },
  { id: 'weights', title: 'Weights' },
  { id: 'tables', title: 'Tables' },
];

/** Two to six scenarios: what each costs and takes, what separates them, and which comes first. */
export default function Compare() {
  const { answer, working, fault } = useStudy('compare');
  const [face, setFace] = useState('all');
  return (
    <>
      <TitleLine
        sentence={answer?.sentence ?? ['Working out every scenario.']}
        faces={FACES}
        face={face}
        onFace={setFace}
      />
      <StudyProgress name="compare" working={working} />
      {fault === undefined ? null : (
        <div className="caution notice" role="alert">
          <strong>The scenarios could not be compared.</strong> {fault} The last comparison stays. Undo the
          last edit, or open the view again.
        </div>
      )}
      {answer === undefined ? null : <Face rows={answer} face={face} isWorking={working !== undefined} />}
    </>
  );
}

interface FaceProps {
  readonly rows: CompareRows;
  readonly face: string;
  readonly isWorking: boolean;
}

function Face({ rows, face, isWorking }: FaceProps) {
  if (rows.scenarios.length < 2) {
    return (
      <div className="empty">
        <p>Two to six ways to do the same project stand side by side here.</p>
        <button type="button" className="main-button" onClick={() => runCommand('scenarios')}>
          Add a scenario
        </button>
      </div>
    );
  }
  if (face === 'weights') return <Weights rows={rows} />;
  if (face === 'tables') return <Tables rows={rows} />;
  if (face === 'differences') {
    return (
      <div className="scroll-x">
        <DataTable table={rows.differences} isCaptionUnseen />
      </div>
    );
  }
  return <SideBySide rows={rows} isWorking={isWorking} />;
}

function SideBySide({ rows, isWorking }: { rows: CompareRows; isWorking: boolean }) {
  const left = useWidth<HTMLDivElement>(580);
  const right = useWidth<HTMLDivElement>(432);
  return (
    <div className="two-columns compare">
      <div className="column" ref={left.ref}>
        <div className="scroll-x compare-facts">
          <DataTable table={rows.facts} isCaptionUnseen />
        </div>
        <Bridges rows={rows} width={left.width} />
      </div>
      <div className="column" ref={right.ref}>
        {rows.frontier === undefined ? null : (
          <>
            <h2 className="head">{rows.frontier.title}</h2>
            <Frontier picture={rows.frontier} width={right.width} height={right.width > 600 ? 420 : 268} />
          </>
        )}
        {rows.paired.map(words => (
          <p key={words} className="quiet">
            {words}
          </p>
        ))}
        {rows.waiting === undefined ? null : (
          <p className="compare-run">
            <button
              type="button"
              className="plain-button"
              disabled={isWorking}
              onClick={() => study('compare', true)}
            >
              Run the trials of all scenarios
            </button>
            <span className="quiet">{rows.waiting}</span>
          </p>
        )}
        <Verdicts rows={rows} />
      </div>
    </div>
  );
}

/** What separates the first from another: one at a time. */
function Bridges({ rows, width }: { rows: CompareRows; width: number }) {
  const [chosen, setChosen] = useState('');
  const bridge = rows.bridges.find(one => one.id === chosen) ?? rows.bridges[0];
  if (bridge === undefined) return null;
  return (
    <section aria-label={bridge.title}>
      <div className="bridge-head">
        <h2 className="head">{bridge.title}</h2>
        {rows.bridges.length < 2 ? null : (
          <div className="bridge-switches" role="group" aria-label="Compared with">
            {rows.bridges.map(one => (
              <button
                key={one.id}
                type="button"
                className="letter"
                aria-label={`Scenario ${one.letter}`}
                aria-pressed={one.id === bridge.id}
                onClick={() => setChosen(one.id)}
              >
                {one.letter}
              </button>
            ))}
          </div>
        )}
      </div>
      <BridgePicture bridge={bridge} width={width} />
      <p className="table-note">
        <Says sentence={bridge.words} />
      </p>
    </section>
  );
}

/** The upright screen of each scenario, and which may not be carried out. */
function Verdicts({ rows }: { rows: CompareRows }) {
  return (
    <section aria-label="Upright screen">
      <h2 className="head">Upright screen</h2>
      <ul className="compare-verdicts">
        {rows.scenarios.map(one => (
          <li key={one.id}>
            <span className={one.isChosen ? 'letter chosen' : 'letter'}>{one.letter}</span>
            {one.verdict === undefined ? null : <VerdictMark verdict={one.verdict} />}
            <span>
              <strong>{one.verdict ?? 'not run'}</strong>, {one.verdictWords}
              {one.isPermittable ? null : <span className="accent">, may not be carried out</span>}
            </span>
          </li>
        ))}
      </ul>
      <p className="quiet">Screening, not a naval architect’s study.</p>
    </section>
  );
}

function Tables({ rows }: { rows: CompareRows }) {
  return (
    <div className="two-columns compare">
      <div className="column">
        {rows.bridges.map(bridge => (
          <DataTable key={bridge.id} table={bridge.table} />
        ))}
      </div>
      <div className="column">
        {rows.frontier === undefined ? null : <DataTable table={rows.frontier.table} />}
      </div>
    </div>
  );
}
