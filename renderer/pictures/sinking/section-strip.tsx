import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useId } from 'react';
import { sectionOutline, type DrawnStage, type Point, type SinkingView } from '../../../core/views';
import { lines } from '../text-width';

const HEIGHT = 176;
/** From one line of a caption to the next. */
const CAPTION_LINE = 17;

/** The ship through the sinking: sections to one scale at moments, water level inside, heel written under each. */
export function SectionStrip({ view, width }: { view: SinkingView; width: number }) {
  const each = width / Math.max(1, view.strip.length);
  const span = Math.max(view.beam, view.depth) * 1.45;
  const perMetre = Math.min((each - 12) / span, (HEIGHT - 20) / span);
  const most = Math.max(3, ...view.strip.map(stage => captionOf(stage, each).length));
  return (
    <svg
      width={width}
      height={HEIGHT + 7 + most * CAPTION_LINE}
      className="picture"
      role="img"
      aria-label={view.words}
    >
      {view.strip.map((stage, at) => (
        <Section key={stage.t} stage={stage} view={view} left={at * each} width={each} perMetre={perMetre} />
      ))}
    </svg>
  );
}

interface CaptionLine {
  readonly words: string;
  readonly className: string | undefined;
}

/** What stands under a section, in lines that fit its width. */
function captionOf(stage: DrawnStage, width: number): readonly CaptionLine[] {
  const isWorst = stage.heel === undefined || Math.abs(stage.heel) > 15;
  const parts = [
    [stage.time, 'strong-text'],
    [stage.heelWords, isWorst ? 'accent-text' : undefined],
    [stage.event, 'axis-text'],
  ] as const;
  return parts.flatMap(([text, className]) => lines(text, width - 8).map(words => ({ words, className })));
}

interface SectionProps {
  readonly stage: DrawnStage;
  readonly view: SinkingView;
  readonly left: number;
  readonly width: number;
  readonly perMetre: number;
}

function Section({ stage, view, left, width, perMetre }: SectionProps) {
  const id = useId();
  const middle = left + width / 2;
  const surface = HEIGHT * 0.46;
  const scale = scaleLinear([0, 1], [0, perMetre]);
  const keel = surface + scale(stage.draught);
  const outline =
    line<Point>()
      .x(point => middle + scale(point.along))
      .y(point => keel - scale(point.up))([...sectionOutline(view.beam, view.depth)]) ?? '';
  const heel = stage.heel ?? 90;
  return (
    <g>
      <rect x={left + 3} y={surface} width={width - 6} height={HEIGHT - surface} fill="var(--water)" />
      <g transform={`rotate(${heel} ${middle} ${keel - scale(view.depth * 0.5)})`}>
        <clipPath id={id}>
          <path d={`${outline}Z`} />
        </clipPath>
        <path d={`${outline}Z`} fill="var(--paper)" />
        <rect
          x={middle - scale(view.beam)}
          y={keel - scale(stage.level)}
          width={scale(view.beam * 2)}
          height={scale(stage.level)}
          fill="var(--data3)"
          clipPath={`url(#${id})`}
        />
        <path d={`${outline}Z`} fill="none" stroke="var(--data)" strokeWidth="2" />
        <path
          d={`M${middle} ${keel}V${keel - scale(view.depth * 1.25)}`}
          stroke="var(--data2)"
          strokeDasharray="7 3 2 3"
        />
      </g>
      <path d={`M${left + 3} ${surface}H${left + width - 3}`} stroke="var(--data)" strokeWidth="1.2" />
      <g textAnchor="middle">
        {captionOf(stage, width).map(({ words, className }, at) => (
          <text key={at} x={middle} y={HEIGHT + 16 + at * CAPTION_LINE} className={className}>
            {words}
          </text>
        ))}
      </g>
    </g>
  );
}
