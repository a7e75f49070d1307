import { chooseScenario } from '../../commands/run';
import { letterOf } from '../../frame/letters';
import { useWindow } from '../../state/store';

/** Which scenario the papers are of, and that the board has chosen another where it has. */
export function OfWhich() {
  const project = useWindow(window => window.history?.project);
  const shown = useWindow(window => window.scenario);
  const all = project?.scenarios ?? [];
  const own = all.findIndex(one => one.id === shown);
  const chosen = all.find(one => one.id === project?.decision?.chosen);
  if (chosen === undefined || own < 0 || chosen.id === shown) return null;
  const letter = letterOf(all.indexOf(chosen));
  return (
    <p className="caution" role="note">
      The board has chosen scenario {letter}. The papers made now are of scenario {letterOf(own)}.{' '}
      <button type="button" className="plain-button" onClick={() => chooseScenario(chosen.id)}>
        Show scenario {letter}
      </button>
    </p>
  );
}
