import { useState } from 'react';
import type { RiskRows } from '../../../core/views';
import { DataTable } from '../../parts/grid/data-table';
import { edit } from '../../state/working-out';
import { takenIn } from './taken-in';

/** The register: the project’s own events can be changed, those of the library taken in first. */
export function Register({ rows }: { rows: RiskRows }) {
  const [chosen, setChosen] = useState('');
  const event = rows.library.find(one => one.id === chosen) ?? rows.library[0];
  return (
    <>
      <div className="scroll-x">
        <DataTable table={rows.register} isCaptionUnseen />
      </div>
      {event === undefined ? null : (
        <p className="take-in">
          <label htmlFor="library-event">Event of the library</label>
          <select
            id="library-event"
            className="inline-choice"
            value={event.id}
            onChange={change => setChosen(change.target.value)}
          >
            {rows.library.map(one => (
              <option key={one.id} value={one.id}>
                {one.title}
              </option>
            ))}
          </select>
          <button
            type="button"
            className="plain-button"
            onClick={() => edit(takenIn(event, rows.emptySection))}
          >
            Take it in to change it
          </button>
        </p>
      )}
    </>
  );
}
