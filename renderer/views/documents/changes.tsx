import { upperFirst } from '../../../core/base';
import { useWindow } from '../../state/store';

/** What was changed since the last saved version, the latest first. */
export function Changes() {
  const history = useWindow(window => window.history);
  const changes = (history?.past.slice(Math.max(0, history.saved)) ?? []).toReversed();
  if (changes.length === 0) {
    return (
      <div className="empty">
        <p>Every edit is listed here until it is saved.</p>
      </div>
    );
  }
  return (
    <ol className="change-list">
      {changes.map((step, at) => (
        <li key={changes.length - at}>{upperFirst(step.label)}</li>
      ))}
    </ol>
  );
}
