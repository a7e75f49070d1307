import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { CashPicture as Cash, CashPoint } from '../../../core/views';
import { textWidth } from '../text-width';

const LEFT = 46;
const RIGHT = 14;
const TOP = 10;
const FOOT = 40;

/** Cash by month: paid in the month as bars, paid so far as a line, what came in as steps, the gap between them washed. */
export function CashPicture({ cash, width, height }: { cash: Cash; width: number; height: number }) {
  const { points, ticks } = cash;
  const bottom = height - FOOT;
  const x = scaleLinear([0, points.length], [LEFT, width - RIGHT]);
  const y = scaleLinear([0, ticks.at(-1)?.at ?? 1], [bottom, TOP]);
  // Each amount stands at the end of its month.
  const ends: readonly Place[] = [
    { at: 0, point: undefined },
    ...points.map((point, at) => ({ at: at + 1, point })),
  ];
  const paid = (one: Place) => one.point?.paidSoFar ?? 0;
  const came = (one: Place) => one.point?.inSoFar ?? 0;
  const wash = `${ends.map((one, at) => `${at === 0 ? 'M' : 'L'}${x(one.at)} ${y(paid(one))}`).join('')}${ends
    .toReversed()
    .map(one => `V${y(came(one))}H${x(Math.max(0, one.at - 1))}`)
    .join('')}Z`;
  const paidLine = line<Place>()
    .x(one => x(one.at))
    .y(one => y(paid(one)))([...ends]);
  const cameLine = line<Place>()
    .x(one => x(one.at))
    .y(one => y(came(one)))
    .curve(curveStepAfter)([...ends]);
  return (
    <svg width={width} height={height} className="picture" role="img" aria-label={cash.words}>
      {ticks.map(tick => (
        <g key={tick.at} className="axis-text" textAnchor="end">
          <path
            d={`M${LEFT} ${y(tick.at)}H${width - RIGHT}`}
            stroke={tick.at === 0 ? 'var(--rule2)' : 'var(--rule)'}
          />
          <text x={LEFT - 8} y={y(tick.at) + 4.5}>
            {tick.text}
          </text>
        </g>
      ))}
      <path d={wash} fill="var(--accent-wash)" />
      {points.map((point, at) => (
        <rect
          key={point.month}
          x={x(at) + (x(1) - x(0)) * 0.25}
          width={(x(1) - x(0)) * 0.5}
          y={y(point.paid)}
          height={Math.max(0, bottom - y(point.paid))}
          fill="var(--data3)"
          stroke="var(--data2)"
        >
          <title>{point.words}</title>
        </rect>
      ))}
      <path d={cameLine ?? ''} fill="none" stroke="var(--data2)" strokeWidth="2" strokeDasharray="6 4" />
      <path d={paidLine ?? ''} fill="none" stroke="var(--data)" strokeWidth="2.5" />
      <Months points={points} x={x} bottom={bottom} />
      <Labels cash={cash} x={x} y={y} width={width} />
    </svg>
  );
}

interface Place {
  readonly at: number;
  readonly point: CashPoint | undefined;
}

interface MonthsProps {
  readonly points: readonly CashPoint[];
  readonly x: (at: number) => number;
  readonly bottom: number;
}

/** Names of the months as far as there is room, and of the years beneath. */
function Months({ points, x, bottom }: MonthsProps) {
  const step = x(1) - x(0);
  const every = step >= 34 ? 1 : step >= 17 ? 2 : step >= 11 ? 3 : 6;
  return (
    <g className="axis-text" textAnchor="middle">
      {points.map((point, at) => (
        <g key={point.month}>
          {at % every === 0 ? (
            <text x={x(at + 0.5)} y={bottom + 17}>
              {point.text}
            </text>
          ) : null}
          {at === 0 || point.month.endsWith('-01') ? (
            <text x={x(at) + 2} y={bottom + 34} textAnchor="start">
              {point.year}
            </text>
          ) : null}
          {at > 0 && point.month.endsWith('-01') ? (
            <path d={`M${x(at)} ${bottom}V${bottom + 36}`} stroke="var(--rule2)" />
          ) : null}
        </g>
      ))}
    </g>
  );
}

interface LabelsProps {
  readonly cash: Cash;
  readonly x: (at: number) => number;
  readonly y: (amount: number) => number;
  readonly width: number;
}

/** The worst month as the only dimension, and what the two lines are. */
function Labels({ cash, x, y, width }: LabelsProps) {
  const { points, worst } = cash;
  const at = worst === undefined ? undefined : points[worst.at];
  const end = worst === undefined ? 0 : x(worst.at + 1);
  const right = width - RIGHT;
  // The words stand under the lowest step beside them, which would else run across them.
  const beside = points.filter((_, place) => x(place + 2) > right - textWidth(cash.comeIn));
  const lowest = Math.max(...beside.map(point => y(point.inSoFar)));
  const isLeft = worst !== undefined && end + textWidth(worst.text) + 16 > width;
  return (
    <g>
      {worst === undefined || at === undefined ? null : (
        <g>
          <path
            d={`M${end} ${y(at.paidSoFar)}V${y(at.inSoFar)}M${end - 5} ${y(at.paidSoFar)}H${end + 5}M${end - 5} ${y(at.inSoFar)}H${end + 5}`}
            stroke="var(--accent)"
            strokeWidth="2"
          />
          <text
            className="accent-text strong-label"
            x={isLeft ? end - 9 : end + 9}
            y={(y(at.paidSoFar) + y(at.inSoFar)) / 2 + 5}
            textAnchor={isLeft ? 'end' : 'start'}
          >
            {worst.text}
          </text>
          <text className="mark-text strong-mark" x={end - 10} y={y(at.paidSoFar) - 6} textAnchor="end">
            paid out
          </text>
        </g>
      )}
      {points.length === 0 ? null : (
        <text className="mark-text" x={right} y={Math.min(lowest + 22, y(0) - 6)} textAnchor="end">
          {cash.comeIn}
        </text>
      )}
    </g>
  );
}
