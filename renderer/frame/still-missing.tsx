import { useWindow } from '../state/store';
import { goToInput } from './go-to-input';
import { VIEWS } from './view-table';
import './still-missing.css';

/** What the reader of the project still has to give, each of it one press away; with `of` only for that reader. */
export function StillMissing({ of }: { of?: 'grant' | 'bid' | 'comparison' }) {
  const missing = useWindow(window => window.rows?.missing);
  const reader = useWindow(window => window.history?.project.reader);
  if (missing === undefined || missing.rows.length === 0) return null;
  if (of !== undefined && of !== reader) return null;
  return (
    <p className="still-missing">
      {missing.lead}{' '}
      {missing.rows.map((row, at) => {
        const view = VIEWS.find(one => one.id === row.view);
        return (
          <span key={row.id}>
            {at === 0 ? '' : ', '}
            <button
              type="button"
              className="text-button"
              onClick={() => {
                if (view !== undefined) void goToInput(view.id, row.at);
              }}
            >
              {row.words}
            </button>
          </span>
        );
      })}
      .
    </p>
  );
}
