import type { Basis } from '../../../core/base';
import type { BasisPart } from '../../../core/views';
import { Figure } from '../../parts/figure';

/** Strongest first, by lightness and then by hatching. */
const LOOKS: Readonly<Record<Basis, string>> = {
  quoted: 'strip-1',
  surveyed: 'strip-2',
  published: 'strip-3',
  'common practice': 'strip-4',
  judgement: 'strip-5',
  'from memory': 'strip-6',
  'invented for the demo': 'strip-7',
};

/** One bar of the total by basis: how much of the money rests on what. */
export function BasisStrip({ head, parts }: { head: string; parts: readonly BasisPart[] }) {
  return (
    <section className="basis-strip" aria-label={head}>
      <h2 className="head">{head}</h2>
      <ul>
        {parts.map(part => (
          <li key={part.basis} style={{ flexGrow: part.part }}>
            <span className="strip-name">{part.basis}</span>
            <span className={`strip ${LOOKS[part.basis]}`} aria-hidden="true" />
            <span className="strip-share">
              <Figure shown={part.share} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
