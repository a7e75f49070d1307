import { startNew } from '../state/files';
import { STARTS } from '../words/starts';

/** The three starting points, for when a document is open already. */
export function StartPanel() {
  return (
    <ul className="start-list">
      {STARTS.map(start => (
        <li key={start.id}>
          <button type="button" className="main-button" onClick={() => void startNew(start.id)}>
            {start.action}
          </button>
          <span className="quiet">{start.reader}</span>
        </li>
      ))}
    </ul>
  );
}
