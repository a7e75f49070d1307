import { useState } from 'react';
import type { MaterialsView } from '../../../core/views';
import { TitleLine } from '../../frame/title-line';
import { DataTable } from '../../parts/grid/data-table';
import { useOpened } from '../../state/opened';
import { change, useWindow } from '../../state/store';
import { Family } from './family';
import './materials.css';

const FACES = [
  { id: 'families', title: 'Families' },
  { id: 'laboratory', title: 'Laboratory' },
  { id: 'intake', title: 'Intake' },
];

/** Materials of concern: how much there is, who has looked, what must become of it and what endangers people. */
export default function Materials() {
  const view = useOpened('materials');
  const [face, setFace] = useState('families');
  if (view === undefined) return <p className="sentence">Looking through the materials.</p>;
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      {view.unmet.length === 0 ? null : (
        <div className="caution unmet">
          <strong>This scenario cannot be permitted.</strong> It leaves a clean-up goal unmet:{' '}
          {view.unmet.join(' ')}
        </div>
      )}
      {face === 'families' ? <Families view={view} /> : null}
      {face === 'laboratory' ? <Laboratory view={view} /> : null}
      {face === 'intake' ? (
        <>
          <DataTable table={view.intake} isCaptionUnseen />
          <p className="table-note">{view.intakeWords}</p>
        </>
      ) : null}
    </>
  );
}

function Families({ view }: { view: MaterialsView }) {
  const chosen = useWindow(window => window.chosen);
  const id = (chosen === undefined ? undefined : view.familyOf[chosen]) ?? view.families[0]?.id;
  const family = view.families.find(one => one.id === id);
  return (
    <div className="two-columns materials">
      <div className="column">
        <DataTable table={view.table} isCaptionUnseen isSticky />
      </div>
      <div className="column family-column">
        {family === undefined ? null : <Family family={family} chosen={chosen} closing={view.closing} />}
      </div>
    </div>
  );
}

function Laboratory({ view }: { view: MaterialsView }) {
  return (
    <>
      {view.laboratory.rows.length === 0 ? (
        <div className="empty">
          <p>Laboratory results stand here, each beside the rule it is held against.</p>
        </div>
      ) : null}
      <div className="scroll-x">
        <DataTable table={view.laboratory} isCaptionUnseen />
      </div>
      <button type="button" className="plain-button" onClick={() => change({ panel: 'import' })}>
        Bring in a table
      </button>
    </>
  );
}
