import type { StudyName } from '../engine/study-protocol';
import type { Working } from '../state/store';
import { stopStudy } from '../state/studies';

/** How far long work is, with a way to stop it; the last answer stays in view meanwhile. */
export function StudyProgress({ name, working }: { name: StudyName; working: Working | undefined }) {
  if (working === undefined) return null;
  const count = working.of === 0 ? '' : `, ${working.done} of ${working.of}`;
  return (
    <div className="working">
      <span>
        {working.words}
        {count}
      </span>
      <progress
        aria-label={working.words}
        max={Math.max(1, working.of)}
        value={working.of === 0 ? undefined : working.done}
      />
      <button type="button" className="plain-button" onClick={() => stopStudy(name)}>
        Stop, keep the last answer
      </button>
    </div>
  );
}
