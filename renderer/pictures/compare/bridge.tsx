import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { spoken } from '../../parts/figure';
import type { BridgeRows } from '../../../core/views';
import { Patterns } from '../patterns';
import { lines, textWidth } from '../text-width';

const ROW = 26;

/** Steps from one total to another: full bars add, hatched bars save, thin risers join them, totals are ticks. */
export function BridgePicture({ bridge, width }: { bridge: BridgeRows; width: number }) {
  const id = useId();
  const names = Math.min(width * 0.46, Math.max(...bridge.bars.map(bar => textWidth(bar.title))) + 16);
  const amounts = Math.max(...bridge.bars.map(bar => textWidth(bar.text))) + 16;
  const x = scaleLinear([0, 1], [names, Math.max(names + 40, width - amounts)]);
  const rows = bridge.bars.map(bar => lines(bar.title, names - 12));
  const tops = rows.reduce<number[]>(
    (all, row) => [...all, (all.at(-1) ?? 0) + ROW + (row.length - 1) * 17],
    [0],
  );
  const height = tops.at(-1) ?? 0;
  return (
    <svg width={width} height={height} className="picture" role="img" aria-label={spoken(bridge.words)}>
      <Patterns id={id} />
      {bridge.bars.map((bar, at) => {
        const [top, bottom] = [tops[at] ?? 0, tops[at + 1] ?? height];
        const middle = (top + bottom) / 2;
        const [from, to] = [x(Math.min(bar.from, bar.to)), x(Math.max(bar.from, bar.to))];
        const weight = bar.kind === 'total' ? 'strong-text' : undefined;
        return (
          <g key={bar.id}>
            <path d={`M0 ${bottom - 0.5}H${width}`} stroke="var(--rule)" />
            {(rows[at] ?? []).map((row, line) => (
              <text key={row} className={weight} x="0" y={top + 18 + line * 17}>
                {row}
              </text>
            ))}
            {bar.kind === 'total' ? (
              <path d={`M${to} ${middle - 9}V${middle + 9}`} stroke="var(--text)" strokeWidth="2.5" />
            ) : (
              <rect
                x={from}
                y={middle - 5.5}
                width={Math.max(1, to - from)}
                height="11"
                fill={bar.kind === 'adds' ? 'var(--data)' : `url(#${id}-saving)`}
                stroke="var(--data)"
              />
            )}
            {at + 1 < bridge.bars.length ? (
              <path d={`M${x(bar.to)} ${middle + 5.5}V${bottom + ROW / 2 - 5.5}`} stroke="var(--rule2)" />
            ) : null}
            <text className={weight} x={width} y={middle + 5} textAnchor="end">
              {bar.text}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
