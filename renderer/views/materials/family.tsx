import type { FamilyWords, MaterialWords } from '../../../core/views';
import { Says } from '../../parts/figure';
import { DataTable } from '../../parts/grid/data-table';

interface FamilyProps {
  readonly family: FamilyWords;
  readonly chosen: string | undefined;
  readonly closing: string;
}

/** A family of materials beside its table: goal, the chosen material, rules and cautions. */
export function Family({ family, chosen, closing }: FamilyProps) {
  const material = family.materials.find(one => one.id === chosen);
  return (
    <section aria-labelledby="family-title" className="family">
      <h2 className="head" id="family-title">
        {family.title}
      </h2>
      <p className="serif family-goal">{family.goal}</p>
      <p className="quiet">{family.goalBasis}.</p>
      {family.cautions.map(caution => (
        <div className="caution family-caution" key={caution.id}>
          <strong>{caution.work}.</strong> {caution.danger} {caution.care} Decides: {caution.decides}. See{' '}
          {caution.pointer}.
        </div>
      ))}
      {material === undefined ? (
        <p className="quiet family-hint">
          Choose a row for where it is found, how it is cleaned and what proves it.
        </p>
      ) : (
        <Material material={material} />
      )}
      {family.tripPoints.rows.length === 0 ? null : <DataTable table={family.tripPoints} />}
      <p className="quiet family-hint">{closing}</p>
    </section>
  );
}

function Material({ material }: { material: MaterialWords }) {
  return (
    <div className="material">
      <h3 className="head">{material.title}</h3>
      <p>
        <Says sentence={material.presence} />
      </p>
      <dl>
        <dt>Goal</dt>
        <dd>{material.goal}</dd>
        <dt>Found in</dt>
        <dd>{material.found.join('; ')}</dd>
        <dt>Cleaned by</dt>
        <dd>{material.steps.join('; ')}</dd>
        <dt>Proved by</dt>
        <dd>{material.evidence.join('; ')}</dd>
      </dl>
    </div>
  );
}
