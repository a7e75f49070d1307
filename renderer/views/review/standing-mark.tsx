import type { PracticeLine } from '../../../core/views';

/** How far a practice is met, as a bar filled to the end, to the half, not at all, or dashed: never a colour. */
export function StandingMark({ standing }: { standing: PracticeLine['standing'] }) {
  const filled = standing === 'met' ? 22 : standing === 'partly' ? 11 : 0;
  return (
    <svg width="24" height="10" viewBox="0 0 24 10" aria-hidden="true">
      <rect
        x="1"
        y="1"
        width="22"
        height="8"
        fill="none"
        stroke="var(--data)"
        strokeDasharray={standing === 'cannot tell' ? '2 2' : undefined}
      />
      <rect x="1" y="1" width={filled} height="8" fill="var(--data)" />
    </svg>
  );
}
