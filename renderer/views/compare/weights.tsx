import type { CompareRows } from '../../../core/views';
import { DataTable } from '../../parts/grid/data-table';
import { edit } from '../../state/working-out';
import { ownWeights } from './own-weights';

/** The decision table: the board sets what counts and for how much; the order and the reach of each weight follow. */
export function Weights({ rows }: { rows: CompareRows }) {
  const { usualWeights } = rows;
  return (
    <>
      {rows.ranking.map(words => (
        <p key={words} className="ranking-line">
          {words}
        </p>
      ))}
      <div className="scroll-x compare-weights">
        <DataTable table={rows.weights} />
      </div>
      {usualWeights === undefined ? null : (
        <p className="compare-run">
          <button type="button" className="plain-button" onClick={() => edit(ownWeights(usualWeights))}>
            Set the board’s own weights
          </button>
          <span className="quiet">They begin as the usual ones and can then be changed.</span>
        </p>
      )}
    </>
  );
}
