import { useState } from 'react';
import type { BidRows } from '../../../core/views';
import { StillMissing } from '../../frame/still-missing';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { takeSections } from '../../edits/lists';
import { useOpened } from '../../state/opened';
import { edit } from '../../state/working-out';
import './bid.css';

const FACES = [
  { id: 'sheet', title: 'Bid sheet' },
  { id: 'build-up', title: 'Build-up' },
  { id: 'items', title: 'Items' },
  { id: 'received', title: 'Bids received' },
];

/** The bid: the sheet that leaves, the build-up that stays, and the bids of others beside the estimate. */
export default function Bid() {
  const view = useOpened('bid');
  const [face, setFace] = useState('sheet');
  if (view === undefined) return <p className="sentence">Making the bid.</p>;
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      <StillMissing of="bid" />
      {view.missing.map(words => (
        <div key={words} className="caution bid-note">
          {words}
        </div>
      ))}
      {face === 'sheet' ? <Sheet view={view} /> : null}
      {face === 'build-up' ? <BuildUp view={view} /> : null}
      {face === 'items' ? (
        <>
          <div className="scroll-x">
            <DataTable table={view.items} isCaptionUnseen />
          </div>
          {view.items.rows.length === 0 ? (
            <div className="empty">
              <p>Without items of its own the project is bid by the headings of the work.</p>
              {view.begin === undefined ? null : <Begin section={view.begin} />}
            </div>
          ) : null}
        </>
      ) : null}
      {face === 'received' ? <Received view={view} /> : null}
    </>
  );
}

/** No items yet: the headings become items that the owner may change. */
function Begin({ section }: { section: NonNullable<BidRows['begin']> }) {
  return (
    <button
      type="button"
      className="main-button"
      data-edit="/bid/items"
      onClick={() => edit(takeSections({ bid: section }, 'make the headings the items of the bid'))}
    >
      Make the headings items to change
    </button>
  );
}

function Sheet({ view }: { view: BidRows }) {
  return (
    <>
      <div className="two-columns bid">
        <div className="column">
          <DataTable table={view.sheet} />
        </div>
        <div className="column">
          <DataTable table={view.offer} />
          <DataTable table={view.alternates} />
          {view.reconciliation === undefined ? null : <DataTable table={view.reconciliation} />}
        </div>
      </div>
      {view.findings.map(words => (
        <p key={words} className="table-note">
          {words}
        </p>
      ))}
    </>
  );
}

function BuildUp({ view }: { view: BidRows }) {
  return (
    <>
      <DataTable table={view.buildUp} />
      {view.margin.length === 0 ? null : (
        <p className="table-note">
          <Says sentence={view.margin} />
        </p>
      )}
      <p className="table-note">{view.outside}</p>
      <p className="caution bid-note">
        <strong>Stays inside.</strong> Hours, rates, suppliers and mark-ups are never on the sheet that
        leaves.
      </p>
      <div className="scroll-x">
        <DataTable table={view.inside} startsFolded />
      </div>
    </>
  );
}

function Received({ view }: { view: BidRows }) {
  const { comparison } = view;
  return (
    <>
      {comparison === undefined ? (
        <div className="empty">
          <p>Bids stand here beside the estimate, item by item, once they are opened.</p>
        </div>
      ) : (
        <>
          <p className="serif bid-verdict">
            <Says sentence={comparison.sentence} />
          </p>
          <div className="scroll-x">
            <DataTable table={comparison.table} />
          </div>
          <DataTable table={comparison.totals} />
          <ul>
            {comparison.findings.map(words => (
              <li key={words} className="finding-line">
                {words}
              </li>
            ))}
          </ul>
        </>
      )}
      {view.bidders.map(table => (
        <div className="scroll-x bid-table" key={table.id}>
          <DataTable table={table} />
        </div>
      ))}
    </>
  );
}
