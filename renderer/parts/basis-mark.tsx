import type { Basis } from '../../core/base';

/** How full the square is: checked for this ship, in print or in use, an opinion, made up. */
const FILLS: Readonly<Record<Basis, 'full' | 'half' | 'empty' | 'dashed'>> = {
  quoted: 'full',
  surveyed: 'full',
  published: 'half',
  'common practice': 'half',
  judgement: 'empty',
  'from memory': 'empty',
  'invented for the demo': 'dashed',
};

const SHORT: Partial<Record<Basis, string>> = {
  'common practice': 'practice',
  'invented for the demo': 'invented',
};

/** Where a number comes from: a mark that survives grey, and the word. */
export function BasisMark({ basis, source }: { basis: Basis; source?: string | undefined }) {
  const fill = FILLS[basis];
  return (
    <span className="basis" title={source === undefined ? basis : `${basis}: ${source}`}>
      <svg width="11" height="11" viewBox="0 0 11 11" aria-hidden="true">
        <rect
          x="0.75"
          y="0.75"
          width="9.5"
          height="9.5"
          fill={fill === 'full' ? 'var(--data)' : 'var(--paper)'}
          stroke="var(--data)"
          strokeWidth="1.5"
          strokeDasharray={fill === 'dashed' ? '2 1.6' : undefined}
        />
        {fill === 'half' ? (
          <path d="M1 10V1L10 10Z" fill="var(--data)" transform="rotate(180 5.5 5.5)" />
        ) : null}
      </svg>
      {SHORT[basis] ?? basis}
    </span>
  );
}
