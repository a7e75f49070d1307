import type { ScheduleLane } from '../../../core/views';

const HULL = 'M2 7H40L36 12H6C4 12 3 10 2 7Z';
const HOUSE = 'M9 7V4H14V2H22V4H26V7Z';

/** The place of a lane on a little ship: the part where the work is, filled. Offices and yards have none. */
export function PlaceMark({ part }: { part: ScheduleLane['part'] }) {
  if (part === 'office' || part === 'yard') return null;
  return (
    <g>
      <path
        d={HOUSE}
        fill={part === 'house' || part === 'whole' ? 'var(--data)' : 'var(--paper)'}
        stroke="var(--data)"
        strokeWidth="1.1"
      />
      <path
        d={HULL}
        fill={part === 'hull' || part === 'whole' ? 'var(--data)' : 'var(--paper)'}
        stroke="var(--data)"
        strokeWidth="1.1"
      />
      {part === 'tanks' ? <path d="M6 10H37L36 12H7Z" fill="var(--data)" /> : null}
      {part === 'machinery' ? <path d="M14 7H22V12H14Z" fill="var(--data)" /> : null}
      {part === 'sea' || part === 'site' ? (
        <path d="M0 13.5H46" stroke={part === 'sea' ? 'var(--data)' : 'var(--bed-ink)'} strokeWidth="1.6" />
      ) : null}
    </g>
  );
}
