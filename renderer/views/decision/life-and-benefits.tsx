import type { BenefitRows } from '../../../core/views';
import { takeSections } from '../../edits/lists';
import { TitleLine, type Face } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';
import { useOpened } from '../../state/opened';
import { edit } from '../../state/working-out';

interface LifeAndBenefitsProps {
  readonly faces: readonly Face[];
  readonly face: string;
  readonly onFace: (face: string) => void;
}

/** What the reef is worth against what it costs, how long the hull lasts, and what binds after the sinking. */
export function LifeAndBenefits(line: LifeAndBenefitsProps) {
  const rows = useOpened('benefit');
  return (
    <>
      <TitleLine {...line} sentence={rows?.sentence ?? ['Working out what the reef is worth.']} />
      {rows === undefined ? null : rows.begin === undefined ? (
        <Benefits rows={rows} />
      ) : (
        <Begin section={rows.begin} rows={rows} />
      )}
    </>
  );
}

/** No benefits yet: what they are for, and one way to begin. */
function Begin({ section, rows }: { section: NonNullable<BenefitRows['begin']>; rows: BenefitRows }) {
  return (
    <>
      <div className="empty">
        <p>
          Who will dive and fish on the reef, what a visit is worth, how thick her plate is and at what rate
          your board discounts: with these the benefit stands against the cost. Nothing is counted until it is
          written down.
        </p>
        <button
          type="button"
          className="main-button"
          data-edit="/benefits"
          onClick={() => edit(takeSections({ benefits: section }, 'begin the benefits'))}
        >
          Begin the benefits
        </button>
      </div>
      <DataTable table={rows.obligations} />
    </>
  );
}

function Benefits({ rows }: { rows: BenefitRows }) {
  const { own, inputs } = rows;
  return (
    <div className="benefit">
      {rows.missing.map(words => (
        <p key={words} className="caution">
          {words}
        </p>
      ))}
      <div className="two-columns decision">
        <div className="column">
          {rows.figures === undefined ? null : <DataTable table={rows.figures} />}
          <p>
            <Says sentence={rows.life} />
          </p>
        </div>
        <div className="column">{inputs === undefined ? null : <DataTable table={inputs.terms} />}</div>
      </div>
      {inputs === undefined ? null : (
        <div className="scroll-x">
          <DataTable table={inputs.uses} />
        </div>
      )}
      <div className="scroll-x">
        <DataTable table={rows.obligations} />
      </div>
      {own === undefined ? null : (
        <p className="decision-run">
          <button
            type="button"
            className="plain-button"
            data-edit="/benefits/obligations"
            onClick={() => edit(takeSections({ benefits: own }, 'write the obligations down'))}
          >
            Write these down to change them
          </button>
          <span className="quiet">The usual obligations stand here until you have your own.</span>
        </p>
      )}
    </div>
  );
}
