import { chooseScenario } from '../../commands/run';
import { letterOf } from '../../frame/letters';
import { useWindow } from '../../state/store';

/** Which scenario the papers are of, and that the board has chosen another where it has. */
export function OfWhich() {
  const project = useWindow(window => window.history?.project);
  const shown = useWindow(window => window.scenario);
  const all = project?.scenarios ?? [];
  const own = all.findIndex(one => one.id === shown);
  const chosen = all.findIndex(one => one.id === project?.decision?.chosen);
  if (chosen < 0 || own < 0 || chosen === own) return null;
  return (
    <p className="caution of-which" role="note">
      The board has chosen scenario {letterOf(chosen)}. The papers made now are of scenario {letterOf(own)}.{' '}
      <button type="button" className="plain-button" onClick={() => chooseScenario(all[chosen]?.id ?? shown)}>
        Show scenario {letterOf(chosen)}
      </button>
    </p>
  );
}
