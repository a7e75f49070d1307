import type { Verdict } from '../../core/views';

/** How far the little hull leans in the mark, by verdict: a sign, not a scale. */
const LEAN: Readonly<Record<Verdict, number>> = {
  'stays up': 0,
  leans: 25,
  'may roll over': 95,
  'does not sink': 0,
  'cannot tell': 0,
};

/** The verdict of the screening as a hull: upright, leaning, on its side, afloat, unknown. */
export function VerdictMark({ verdict }: { verdict: Verdict }) {
  const isAfloat = verdict === 'does not sink';
  const isUnknown = verdict === 'cannot tell';
  return (
    <svg className="verdict-mark" width="20" height="18" viewBox="0 0 20 18" aria-hidden="true">
      <path d="M0 9.5H20" stroke="var(--text)" strokeWidth="1" />
      <g
        transform={`${isAfloat ? 'translate(0 -4) ' : ''}rotate(${LEAN[verdict]} 10 10)`}
        fill={isUnknown ? 'none' : 'var(--text)'}
        stroke="var(--text)"
        strokeWidth={isUnknown ? 1.2 : 0}
        strokeDasharray={isUnknown ? '2 1.5' : undefined}
      >
        <path d="M9.2 1H10.8V7H16C16 12 14 15.5 10 15.5C6 15.5 4 12 4 7H9.2Z" />
      </g>
    </svg>
  );
}
