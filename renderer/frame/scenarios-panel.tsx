import { chooseScenario } from '../commands/run';
import { copyScenario, keepEditsInScenario } from '../edits/edits';
import { freshKey } from '../edits/lists';
import { DataTable } from '../parts/grid/data-table';
import { useOpened } from '../state/opened';
import { change, state, useWindow } from '../state/store';
import { edit } from '../state/working-out';
import { letterOf } from './letters';

/** The scenarios side by side: their names and notes, what each changes, and where edits go. */
export function ScenariosPanel() {
  const view = useOpened('scenarios');
  const chosen = useWindow(window => window.scenario);
  const all = useWindow(window => window.history?.project.scenarios) ?? [];
  const onlyHere = useWindow(window => window.onlyHere);
  const at = all.findIndex(one => one.id === chosen);
  const letter = letterOf(Math.max(0, at));
  return (
    <div className="scenarios-panel">
      {view === undefined ? null : <DataTable table={view.scenarios} isCaptionUnseen />}
      <button type="button" className="plain-button" disabled={all.length >= 26} onClick={() => copyChosen()}>
        Add a scenario like {letter}
      </button>
      <fieldset className="where-edits">
        <legend className="head">Where edits go</legend>
        <label>
          <input type="radio" name="where" checked={!onlyHere} onChange={() => keep(false)} /> To all
          scenarios, unless {letter} already has its own
        </label>
        <label>
          <input type="radio" name="where" checked={onlyHere} onChange={() => keep(true)} /> To scenario{' '}
          {letter} alone
        </label>
      </fieldset>
      {view === undefined || view.changes.rows.length === 0 ? (
        <p className="serif">No scenario changes anything yet: choose the second way above, then edit.</p>
      ) : (
        <DataTable table={view.changes} />
      )}
    </div>
  );
}

function keep(isOnlyHere: boolean): void {
  keepEditsInScenario(isOnlyHere);
  change({ onlyHere: isOnlyHere });
}

function copyChosen(): void {
  const { scenario, history } = state();
  const all = history?.project.scenarios ?? [];
  const from = all.find(one => one.id === scenario);
  if (from === undefined) return;
  const title = `${from.title}, otherwise`;
  const id = freshKey(title, all);
  edit(copyScenario(scenario, id, title));
  chooseScenario(id);
  // What is changed next is what sets it apart.
  keep(true);
  change({ status: `Added ${title}. Edits go to it alone.` });
}
