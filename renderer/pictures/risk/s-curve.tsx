import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { CurveMark, CurvePicture } from '../../../core/views';
import { textWidth } from '../text-width';
import { Ticks } from './ticks';

const LEFT = 34;
const RIGHT = 16;
const TOP = 10;
const FOOT = 24;
const SHARES = [0, 0.2, 0.5, 0.8, 1];

/** The share of the runs that end inside an amount or by a date, as a rising curve with plan, P50, P80 and limit. */
export function SCurve({ curve, width, height }: { curve: CurvePicture; width: number; height: number }) {
  const bottom = height - FOOT;
  const x = scaleLinear([curve.ticks[0]?.at ?? 0, curve.ticks.at(-1)?.at ?? 1], [LEFT, width - RIGHT]);
  const y = scaleLinear([0, 1], [bottom, TOP]);
  const path = line<CurvePicture['points'][number]>()
    .x(point => x(point.at))
    .y(point => y(point.share))
    .curve(curveStepAfter)([...curve.points]);
  return (
    <svg width={width} height={height} className="picture" role="img" aria-label={curve.words}>
      {SHARES.map(share => (
        <g key={share} className="axis-text" textAnchor="end">
          <path
            d={`M${LEFT} ${y(share)}H${width - RIGHT}`}
            stroke={share === 0 ? 'var(--rule2)' : 'var(--rule)'}
          />
          <text x={LEFT - 7} y={y(share) + 4.5}>
            {share * 100}
          </text>
        </g>
      ))}
      <Ticks ticks={curve.ticks} x={x} bottom={bottom} width={width} />
      <path d={path ?? ''} fill="none" stroke="var(--data)" strokeWidth="2.5" />
      {spread(curve.marks, x, y, width).map(place => (
        <Mark key={place.mark.id} place={place} bottom={bottom} />
      ))}
    </svg>
  );
}

interface Place {
  readonly mark: CurveMark;
  readonly px: number;
  readonly py: number;
  readonly labelX: number;
  readonly labelY: number;
  readonly anchor: 'start' | 'end';
}

/** Names beside their marks, plan and limit on the side away from the curve, one above the other where they would meet. */
function spread(
  marks: readonly CurveMark[],
  x: (at: number) => number,
  y: (share: number) => number,
  width: number,
): readonly Place[] {
  const taken: { from: number; to: number; y: number }[] = [];
  return marks
    .toSorted((a, b) => b.share - a.share)
    .map(mark => {
      const [px, py] = [x(mark.at), y(mark.share)];
      const wide = textWidth(mark.text) + 4;
      const isAway = mark.id === 'plan' || mark.id === 'limit';
      const isRight = isAway ? px - 9 - wide < LEFT : px + 9 + wide < width;
      const from = isRight ? px + 9 : px - 9 - wide;
      // The limit is named at the head of its line.
      let labelY = mark.id === 'limit' ? TOP + 14 : Math.min(py + 16, y(0) - 6);
      const meets = (one: (typeof taken)[number]) =>
        one.from < from + wide && one.to > from && Math.abs(one.y - labelY) < 16;
      while (taken.some(meets)) labelY += mark.id === 'limit' ? 4 : -4;
      taken.push({ from, to: from + wide, y: labelY });
      return { mark, px, py, labelX: isRight ? px + 9 : px - 9, labelY, anchor: isRight ? 'start' : 'end' };
    });
}

function Mark({ place, bottom }: { place: Place; bottom: number }) {
  const { mark, px, py, labelX, labelY, anchor } = place;
  const isLimit = mark.id === 'limit';
  return (
    <g>
      {isLimit ? <path d={`M${px} ${TOP}V${bottom}`} stroke="var(--text)" strokeDasharray="6 4" /> : null}
      {mark.id === 'plan' ? (
        <path d={`M${px} ${py}V${bottom}`} stroke="var(--data2)" strokeDasharray="2 3" />
      ) : null}
      <circle
        cx={px}
        cy={py}
        r="4"
        fill={mark.id === 'plan' || isLimit ? 'var(--paper)' : 'var(--data)'}
        stroke={isLimit ? 'var(--text)' : 'var(--data)'}
        strokeWidth="1.5"
      />
      <text className="mark-text" x={labelX} y={labelY} textAnchor={anchor}>
        {mark.text}
      </text>
    </g>
  );
}
