import { scaleLinear } from 'd3-scale';
import type { ScheduleView } from '../../../core/views';
import type { TimeLayout } from './layout';

export const PEOPLE_HEIGHT = 128;

type Ready = { readonly view: ScheduleView; readonly layout: TimeLayout };

/** People at work on the axis of the chart: all, the trade that holds, and the limits. */
export function People({ view, layout }: Ready) {
  const top = layout.bottom + 22;
  const bottom = layout.bottom + PEOPLE_HEIGHT - 8;
  const last = view.peopleTicks.at(-1) ?? 1;
  const y = scaleLinear([0, last], [bottom, top]);
  const steps = (pick: 'all' | 'holding') =>
    view.people
      .map(step => `M${layout.x(step.from)} ${bottom}V${y(step[pick])}H${layout.x(step.to)}V${bottom}`)
      .join('');
  return (
    <g>
      <g className="axis-text" textAnchor="end">
        {view.peopleTicks.map(tick => (
          <g key={tick}>
            <path d={`M${layout.left} ${y(tick)}H${layout.right}`} stroke="var(--rule)" />
            <text x={layout.left - 7} y={y(tick) + 4.5}>
              {tick}
            </text>
          </g>
        ))}
      </g>
      <path d={steps('all')} fill="var(--wash)" stroke="none" />
      <path d={outline(view, layout, y)} fill="none" stroke="var(--data2)" strokeWidth="1.5" />
      <path d={steps('holding')} fill="var(--data)" />
      <path d={`M${layout.left} ${bottom}H${layout.right}`} stroke="var(--rule2)" />
      <Limits view={view} layout={layout} y={y} />
      <text x="0" y={top + 4} className="strong-text">
        People at work
      </text>
      <Key x={0} y={top + 18} fill="var(--wash)" stroke="var(--data2)" words="all" />
      {view.holdingTrade === undefined ? null : (
        <Key x={0} y={top + 36} fill="var(--data)" stroke="var(--data)" words={view.holdingTrade.title} />
      )}
      <text x="0" y={top + 66} className="mark-text">
        {view.peak}
      </text>
    </g>
  );
}

function outline(view: ScheduleView, layout: TimeLayout, y: (people: number) => number): string {
  return view.people
    .map((step, at) => `${at === 0 ? 'M' : 'L'}${layout.x(step.from)} ${y(step.all)}H${layout.x(step.to)}`)
    .join('');
}

function Limits({ view, layout, y }: Ready & { y: (people: number) => number }) {
  const { peopleLimit, holdingTrade } = view;
  return (
    <>
      {peopleLimit === undefined ? null : (
        <g>
          <path
            d={`M${layout.left} ${y(peopleLimit.at)}H${layout.right}`}
            stroke="var(--text)"
            strokeWidth="1.3"
            strokeDasharray="9 4"
          />
          <text x={layout.left + 7} y={y(peopleLimit.at) - 5} className="mark-text">
            {peopleLimit.text}
          </text>
        </g>
      )}
      {holdingTrade === undefined ? null : (
        <g>
          <path
            d={`M${layout.left} ${y(holdingTrade.limit)}H${layout.right}`}
            stroke="var(--accent)"
            strokeWidth="1.3"
            strokeDasharray="6 4"
          />
          <text x={layout.right - 6} y={y(holdingTrade.limit) - 4} className="accent-text" textAnchor="end">
            {holdingTrade.text}
          </text>
        </g>
      )}
    </>
  );
}

function Key({
  x,
  y,
  fill,
  stroke,
  words,
}: {
  x: number;
  y: number;
  fill: string;
  stroke: string;
  words: string;
}) {
  return (
    <g>
      <rect x={x} y={y} width="12" height="9" fill={fill} stroke={stroke} />
      <text x={x + 18} y={y + 9} className="mark-text">
        {words}
      </text>
    </g>
  );
}
