import { scaleLinear } from 'd3-scale';
import type { ReviewView } from '../../../core/views';

const LEFT = 12;

/** One line of growth: a tick for every past hull, the budget of this one above it. */
export function GrowthLine({ growth, width }: { growth: NonNullable<ReviewView['growth']>; width: number }) {
  const most = Math.max(2, ...growth.past.map(one => one.at), growth.own?.at ?? 1);
  const least = Math.min(1, ...growth.past.map(one => one.at));
  const x = scaleLinear([Math.floor(least * 5) / 5, Math.ceil(most * 5) / 5], [LEFT, width - 60]);
  const words = `Past hulls grew by ${growth.past.map(one => one.at).join(', ')} times; this budget allows ${growth.own?.at.toFixed(2) ?? 'nothing'}.`;
  return (
    <svg width={width} height={84} className="picture" role="img" aria-label={words}>
      <path d={`M${LEFT} 44H${x.range()[1] ?? width}`} stroke="var(--rule2)" />
      {x.ticks(6).map(tick => (
        <g key={tick} className="axis-text" textAnchor="middle">
          <path d={`M${x(tick)} 44V49`} stroke="var(--rule2)" />
          <text x={x(tick)} y={66}>
            {tick.toFixed(1)}
          </text>
        </g>
      ))}
      {growth.past.map((one, at) => (
        <path key={`${one.text}-${at}`} d={`M${x(one.at)} 34V54`} stroke="var(--data)" strokeWidth="2">
          <title>{`${one.text}: ${one.at} times`}</title>
        </path>
      ))}
      {growth.own === undefined ? null : (
        <g>
          <path d={`M${x(growth.own.at)} 18V44`} stroke="var(--accent)" strokeWidth="2" />
          <text className="accent-text" x={x(growth.own.at) + 6} y={24}>
            {growth.own.text}
          </text>
        </g>
      )}
    </svg>
  );
}
