import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { AddForm } from '../../parts/add-form';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { DeckPlan } from '../../pictures/ship/deck-plan';
import { ShipLegend } from '../../pictures/ship/legend';
import { Profile } from '../../pictures/ship/profile';
import { useWidth } from '../../pictures/use-width';
import { useWindow } from '../../state/store';
import type { Addition, TableRows, VesselView } from '../../../core/views';
import './vessel.css';

const FACES = [
  { id: 'picture', title: 'Picture' },
  { id: 'tables', title: 'Tables' },
  { id: 'compartments', title: 'Compartments' },
  { id: 'tanks', title: 'Tanks' },
  { id: 'weights', title: 'Weights' },
];

/** Particulars, the ship to scale afloat and at rest, compartments and openings. */
export default function Vessel() {
  const view = useWindow(window => window.rows?.vessel);
  const [face, setFace] = useState('picture');
  if (view === undefined) return null;
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      {face === 'compartments' ? <Compartments view={view} /> : null}
      {face === 'tanks' ? (
        <List table={view.tanks} empty="Tanks stand here with what was found in each." />
      ) : null}
      {face === 'weights' ? (
        <List
          table={view.weights}
          empty="Weights stand here with their centres; the upright screen reads them."
        />
      ) : null}
      {face === 'picture' || face === 'tables' ? <Both view={view} face={face} /> : null}
    </>
  );
}

function Both({ view, face }: { view: VesselView; face: string }) {
  return (
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
  );
}

function List({ table, empty }: { table: TableRows; empty: string }) {
  return (
    <div className="scroll-x">
      {table.rows.length === 0 ? (
        <div className="empty">
          <p>{empty}</p>
        </div>
      ) : null}
      <DataTable table={table} isCaptionUnseen />
    </div>
  );
}

/** Compartments with their openings, vents and ways between them; the chosen one takes new ones. */
function Compartments({ view }: { view: VesselView }) {
  const chosen = useWindow(window => window.chosen);
  const all = view.compartmentAdditions;
  const start = all.find(one => one.at.includes(`/${chosen ?? ''}/`))?.at ?? all[0]?.at ?? '';
  const own = all.filter(one => one.at.startsWith(start.slice(0, start.lastIndexOf('/') + 1)));
  return (
    <div className="scroll-x">
      <DataTable table={view.compartments} />
      {[view.openings, view.vents, view.connections].map(table => (
        <Fitting key={table.id} table={table} addition={own.find(one => one.at.endsWith(`/${table.id}`))} />
      ))}
      <p className="table-note">Choose a compartment above to add to it.</p>
    </div>
  );
}

function Fitting({ table, addition }: { table: TableRows; addition: Addition | undefined }) {
  return (
    <>
      {table.rows.length === 0 ? (
        <h2 className="head caption">{table.caption}: none yet</h2>
      ) : (
        <DataTable table={table} />
      )}
      {addition === undefined ? null : <AddForm key={addition.at} addition={addition} />}
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
