import type { BottomCell } from '../../core/views';
import { Figure } from '../parts/figure';
import { VerdictMark } from '../parts/verdict-mark';
import { isEdited } from '../state/history';
import { useRunCells } from '../state/studies';
import { useWindow } from '../state/store';
import { letterOf } from './letters';

/** The bottom line: always there, in the same place, for the chosen scenario. */
export function BottomLine() {
  const rows = useWindow(window => window.rows);
  const changes = useWindow(window => window.changes);
  const isFresh = useWindow(window => window.areChangesFresh);
  const isBehind = useWindow(window => window.isBehind);
  const ofRuns = useRunCells();
  return (
    <footer className="bottom-line" aria-label="Bottom line">
      <Head />
      <dl className="bottom-cells" data-behind={isBehind}>
        {withRuns(rows?.bottom ?? [], ofRuns).map(cell => (
          <Cell key={cell.key} cell={cell} moved={changes[cell.key]} isFresh={isFresh} />
        ))}
      </dl>
    </footer>
  );
}

/** P80 after the money, the chance of the grant period after the finish. */
function withRuns(cells: readonly BottomCell[], ofRuns: readonly BottomCell[]): readonly BottomCell[] {
  const after = { p80: cells.some(cell => cell.key === 'budget') ? 'budget' : 'total', grant: 'finish' };
  return cells.flatMap(cell => [
    cell,
    ...ofRuns.filter(one => (one.key === 'p80' ? after.p80 : after.grant) === cell.key),
  ]);
}

function Cell({ cell, moved, isFresh }: { cell: BottomCell; moved: string | undefined; isFresh: boolean }) {
  return (
    <div
      className="bottom-cell"
      data-settling={cell.isSettling}
      title={moved === undefined ? undefined : `Last edit: ${moved}`}
    >
      <dt>{cell.label}</dt>
      <dd>
        <span className="bottom-value">
          {cell.verdict === undefined ? null : <VerdictMark verdict={cell.verdict} />}
          <Figure shown={cell.value} />
        </span>
        {isFresh && moved !== undefined && cell.isSettling !== true ? (
          <small className="moved">{moved}</small>
        ) : cell.beside === undefined ? null : (
          <small>{cell.beside}</small>
        )}
      </dd>
    </div>
  );
}

function Head() {
  const history = useWindow(window => window.history);
  const scenario = useWindow(window => window.scenario);
  if (history === undefined) return <div className="bottom-head">Bottom line</div>;
  const place = history.project.scenarios.findIndex(one => one.id === scenario);
  const last = history.past.at(-1);
  const words = !isEdited(history) ? 'Saved' : last === undefined ? 'Not saved' : 'Edited, not saved';
  return (
    <div className="bottom-head">
      <span className="letter chosen" aria-label={`Scenario ${letterOf(place)}`} role="img">
        {letterOf(place)}
      </span>
      <span>{words}</span>
    </div>
  );
}
