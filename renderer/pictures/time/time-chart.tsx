import { useId, useMemo, type KeyboardEvent } from 'react';
import type { ScheduleMark, ScheduleShade, ScheduleView } from '../../../core/views';
import { change, useWindow } from '../../state/store';
import { askWhy } from '../../state/why';
import { Patterns } from '../patterns';
import { Bar, Earlier, Holding } from './bars';
import { AXIS_HEIGHT, NAME_LINE, timeLayout, type TimeLayout } from './layout';
import { People, PEOPLE_HEIGHT } from './people';
import { textWidth } from '../text-width';
import { PlaceMark } from './place-mark';

/** The work in time: lanes by place, closures and windows as hatching, what holds the chosen activity in words. */
export function TimeChart({ view, width }: { view: ScheduleView; width: number }) {
  const id = useId();
  const layout = useMemo(() => timeLayout(view, width), [view, width]);
  const chosen = useWindow(window => window.chosen);
  const chosenBar = layout.bars.find(placed => placed.bar.id === chosen);
  const reachable = chosenBar ?? layout.bars[0];
  const height = layout.bottom + PEOPLE_HEIGHT;
  return (
    <>
      <Axis view={view} layout={layout} width={width} />
      <svg
        width={width}
        height={height}
        className="picture time-chart"
        role="group"
        aria-label={view.words}
        onKeyDown={event => onKey(event, layout, reachable?.bar.id)}
      >
        <Patterns id={id} />
        <Shades view={view} layout={layout} id={id} />
        <MonthLines view={view} layout={layout} height={height} />
        <Lanes layout={layout} />
        <People view={view} layout={layout} />
        {view.marks.map(mark => (
          <Mark key={mark.kind} mark={mark} layout={layout} height={height} />
        ))}
        {layout.bars.map(placed => (
          <Earlier key={placed.bar.id} placed={placed} layout={layout} />
        ))}
        {layout.bars.map(placed => (
          <Bar
            key={placed.bar.id}
            placed={placed}
            isChosen={placed === chosenBar}
            isReachable={placed === reachable}
            onChoose={() => change({ chosen: placed.bar.id })}
          />
        ))}
        {chosenBar === undefined ? null : <Holding placed={chosenBar} layout={layout} />}
      </svg>
    </>
  );
}

/** Arrow keys go from bar to bar in order of lane and start; Enter asks why. */
function onKey(event: KeyboardEvent, layout: TimeLayout, at: string | undefined): void {
  const place = layout.bars.findIndex(placed => placed.bar.id === at);
  const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };
  const step = steps[event.key];
  if (event.key === 'Enter' || event.key === ' ') {
    const bar = layout.bars[place];
    if (bar !== undefined) {
      change({ chosen: bar.bar.id });
      void askWhy(bar.bar.why);
    }
  } else if (step !== undefined) {
    const next = layout.bars[Math.max(0, Math.min(layout.bars.length - 1, place + step))];
    if (next === undefined) return;
    change({ chosen: next.bar.id });
    requestAnimationFrame(() => {
      window.document.querySelector<SVGElement>(`[data-bar="${CSS.escape(next.bar.id)}"]`)?.focus();
    });
  } else return;
  event.preventDefault();
}

function MonthLines({ view, layout, height }: { view: ScheduleView; layout: TimeLayout; height: number }) {
  return (
    <>
      {view.months.map(month => (
        <path key={month.at} d={`M${layout.x(month.at)} 0V${height - 8}`} stroke="var(--rule)" />
      ))}
    </>
  );
}

/** How much wider the strong letters of the axis are. */
const STRONGER = 1.08;

/** The axis stays in view while the lanes scroll under it. */
function Axis({ view, layout, width }: { view: ScheduleView; layout: TimeLayout; width: number }) {
  const isRoomy = layout.x(view.weeks[1]?.at ?? 1) - layout.x(view.weeks[0]?.at ?? 0) >= 20;
  const first = view.months[0];
  const isNarrow = first !== undefined && layout.x(first.to) - layout.x(first.at) < 34;
  return (
    <svg width={width} height={AXIS_HEIGHT} className="picture time-axis" aria-hidden="true">
      <text x="0" y={AXIS_HEIGHT - 8} className="axis-text">
        {isRoomy ? 'Place, week of' : 'Place'}
      </text>
      {view.months
        .filter((month, at) => (isNarrow ? month.isQuarter : !isCrowded(layout, view.months[at - 1])))
        .map(month => (
          <g key={month.at}>
            <path d={`M${layout.x(month.at)} 38V${AXIS_HEIGHT}`} stroke="var(--rule)" />
            {layout.x(month.at) + 5 + STRONGER * textWidth(month.text) <= width ? (
              <text x={layout.x(month.at) + 5} y={isRoomy ? 50 : AXIS_HEIGHT - 10} className="strong-text">
                {month.text}
              </text>
            ) : null}
          </g>
        ))}
      {isRoomy
        ? view.weeks.map(week => (
            <text
              key={week.at}
              x={layout.x(week.at)}
              y={AXIS_HEIGHT - 8}
              textAnchor="middle"
              className="axis-text"
            >
              {week.text}
            </text>
          ))
        : null}
      <path d={`M${layout.left} ${AXIS_HEIGHT - 1}H${layout.right}`} stroke="var(--rule2)" />
      {view.marks.map(mark => (
        <MarkName key={mark.kind} mark={mark} layout={layout} />
      ))}
    </svg>
  );
}

