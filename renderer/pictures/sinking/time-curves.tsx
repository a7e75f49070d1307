import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useState, type KeyboardEvent } from 'react';
import type { DrawnStage, SinkingView } from '../../../core/views';

const LEFT = 120;
const STRIP = 96;
const GAP = 18;

interface Curve {
  readonly title: string;
  readonly unit: string;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly of: (stage: DrawnStage) => number | undefined;
  readonly say: (stage: DrawnStage) => string;
}

/** Level and heel against time, with one cursor that the arrow keys move. */
export function TimeCurves({ view, width }: { view: SinkingView; width: number }) {
  const [at, setAt] = useState(0);
  const last = view.timeTicks.at(-1)?.at ?? 60;
  const x = scaleLinear([0, last], [LEFT, width - 8]);
  const stage = view.curve[at] ?? view.curve[0];
  const curves: readonly Curve[] = [
    {
      title: 'Flood level',
      unit: view.levelUnit,
      ticks: view.levelTicks,
      of: one => one.level,
      say: one => one.levelWords,
    },
    {
      title: 'Heel, worst',
      unit: 'degrees',
      ticks: view.heelTicks,
      of: one => one.worst,
      say: one => one.worstWords,
    },
    {
      title: 'List, likely',
      unit: 'degrees',
      ticks: view.heelTicks,
      of: one => Math.abs(one.list),
      say: one => one.listWords,
    },
  ];
  if (stage === undefined) return null;
  const height = curves.length * (STRIP + GAP) + 34;
  const move = (event: KeyboardEvent) => {
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: 1,
      ArrowUp: 1,
      ArrowLeft: -1,
      ArrowDown: -1,
      PageUp: 6,
      PageDown: -6,
    };
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    setAt(Math.max(0, Math.min(view.curve.length - 1, at + step)));
  };
  return (
    <svg
      width={width}
      height={height}
      className="picture"
      role="slider"
      tabIndex={0}
      aria-label="Moment of the sinking"
      aria-valuemin={0}
      aria-valuemax={view.curve.length - 1}
      aria-valuenow={at}
      aria-valuetext={`${stage.time}, heel at worst ${stage.worstWords}, list ${stage.listWords} ${stage.event}`}
      onKeyDown={move}
    >
      {curves.map((curve, row) => (
        <Strip
          key={curve.title}
          curve={curve}
          view={view}
          stage={stage}
          x={x}
          top={row * (STRIP + GAP) + 8}
          right={width - 8}
        />
      ))}
      <path d={`M${x(stage.t)} 4V${height - 26}`} stroke="var(--text)" strokeWidth="1.2" />
      <g textAnchor="middle" className="axis-text">
        {view.timeTicks.map(tick => (
          <text key={tick.at} x={x(tick.at)} y={height - 8}>
            {tick.text}
          </text>
        ))}
      </g>
      <text x="0" y={height - 8} className="strong-text">
        {stage.time}
      </text>
      <text x={LEFT - 7} y={height - 8} className="axis-text" textAnchor="end">
        min
      </text>
    </svg>
  );
}

interface StripProps {
  readonly curve: Curve;
  readonly view: SinkingView;
  readonly stage: DrawnStage;
  readonly x: (t: number) => number;
  readonly top: number;
  readonly right: number;
}

function Strip({ curve, view, stage, x, top, right }: StripProps) {
  const most = curve.ticks.at(-1)?.at ?? 1;
  const y = scaleLinear([0, most], [top + STRIP, top]);
  const height = (one: DrawnStage) => y(Math.min(most, curve.of(one) ?? 0));
  const path =
    line<DrawnStage>()
      .defined(one => curve.of(one) !== undefined)
      .x(one => x(one.t))
      .y(height)([...view.curve]) ?? '';
  return (
    <g>
      <text x="0" y={top + 12} className="strong-text">
        {curve.title}
      </text>
      <text x="0" y={top + 28} className="axis-text">
        {curve.unit}
      </text>
      <text x="0" y={top + 50} className="curve-value">
        {curve.say(stage)}
      </text>
      {curve.ticks.map(tick => (
        <g key={tick.at} className="axis-text" textAnchor="end">
          <path
            d={`M${LEFT} ${y(tick.at)}H${right}`}
            stroke={tick.at === 0 ? 'var(--rule2)' : 'var(--rule)'}
          />
          <text x={LEFT - 7} y={y(tick.at) + 4.5}>
            {tick.text}
          </text>
        </g>
      ))}
      <path d={path} fill="none" stroke="var(--data)" strokeWidth="2" />
      {curve.of(stage) === undefined ? null : (
        <circle
          cx={x(stage.t)}
          cy={height(stage)}
          r="4"
          fill="var(--paper)"
          stroke="var(--data)"
          strokeWidth="2"
        />
      )}
    </g>
  );
}
