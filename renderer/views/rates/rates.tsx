import { useState } from 'react';
import type { TableRows } from '../../../core/views';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
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
      {table === undefined ? null : <Table key={table.id} table={table} />}
    </>
  );
}

/** The rates of one kind; what is to be known of all of them stands before the first, since the list is long. */
function Table({ table }: { table: TableRows }) {
  const { note, ...rates } = table;
  return (
    <>
      {note === undefined ? null : (
        <p className="table-note">
          <Says sentence={note} />
        </p>
      )}
      <DataTable table={rates} isCaptionUnseen isSticky />
    </>
  );
}
