import { stopWorking } from '../state/working-out';
import { useWindow } from '../state/store';

/** Bands under the sentence: what is not saved, what was recovered, what could not be done. They stay until dealt with. */
export function Notices() {
  const notices = useWindow(window => window.notices);
  const fault = useWindow(window => window.fault);
  return (
    <>
      {fault === undefined ? null : (
        <div className="caution notice" role="alert">
          <strong>The last edit could not be worked out.</strong> The figures shown are from before it.{' '}
          {fault} Undo the edit, or save and report it.
        </div>
      )}
      {notices.map(notice => (
        <div className="caution notice" role="alert" key={notice.id}>
          <strong>{notice.head}</strong> {notice.words}{' '}
          <span className="notice-actions">
            {notice.actions.map(action => (
              <button key={action.title} type="button" className="text-button" onClick={action.run}>
                {action.title}
              </button>
            ))}
          </span>
        </div>
      ))}
      <Working />
    </>
  );
}

/** Long work: what is being tried, how far it is, and a way to stop it. */
function Working() {
  const working = useWindow(window => window.working);
  if (working === undefined) return null;
  return (
    <div className="working" role="status">
      <p>{working.words}</p>
      <progress max={working.of} value={working.done} aria-label={working.words} />
      <button type="button" className="plain-button" onClick={stopWorking}>
        Stop, keep the last answer
      </button>
    </div>
  );
}
