import { useState } from 'react';
import type { DecisionRows } from '../../../core/views';
import { chooseScenario } from '../../commands/run';
import { StillMissing } from '../../frame/still-missing';
import { TitleLine } from '../../frame/title-line';
import { DataTable } from '../../parts/grid/data-table';
import { StudyProgress } from '../../parts/study-progress';
import { study, useStudy } from '../../state/studies';
import { LifeAndBenefits } from './life-and-benefits';
import './decision.css';

const FACES = [
  { id: 'vote', title: 'The decision' },
  { id: 'benefit', title: 'Life and benefits' },
];

/** The one page a board votes on, and what the reef is worth beside it. */
export default function Decision() {
  const [face, setFace] = useState('vote');
  return face === 'vote' ? (
    <Vote onFace={setFace} />
  ) : (
    <LifeAndBenefits faces={FACES} face={face} onFace={setFace} />
  );
}

function Vote({ onFace }: { onFace: (face: string) => void }) {
  const { answer, working, fault } = useStudy('decision');
  return (
    <>
      <TitleLine
        sentence={answer?.sentence ?? ['Working out what is asked of the board.']}
        faces={FACES}
        face="vote"
        onFace={onFace}
      />
      <StillMissing of="comparison" />
      <StudyProgress name="decision" working={working} />
      {fault === undefined ? null : (
        <div className="caution notice" role="alert">
          <strong>The page could not be made.</strong> {fault} The last page stays. Undo the last edit, or
          open the view again.
        </div>
      )}
      {answer === undefined ? null : <Page rows={answer} isWorking={working !== undefined} />}
    </>
  );
}

function Page({ rows, isWorking }: { rows: DecisionRows; isWorking: boolean }) {
  return (
    <div className="two-columns decision">
      <div className="column">
        <Recommended rows={rows} />
        <WhoseFigures rows={rows} />
        <DataTable table={rows.figures} />
        {rows.figures.rows.some(row => row.id === 'p80') ? null : (
          <p className="decision-run">
            <button
              type="button"
              className="plain-button"
              disabled={isWorking}
              onClick={() => study('decision', true)}
            >
              Run the trials
            </button>
            <span className="quiet">How likely it is to stay inside the budget is not known yet.</span>
          </p>
        )}
        <DataTable table={rows.county} />
        <h2 className="head">What was not studied</h2>
        <ul className="decision-list">
          {rows.notStudied.map(words => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </div>
      <div className="column">
        <DataTable table={rows.choice} />
        <h2 className="head">If it goes wrong</h2>
        <ul className="decision-list">
          {rows.troubles.map(one => (
            <li key={one.title}>
              <strong>{one.title}.</strong> {one.happens} {one.pays}
            </li>
          ))}
        </ul>
        <p className="caution">{rows.caution}</p>
        <DataTable table={rows.others} />
        {rows.dates.rows.length === 0 ? null : <DataTable table={rows.dates} />}
      </div>
    </div>
  );
}

/** Whose figures follow, with the switch to those of the scenario recommended beside it. */
function WhoseFigures({ rows: { notThisOne, recommended } }: { rows: DecisionRows }) {
  if (notThisOne === '' || recommended === undefined) return null;
  return (
    <p className="decision-run decision-whose" role="note">
      <strong className="accent">{notThisOne}</strong>
      <button type="button" className="plain-button" onClick={() => chooseScenario(recommended.scenario)}>
        Show scenario {recommended.letter}
      </button>
    </p>
  );
}

function Recommended({ rows }: { rows: DecisionRows }) {
  const { recommended } = rows;
  return (
    <section className="recommended" aria-labelledby="recommended">
      <h2 className="head" id="recommended">
        {recommended === undefined ? (
          'No scenario is recommended'
        ) : (
          <>
            <span className="letter chosen">{recommended.letter}</span> {recommended.title}:{' '}
            {recommended.isBoardsChoice ? 'chosen by the board' : 'comes first'}
          </>
        )}
      </h2>
      <ul className="decision-list">
        {rows.reasons.map(words => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {rows.besides === '' ? null : <p className="caution">{rows.besides}</p>}
    </section>
  );
}
