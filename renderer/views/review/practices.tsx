import { useState } from 'react';
import type { PracticeLine, ReviewView } from '../../../core/views';
import { StandingMark } from './standing-mark';

const STANDINGS = ['not met', 'partly', 'cannot tell', 'met'] as const;

/** Practice by practice: how far it is met, on what evidence, and what would mend it. */
export function Practices({ view }: { view: ReviewView }) {
  const [only, setOnly] = useState<(typeof STANDINGS)[number] | 'all'>('all');
  return (
    <>
      <div className="view-switches practice-switches" role="group" aria-label="Which practices are shown">
        {(['all', ...STANDINGS] as const).map(standing => (
          <button
            key={standing}
            type="button"
            className="switch"
            aria-pressed={only === standing}
            onClick={() => setOnly(standing)}
          >
            {standing}
          </button>
        ))}
      </div>
      {view.guides.map(guide => {
        const lines = guide.lines.filter(line => only === 'all' || line.standing === only);
        return lines.length === 0 ? null : (
          <section key={guide.title} aria-label={guide.title}>
            <h2 className="head finding-head">
              {guide.title} <span className="count">{guide.counts}</span>
            </h2>
            <ul>
              {lines.map(line => (
                <Practice key={line.id} line={line} />
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}

function Practice({ line }: { line: PracticeLine }) {
  return (
    <li className="practice-line">
      <span className="practice-standing">
        <StandingMark standing={line.standing} />
        {line.standing}
      </span>
      <p>{line.practice}</p>
      <div>
        <p className="practice-evidence">
          {line.evidence.join(' ')}
          {line.more === '' ? '' : ` And ${line.more}.`}
        </p>
        {line.standing === 'met' ? null : <p className="quiet">{line.remedy}</p>}
      </div>
    </li>
  );
}
