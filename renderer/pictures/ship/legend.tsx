import type { ShipPicture } from '../../../core/views';

const FILLS = ['var(--paper)', 'var(--wash)', 'var(--data3)'] as const;

/** What the marks of the ship mean. */
export function ShipLegend({ picture }: { picture: ShipPicture }) {
  return (
    <p className="legend" aria-hidden="true">
      <span>
        <svg width="15" height="12">
          <rect
            x="1"
            y="1"
            width="13"
            height="10"
            fill="var(--paper)"
            stroke="var(--text)"
            strokeWidth="1.5"
          />
        </svg>{' '}
        opening
      </span>
      <span>
        <svg width="10" height="10">
          <circle cx="5" cy="5" r="3" fill="var(--paper)" stroke="var(--text)" strokeWidth="1.5" />
        </svg>{' '}
        vent
      </span>
      <span>
        <svg width="15" height="12">
          <rect
            x="1"
            y="1"
            width="13"
            height="10"
            fill="none"
            stroke="var(--text3)"
            strokeDasharray="3 2.5"
          />
        </svg>{' '}
        cut away
      </span>
      {picture.steps.map(step => (
        <span key={step.step}>
          <svg width="15" height="12">
            <rect x="1" y="1" width="13" height="10" fill={FILLS[step.step]} stroke="var(--data)" />
          </svg>{' '}
          fills in {step.text}
        </span>
      ))}
    </p>
  );
}
