import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { DeckPlan } from '../../pictures/ship/deck-plan';
import { ShipLegend } from '../../pictures/ship/legend';
import { Profile } from '../../pictures/ship/profile';
import { useWidth } from '../../pictures/use-width';
import { useWindow } from '../../state/store';
import type { VesselView } from '../../../core/views';
import './vessel.css';

const FACES = [
  { id: 'picture', title: 'Picture' },
  { id: 'tables', title: 'Tables' },
];

/** Particulars, the ship to scale afloat and at rest, compartments and openings. */
export default function Vessel() {
  const view = useWindow(window => window.rows?.vessel);
  const [face, setFace] = useState('picture');
  if (view === undefined) return null;
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      <div className="two-columns vessel">
        {face === 'picture' ? <Picture view={view} /> : null}
        <div className="column">
          <DataTable table={view.particulars} />
          <DataTable table={view.site} />
          {view.compartments.rows.length === 0 ? null : <DataTable table={view.compartments} />}
          <DataTable table={view.names} />
          <p className="table-note">
            <Says sentence={view.notes} />
          </p>
        </div>
      </div>
    </>
  );
}

function Picture({ view }: { view: VesselView }) {
  const { ref, width } = useWidth<HTMLDivElement>(656);
  const tallest = width > 900 ? 560 : 380;
  return (
    <div className="column picture-column" ref={ref}>
      {view.picture === undefined ? (
        <div className="empty">
          <p>The ship is drawn here once length, beam, depth and draught are known.</p>
        </div>
      ) : (
        <>
          <Profile picture={view.picture} width={width} tallest={tallest} />
          <DeckPlan picture={view.picture} width={width} tallest={tallest} />
          <ShipLegend picture={view.picture} />
        </>
      )}
    </div>
  );
}
