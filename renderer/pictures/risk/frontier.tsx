import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import { useId } from 'react';
import type { FrontierPicture } from '../../../core/views';
import { Patterns } from '../patterns';
import { textWidth } from '../text-width';
import { Ticks } from './ticks';

const LEFT = 36;
const RIGHT = 26;
const TOP = 10;
const FOOT = 24;
/** Line patterns by place, so that scenarios are told apart without colour. */
const DASHES = [undefined, '7 4', '2 4', '10 3 2 3', '4 2', '1 3'];

type Line = FrontierPicture['lines'][number];
type Plan = FrontierPicture['plans'][number];

/** Lines of equal chance of cost and finish together, the plans as letters, money and last date as limits. */
export function Frontier({
  picture,
  width,
  height,
}: {
  picture: FrontierPicture;
  width: number;
  height: number;
}) {
  const id = useId();
  const { dates, money, inHand, lastDate } = picture;
  const bottom = height - FOOT;
  const x = scaleLinear([dates[0]?.at ?? 0, dates.at(-1)?.at ?? 1], [LEFT, width - RIGHT]);
  const y = scaleLinear([money[0]?.at ?? 0, money.at(-1)?.at ?? 1], [bottom, TOP]);
  const draw = line<Line['points'][number]>()
    .x(point => x(point.day))
    .y(point => y(point.dollars))
    .curve(curveStepAfter);
  return (
    <svg width={width} height={height} className="picture" role="img" aria-label={picture.words}>
      <Patterns id={id} />
      {lastDate === undefined ? null : (
        <rect
          x={x(lastDate.at)}
          y={TOP}
          width={Math.max(0, width - RIGHT - x(lastDate.at))}
          height={bottom - TOP}
          fill={`url(#${id}-closed)`}
        />
      )}
      <Axes picture={picture} x={x} y={y} width={width} bottom={bottom} />
      {inHand === undefined ? null : (
        <g>
          <path d={`M${LEFT} ${y(inHand.at)}H${width - RIGHT}`} stroke="var(--text)" strokeDasharray="6 4" />
          <text className="mark-text" x={width - RIGHT - 6} y={y(inHand.at) + 17} textAnchor="end">
            {inHand.text}
          </text>
        </g>
      )}
      {lastDate === undefined ? null : (
        <LastDate text={lastDate.text} at={x(lastDate.at)} bottom={bottom} width={width} />
      )}
      {picture.lines.map((one, at) => (
        <g key={one.letter}>
          <path
            d={draw([...one.points]) ?? ''}
            fill="none"
            stroke={one.isChosen ? 'var(--data)' : 'var(--data2)'}
            strokeWidth={one.isChosen ? 2.5 : 2}
            strokeDasharray={one.isChosen ? undefined : DASHES[at === 0 ? 1 : at]}
          />
        </g>
      ))}
      {picture.lines.length < 2 ? null : <LineEnds lines={picture.lines} x={x} y={y} />}
      {placed(picture.plans, x, y).map(({ plan, px, py }) => (
        <PlanMark key={plan.letter} plan={plan} px={px} py={py} />
      ))}
    </svg>
  );
}

interface AxesProps {
  readonly picture: FrontierPicture;
  readonly x: (at: number) => number;
  readonly y: (at: number) => number;
  readonly width: number;
  readonly bottom: number;
}

function Axes({ picture, x, y, width, bottom }: AxesProps) {
  return (
    <>
      {picture.money.map((tick, at) => (
        <g key={tick.at} className="axis-text" textAnchor="end">
          <path
            d={`M${LEFT} ${y(tick.at)}H${width - RIGHT}`}
            stroke={at === 0 ? 'var(--rule2)' : 'var(--rule)'}
          />
          <text x={LEFT - 7} y={y(tick.at) + 4.5}>
            {tick.text}
          </text>
        </g>
      ))}
      <Ticks ticks={picture.dates} x={x} bottom={bottom} width={width} />
    </>
  );
}

function LastDate({ text, at, bottom, width }: { text: string; at: number; bottom: number; width: number }) {
  const isRight = at + textWidth(text) + 12 < width;
  return (
    <g>
      <path d={`M${at} ${TOP}V${bottom}`} stroke="var(--text)" strokeWidth="2" />
      <text
        className="mark-text"
        x={isRight ? at + 7 : at - 7}
        y={TOP + 16}
        textAnchor={isRight ? 'start' : 'end'}
      >
        {text}
      </text>
    </g>
  );
}

interface LineEndsProps {
  readonly lines: readonly Line[];
  readonly x: (at: number) => number;
  readonly y: (at: number) => number;
}

/** The letter at the end of each line; letters that would meet stand one above the other. */
function LineEnds({ lines, x, y }: LineEndsProps) {
  const taken: { px: number; py: number }[] = [];
  const ends = lines
    .flatMap(({ letter, points }) => {
      const last = points.at(-1);
      return last === undefined ? [] : [{ letter, px: x(last.day) + 6, py: y(last.dollars) + 5 }];
    })
    .toSorted((a, b) => b.py - a.py)
    .map(end => {
      let { py } = end;
      while (taken.some(one => Math.abs(one.px - end.px) < 14 && Math.abs(one.py - py) < 15)) py -= 3;
      taken.push({ px: end.px, py });
      return { ...end, py };
    });
  return ends.map(end => (
    <text key={end.letter} className="mark-text strong-mark" x={end.px} y={end.py}>
      {end.letter}
    </text>
  ));
}

/** The letters of the plans; those that would lie on each other stand side by side. */
function placed(plans: readonly Plan[], x: (at: number) => number, y: (at: number) => number) {
  const taken: { px: number; py: number }[] = [];
  return plans.map(plan => {
    let [px, py] = [x(plan.day), y(plan.dollars)];
    while (taken.some(one => Math.abs(one.px - px) < 22 && Math.abs(one.py - py) < 22)) {
      px += 23;
      if (px > x(plan.day) + 70) [px, py] = [x(plan.day), py - 23];
    }
    taken.push({ px, py });
    return { plan, px, py };
  });
}

function PlanMark({ plan, px, py }: { plan: Plan; px: number; py: number }) {
  return (
    <g>
      <rect
        x={px - 10}
        y={py - 10}
        width="20"
        height="20"
        fill={plan.isChosen ? 'var(--data)' : 'var(--paper)'}
        stroke={plan.isPermittable ? 'var(--data)' : 'var(--accent)'}
        strokeWidth="1.5"
        strokeDasharray={plan.isPermittable ? undefined : '3 2'}
      />
      <text
        x={px}
        y={py + 4.5}
        textAnchor="middle"
        className="letter-mark"
        style={{ fill: plan.isChosen ? 'var(--on-data)' : 'var(--text)' }}
      >
        {plan.letter}
      </text>
    </g>
  );
}
