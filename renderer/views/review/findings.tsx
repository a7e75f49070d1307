import type { FindingRow } from '../../../core/views';
import { goToInput } from '../../frame/go-to-input';
import { VIEWS } from '../../frame/view-table';

const WEIGHTS = { blocks: 'Withholds a figure', warns: 'Needs a look', notes: 'For information' } as const;

/** Every open finding: what is so, what it means, what to do, and where. */
export function Findings({ findings }: { findings: readonly FindingRow[] }) {
  const weights = (['blocks', 'warns', 'notes'] as const).filter(weight =>
    findings.some(row => row.finding.weight === weight),
  );
  if (findings.length === 0) {
    return (
      <div className="empty">
        <p>Findings stand here when something in the data needs a look.</p>
      </div>
    );
  }
  return weights.map(weight => (
    <section key={weight} aria-labelledby={`weight-${weight}`}>
      <h2 className="head finding-head" id={`weight-${weight}`}>
        {WEIGHTS[weight]}
      </h2>
      <ul>
        {findings
          .filter(row => row.finding.weight === weight)
          .map((row, at) => (
            <li key={`${row.finding.code}-${row.finding.place}-${at}`} className="finding-line">
              <p className={weight === 'blocks' ? 'accent' : undefined}>{row.finding.message}</p>
              {row.finding.meaning === undefined ? null : <p>{row.finding.meaning}</p>}
              <p className="quiet">
                {row.finding.remedy} <Place row={row} />
              </p>
            </li>
          ))}
      </ul>
    </section>
  ));
}

function Place({ row: { view, at, finding } }: { row: FindingRow }) {
  const home = VIEWS.find(one => one.id === view);
  if (home === undefined || home.id === 'review') return <span>{finding.place}</span>;
  return (
    <button type="button" className="text-button" onClick={() => void goToInput(home.id, at)}>
      Go to {home.title}
    </button>
  );
}
