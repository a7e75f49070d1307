import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { DataTable } from '../../parts/grid/data-table';
import { useWindow } from '../../state/store';

/** What a unit costs: trades with their burdens, crews, equipment, disposal, prices over time. */
export default function Rates() {
  const view = useWindow(window => window.rows?.rates);
  const first = view?.tables[0]?.id ?? '';
  const [face, setFace] = useState(first);
  if (view === undefined) return null;
  const table = view.tables.find(one => one.id === face) ?? view.tables[0];
  return (
    <>
      <TitleLine
        sentence={view.sentence}
        faces={view.tables.map(one => ({ id: one.id, title: one.caption }))}
        face={table?.id ?? ''}
        onFace={setFace}
      />
      {table === undefined ? null : <DataTable key={table.id} table={table} isCaptionUnseen isSticky />}
    </>
  );
}
