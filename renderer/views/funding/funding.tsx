import { useState } from 'react';
import type { AwardView, FundingView } from '../../../core/views';
import { goTo } from '../../commands/run';
import { takeSections } from '../../edits/lists';
import { StillMissing } from '../../frame/still-missing';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { CashPicture } from '../../pictures/cash/cash-picture';
import { useWidth } from '../../pictures/use-width';
import { useOpened } from '../../state/opened';
import { useRun } from '../../state/studies';
import { edit } from '../../state/working-out';
import './funding.css';

/** The grant budget: forms by source, every line tied out, the cash and its gap. */
export default function Funding() {
  const view = useOpened('funding');
  const [chosen, setFace] = useState('');
  if (view === undefined) return <p className="sentence">Making the grant budget.</p>;
  const faces = [
    ...view.awards.map(award => ({ id: award.id, title: award.form })),
    ...(view.awards.length === 0
      ? []
      : [
          { id: 'lines', title: 'Line by line' },
          { id: 'cash', title: 'Cash table' },
        ]),
    { id: 'terms', title: 'Sources and terms' },
  ];
  const face = faces.some(one => one.id === chosen) ? chosen : (faces[0]?.id ?? 'terms');
  // The face shown first stays: a form that can be made now does not take the terms away from under the hand.
  if (chosen === '') setFace(face);
  const award = view.awards.find(one => one.id === face);
  return (
    <>
      <TitleLine sentence={view.sentence} faces={faces} face={face} onFace={setFace} />
      <StillMissing of="grant" />
      {view.missing.map(words => (
        <div key={words} className="caution funding-missing">
          {words}
        </div>
      ))}
      {view.findings.map(words => (
        <p key={words} className="caution funding-missing">
          {words}
        </p>
      ))}
      {view.awards.length === 0 ? null : <InsideAward />}
      {view.begin === undefined ? null : <Begin section={view.begin} />}
      {award === undefined ? null : <Form view={view} award={award} />}
      {face === 'lines'
        ? view.awards.map(one => <DataTable key={one.id} table={one.tieOut} startsFolded />)
        : null}
      {face === 'cash' ? <Cash view={view} /> : null}
      {face === 'terms' ? (
        <div className="funding-terms">
          {view.terms.map(table => (
            <div className="scroll-x" key={table.id}>
              <DataTable table={table} />
            </div>
          ))}
          {view.contracts.rows.length === 0 ? null : <DataTable table={view.contracts} />}
        </div>
      ) : null}
    </>
  );
}

/** How likely the cost stays inside the award: told once the runs of Risk were made. */
function InsideAward() {
  const award = useRun()?.found?.award;
  return (
    <p className="quiet">
      {award === undefined ? (
        <>
          How likely the cost stays inside the award itself is told once the runs are made.{' '}
          <button type="button" className="text-button" onClick={() => goTo('risk')}>
            Go to Risk
          </button>
        </>
      ) : (
        <Says sentence={award} />
      )}
    </p>
  );
}

/** No sources yet: what they are for, and one way to begin. */
function Begin({ section }: { section: NonNullable<FundingView['begin']> }) {
  return (
    <div className="empty">
      <p>
        The forms, the match and the cash the county must carry stand here once the sources of the money are
        written down.
      </p>
      <button
        type="button"
        className="main-button"
        data-edit="/funding"
        onClick={() => edit(takeSections({ funding: section }, 'begin the grant budget'))}
      >
        Begin with one grant and the own share
      </button>
    </div>
  );
}

function Form({ view, award }: { view: FundingView; award: AwardView }) {
  return (
    <>
      <div className="two-columns funding">
        <div className="column scroll-x">
          <DataTable table={award.table} />
        </div>
        <div className="column">
          <DataTable table={view.sources} />
          {view.reconciliations.slice(0, 1).map(table => (
            <DataTable key={table.id} table={table} />
          ))}
        </div>
      </div>
      <Picture view={view} />
      {award.sections.length === 0 ? null : (
        <div className="funding-sections">
          {award.sections.map(table => (
            <DataTableBox key={table.id} table={table} />
          ))}
        </div>
      )}
    </>
  );
}

function DataTableBox({ table }: { table: AwardView['table'] }) {
  return (
    <div>
      <DataTable table={table} />
    </div>
  );
}

function Picture({ view }: { view: FundingView }) {
  const { ref, width } = useWidth<HTMLElement>(1048);
  const { cash } = view;
  if (cash === undefined) return null;
  return (
    <section className="funding-cash" ref={ref} aria-label="Cash">
      <h2 className="head">{cash.title}</h2>
      <CashPicture cash={cash} width={width} height={width > 1300 ? 380 : 262} />
      {cash.after === '' ? null : <p className="quiet">{cash.after}</p>}
    </section>
  );
}

function Cash({ view }: { view: FundingView }) {
  return (
    <>
      <Picture view={view} />
      <div className="two-columns funding">
        <div className="column">
          <DataTable table={view.cashTable} />
        </div>
        <div className="column">
          {view.reconciliations.slice(1).map(table => (
            <DataTable key={table.id} table={table} />
          ))}
          {view.beside.rows.length === 0 ? null : <DataTable table={view.beside} />}
        </div>
      </div>
    </>
  );
}
