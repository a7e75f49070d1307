import { useEffect, useState } from 'react';
import { COPY_READERS, type LeftOut, type LeftOutBook } from '../../../core/project';
import { engine } from '../../engine/engine';
import { give } from '../../state/files';
import { change, useWindow } from '../../state/store';

interface Copy {
  readonly without: LeftOutBook;
  readonly text: string;
  readonly leftOut: readonly LeftOut[];
}

/** A copy of the project for someone else: who reads it, what is left out, and the file. */
export function Copies() {
  const [without, setWithout] = useState<LeftOutBook>('bid');
  const copy = useCopy(without);
  const reader = COPY_READERS.find(one => one.without === without);
  return (
    <div className="copies">
      <div role="group" aria-labelledby="copy-reader" className="copy-readers">
        <h2 className="head" id="copy-reader">
          Who reads the copy
        </h2>
        {COPY_READERS.map(one => (
          <label key={one.without} className="copy-reader">
            <input
              type="radio"
              name="copy-reader"
              checked={one.without === without}
              onChange={() => setWithout(one.without)}
            />{' '}
            A copy for {one.reader}. <span className="quiet">{one.keeps}</span>
          </label>
        ))}
      </div>
      <LeftOutTable copy={copy} />
      <p className="caution copy-note">
        <strong>Look through the words.</strong> Names in titles, notes on the ship and other free text go
        along as they are.
      </p>
      <button
        type="button"
        className="main-button"
        disabled={copy === undefined}
        onClick={() => {
          if (copy !== undefined) write(copy, reader?.reader ?? '');
        }}
      >
        Write the copy
      </button>
    </div>
  );
}

/** The copy as it would be written now; worked out again when the document changes. */
function useCopy(without: LeftOutBook): Copy | undefined {
  const project = useWindow(window => window.history?.project);
  const [copy, setCopy] = useState<Copy>();
  useEffect(() => {
    if (project === undefined) return;
    let isCurrent = true;
    void engine()
      .ask('copy', { project, without })
      .then(made => {
        if (isCurrent) setCopy({ without, ...made });
      });
    return () => {
      isCurrent = false;
    };
  }, [project, without]);
  return copy?.without === without ? copy : undefined;
}

function LeftOutTable({ copy }: { copy: Copy | undefined }) {
  if (copy === undefined) return <p className="quiet">Looking for what is left out.</p>;
  if (copy.leftOut.length === 0)
    return <p className="quiet">Nothing in this project has to be left out of such a copy.</p>;
  return (
    <table className="data-table copy-table">
      <caption className="head caption">Left out of the copy</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Which</th>
        </tr>
      </thead>
      <tbody>
        {copy.leftOut.map(one => (
          <tr key={one.place}>
            <td>{one.words}</td>
            <td>{one.named}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function write({ text }: Copy, reader: string): void {
  const name = (useWindow.getState().document?.name ?? 'project.reef.json').replace(/(\.reef)?\.json$/, '');
  const file = `${name} for ${reader}.reef.json`;
  give(file, new Blob([text], { type: 'application/json' }));
  change({ status: `Made: ${file}.` });
}
