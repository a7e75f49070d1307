import type { CrewAnswer, FoundPlans, OfferedPlan } from '../../../core/views';
import { chooseScenario } from '../../commands/run';
import { scenarioOfPlan } from '../../edits/edits';
import { freshKey } from '../../edits/lists';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { StudyProgress } from '../../parts/study-progress';
import { Frontier } from '../../pictures/risk/frontier';
import { CrewProfile } from '../../pictures/time/crew-profile';
import { useWidth } from '../../pictures/use-width';
import { change, state, useWindow } from '../../state/store';
import { study, useStudy } from '../../state/studies';
import { edit } from '../../state/working-out';

/** Questions about the crews: evened out, as few as the finish allows, and which cost least. */
export function Crews() {
  return (
    <>
      <Plans />
      <Levelling />
    </>
  );
}

function Levelling() {
  const { answer, working, fault } = useStudy('levelling');
  return (
    <section aria-label="The crews evened out" className="crew-question">
      <StudyProgress name="levelling" working={working} />
      <Fault words={fault} />
      {(answer?.answers ?? []).map(one => (
        <Answer key={one.question} one={one} />
      ))}
    </section>
  );
}

function Answer({ one }: { one: CrewAnswer }) {
  const { ref, width } = useWidth<HTMLDivElement>(1000);
  return (
    <div ref={ref} className="crew-question">
      <h2 className="head">{one.question}</h2>
      <p>
        <Says sentence={one.answer} />
      </p>
      {one.picture === undefined ? null : (
        <>
          <CrewProfile picture={one.picture} width={width} />
          <ProfileLegend />
        </>
      )}
      {one.basis === undefined ? null : <p className="table-note">Hiring and releasing: {one.basis}</p>}
      {one.crews === undefined ? null : <DataTable table={one.crews} />}
      {one.moved === undefined || one.moved.rows.length === 0 ? null : <DataTable table={one.moved} />}
    </div>
  );
}

function ProfileLegend() {
  return (
    <p className="legend" aria-hidden="true">
      <span>
        <svg width="24" height="12">
          <path d="M0 6H24" stroke="var(--text)" strokeWidth="1.3" strokeDasharray="5 3" />
        </svg>{' '}
        people before
      </span>
      <span>
        <svg width="24" height="12">
          <rect x="1" y="2" width="22" height="9" fill="var(--wash)" stroke="var(--data)" strokeWidth="1.5" />
        </svg>{' '}
        after
      </span>
    </p>
  );
}

function Plans() {
  const { answer, working, fault } = useStudy('crewPlans');
  const isWorking = working !== undefined && working.of > 0;
  return (
    <section aria-label="Crews, shifts and start" className="crew-question">
      <h2 className="head">{answer?.question ?? 'Which crews, shifts and start cost least?'}</h2>
      {isWorking ? <StudyProgress name="crewPlans" working={working} /> : null}
      <Fault words={fault} />
      {answer?.found === undefined ? (
        <p className="quiet">
          Crew sizes, shift patterns and later starts are tried; each plan is estimated as a whole. It takes
          about a minute.
        </p>
      ) : (
        <Found found={answer.found} />
      )}
      <button
        type="button"
        className={answer?.found === undefined ? 'main-button' : 'plain-button'}
        disabled={isWorking}
        onClick={() => study('crewPlans', true)}
      >
        {answer?.found === undefined ? 'Find the cheapest plan' : 'Search again'}
      </button>
    </section>
  );
}

function Found({ found }: { found: FoundPlans }) {
  const { ref, width } = useWidth<HTMLDivElement>(1000);
  return (
    <div ref={ref}>
      <p>
        <Says sentence={found.answer} />
      </p>
      {found.isStale ? <p className="quiet">Found before the last edit: search again.</p> : null}
      <h3 className="head">{found.picture.title}</h3>
      <Frontier picture={found.picture} width={width} height={250} />
      {found.cautions.map(words => (
        <p key={words} className="caution">
          {words}
        </p>
      ))}
      <DataTable table={found.table} />
      {found.isStale ? null : <Offers offers={found.offers} />}
      {found.notes.map(words => (
        <p key={words} className="table-note">
          {words}
        </p>
      ))}
    </div>
  );
}

/** The plans as scenarios to be: a plan is taken up beside what stands, never in its place. */
function Offers({ offers }: { offers: readonly OfferedPlan[] }) {
  const count = useWindow(window => window.history?.project.scenarios.length) ?? 0;
  if (offers.length === 0) return null;
  return (
    <ul className="crew-offers">
      {offers.map(offer => (
        <li key={offer.id}>
          <button type="button" className="plain-button" disabled={count >= 26} onClick={() => takeUp(offer)}>
            {offer.label}
          </button>
        </li>
      ))}
    </ul>
  );
}

function takeUp({ title, changes }: OfferedPlan): void {
  const { scenario, history } = state();
  const id = freshKey(title, history?.project.scenarios ?? []);
  edit(scenarioOfPlan(scenario, { id, title, changes }));
  chooseScenario(id);
  change({ status: `Made a scenario: ${title}.` });
}

function Fault({ words }: { words: string | undefined }) {
  if (words === undefined) return null;
  return (
    <p className="caution" role="alert">
      The question could not be answered. {words} Open the view again.
    </p>
  );
}
