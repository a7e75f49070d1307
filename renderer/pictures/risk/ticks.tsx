import { textWidth } from '../text-width';

interface TicksProps {
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly x: (at: number) => number;
  readonly bottom: number;
  readonly width: number;
}

/** The ticks of the lower axis; a name that would run into the one before it or over the edge is left out. */
export function Ticks({ ticks, x, bottom, width }: TicksProps) {
  let end = 0;
  return (
    <g className="axis-text" textAnchor="middle">
      {ticks.map(tick => {
        const half = textWidth(tick.text) / 2;
        const at = Math.min(x(tick.at), width - half - 1);
        const isShown = at - half > end + 8;
        if (isShown) end = at + half;
        return (
          <g key={tick.at}>
            <path d={`M${x(tick.at)} ${bottom}v5`} stroke="var(--rule2)" />
            {isShown ? (
              <text x={at} y={bottom + 19}>
                {tick.text}
              </text>
            ) : null}
          </g>
        );
      })}
    </g>
  );
}