/** Whether the month before has a long name that takes this month's room too. */
function isCrowded(layout: TimeLayout, before: ScheduleView['months'][number] | undefined): boolean {
  if (before === undefined || !before.text.includes(' ')) return false;
  return layout.x(before.to) - layout.x(before.at) < 58;
}

function Lanes({ layout }: { layout: TimeLayout }) {
  return (
    <g>
      {layout.lanes.map(({ lane, name, y, height }) => (
        <g key={lane.id}>
          <path d={`M0 ${y + height}H${layout.right}`} stroke="var(--rule)" />
          {name.map((line, at) => (
            <text key={line} x="0" y={y + 17 + at * NAME_LINE} className="strong-text">
              {line}
            </text>
          ))}
          <g transform={`translate(${layout.left - 58} ${y + 5})`}>
            <PlaceMark part={lane.part} />
          </g>
        </g>
      ))}
    </g>
  );
}

/** Closures and windows: over the full height at half strength, full strength in the lanes they govern. */
function Shades({ view, layout, id }: { view: ScheduleView; layout: TimeLayout; id: string }) {
  return (
    <g>
      {view.shades.map(shade => (
        <Shade
          key={`${shade.id}-${shade.from}`}
          shade={shade}
          layout={layout}
          fill={`url(#${id}-${shade.kind})`}
        />
      ))}
    </g>
  );
}

function Shade({ shade, layout, fill }: { shade: ScheduleShade; layout: TimeLayout; fill: string }) {
  const x = Math.max(layout.left, layout.x(shade.from));
  const width = Math.min(layout.right, layout.x(shade.to)) - x;
  if (width <= 0) return null;
  return (
    <g>
      <rect x={x} y={0} width={width} height={layout.bottom} fill={fill} opacity="0.4">
        <title>{shade.title}</title>
      </rect>
      {layout.lanes
        .filter(({ lane }) => shade.lanes.includes(lane.id))
        .map(({ lane, y, height }) => (
          <rect key={lane.id} x={x} y={y} width={width} height={height} fill={fill} />
        ))}
    </g>
  );
}

const MARK_LINES: Readonly<
  Record<ScheduleMark['kind'], { stroke: string; width: number; dash?: string; row: number }>
> = {
  finish: { stroke: 'var(--data)', width: 2, row: 0 },
  'grant-end': { stroke: 'var(--text)', width: 1.5, dash: '4 3', row: 1 },
  'last-date': { stroke: 'var(--text)', width: 2, row: 2 },
  status: { stroke: 'var(--rule2)', width: 1, dash: '2 2', row: 0 },
};

function Mark({ mark, layout, height }: { mark: ScheduleMark; layout: TimeLayout; height: number }) {
  const style = MARK_LINES[mark.kind];
  const x = layout.x(mark.at);
  return (
    <path
      d={`M${x} 0V${height - 8}`}
      stroke={style.stroke}
      strokeWidth={style.width}
      strokeDasharray={style.dash}
      pointerEvents="none"
    />
  );
}

/** The names of the marks, over the axis, each on a row of its own. */
function MarkName({ mark, layout }: { mark: ScheduleMark; layout: TimeLayout }) {
  const style = MARK_LINES[mark.kind];
  const x = layout.x(mark.at);
  return (
    <g>
      <path
        d={`M${x} ${style.row * 16}V${AXIS_HEIGHT}`}
        stroke={style.stroke}
        strokeWidth={style.width}
        strokeDasharray={style.dash}
      />
      <text x={x - 5} y={style.row * 16 + 12} textAnchor="end" className="mark-text">
        {mark.title} {mark.date}
      </text>
    </g>
  );
}
