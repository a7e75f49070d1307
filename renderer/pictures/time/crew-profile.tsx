import { scaleLinear } from 'd3-scale';
import type { CrewPicture } from '../../../core/views';

const LEFT = 44;
const RIGHT = 12;
const TOP = 10;
const FOOT = 24;
const HEIGHT = 190;

/** People at work before (dashed) and after (filled), on one axis of time. */
export function CrewProfile({ picture, width }: { picture: CrewPicture; width: number }) {
  const bottom = HEIGHT - FOOT;
  const x = scaleLinear([picture.from, picture.to], [LEFT, width - RIGHT]);
  const y = scaleLinear([0, picture.ticks.at(-1) ?? 1], [bottom, TOP]);
  const outline = (steps: CrewPicture['after']) =>
    steps
      .map((step, at) => `${at === 0 ? `M${x(step.from)} ${bottom}V` : 'V'}${y(step.all)}H${x(step.to)}`)
      .join('') + `V${bottom}`;
  return (
    <svg width={width} height={HEIGHT} className="picture" role="img" aria-label={picture.words}>
      <g className="axis-text" textAnchor="end">
        {picture.ticks.map(tick => (
          <g key={tick}>
            <path d={`M${LEFT} ${y(tick)}H${width - RIGHT}`} stroke="var(--rule)" />
            <text x={LEFT - 7} y={y(tick) + 4.5}>
              {tick}
            </text>
          </g>
        ))}
      </g>
      <g className="axis-text">
        {picture.months.map(month => (
          <g key={month.at}>
            <path d={`M${x(month.at)} ${bottom}v5`} stroke="var(--rule2)" />
            <text x={x(month.at) + 2} y={bottom + 19}>
              {month.text}
            </text>
          </g>
        ))}
      </g>
      <path d={outline(picture.after)} fill="var(--wash)" stroke="var(--data)" strokeWidth="1.5" />
      <path
        d={outline(picture.before)}
        fill="none"
        stroke="var(--text)"
        strokeWidth="1.3"
        strokeDasharray="5 3"
      />
      <path d={`M${LEFT} ${bottom}H${width - RIGHT}`} stroke="var(--rule2)" />
    </svg>
  );
}
