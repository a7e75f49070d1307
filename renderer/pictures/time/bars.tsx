import { textWidth } from '../text-width';
import type { PlacedBar, TimeLayout } from './layout';
import { MIDDLE } from './layout';

interface BarProps {
  readonly placed: PlacedBar;
  readonly isChosen: boolean;
  readonly isReachable: boolean;
  readonly onChoose: () => void;
}

/** An activity: its name over its bar. The chain that holds the finish has the heavier outline; waiting is thin. */
export function Bar({ placed, isChosen, isReachable, onChoose }: BarProps) {
  const { bar, x, y, width, nameX } = placed;
  const middle = y + MIDDLE;
  return (
    <g
      role="button"
      tabIndex={isReachable ? 0 : -1}
      aria-label={bar.words}
      aria-pressed={isChosen}
      data-bar={bar.id}
      data-subject={bar.id}
      data-why={bar.why}
      className="time-bar"
      onClick={onChoose}
    >
      <rect x={Math.min(x, nameX)} y={y - 2} width={Math.max(width, 24)} height={24} fill="transparent" />
      <Shape bar={placed} middle={middle} />
      {isChosen ? (
        <rect
          x={x - 3}
          y={middle - 8}
          width={width + 6}
          height={16}
          fill="none"
          stroke="var(--accent)"
          strokeWidth="2"
        />
      ) : (
        <text x={nameX} y={middle + 4.5} className="bar-name">
          {bar.title}
        </text>
      )}
    </g>
  );
}

function Shape({ bar, middle }: { bar: PlacedBar; middle: number }) {
  const { x, width } = bar;
  if (bar.bar.kind === 'waiting') {
    return (
      <path
        d={`M${x} ${middle}H${x + width}M${x} ${middle - 4}V${middle + 4}M${x + width} ${middle - 4}V${middle + 4}`}
        stroke="var(--data2)"
        strokeWidth="2.5"
        strokeDasharray="6 3"
      />
    );
  }
  const isHeld = bar.bar.kind === 'held';
  return isHeld ? (
    <rect
      x={x + 1}
      y={middle - 5}
      width={Math.max(width - 2, 1)}
      height={10}
      fill="var(--data3)"
      stroke="var(--text)"
      strokeWidth="2.5"
    />
  ) : (
    <rect x={x} y={middle - 4} width={width} height={8} fill="var(--data3)" stroke="var(--data2)" />
  );
}

/** Bottom of the mark of the earlier plan: between the names of two sub-lanes. */
const UNDER_NAMES = 20;

/** The earlier plan: a bracket from its start to its finish, under the names, as far as the axis reaches. */
export function Earlier({ placed, layout }: { placed: PlacedBar; layout: TimeLayout }) {
  const { bar, y } = placed;
  if (bar.earlier === undefined) return null;
  const [from, to] = [Math.max(layout.left, layout.x(bar.earlier.from)), layout.x(bar.earlier.to)];
  if (to <= layout.left) return null;
  const bottom = y + UNDER_NAMES;
  return (
    <path
      d={`M${from} ${bottom - 3}V${bottom}H${Math.min(to, layout.right)}V${bottom - 3}`}
      data-earlier={bar.id}
      fill="none"
      stroke="var(--text)"
    />
  );
}

/** What holds the chosen activity: a line back to the day it could have started, an arrow from what holds it, and words. */
export function Holding({ placed, layout }: { placed: PlacedBar; layout: TimeLayout }) {
  const { bar, x, y, width } = placed;
  const middle = y + MIDDLE;
  const could = layout.x(bar.couldStart);
  const holder = layout.bars.find(other => other.bar.id === bar.heldBy);
  const isNearEdge = x + width > layout.right - 300;
  const textX = isNearEdge ? x - 8 : x + width + 8;
  const lead = `${bar.title}. ${bar.couldStartWords}`;
  const wide = Math.max(1.1 * textWidth(lead), textWidth(bar.holds));
  return (
    <g pointerEvents="none">
      {could < x - 4 ? (
        <path
          d={`M${could} ${middle - 5}V${middle + 5}M${could} ${middle}H${x - 3}`}
          stroke="var(--accent)"
          strokeWidth="1.5"
          strokeDasharray="3 3"
        />
      ) : null}
      {holder === undefined ? null : <Arrow from={holder} to={placed} />}
      <rect
        x={isNearEdge ? textX - wide - 4 : textX - 4}
        y={middle - 20}
        width={wide + 8}
        height={36}
        fill="var(--paper)"
      />
      <g className="accent-text" textAnchor={isNearEdge ? 'end' : 'start'}>
        <text x={textX} y={middle - 6} fontWeight="600">
          {lead}
        </text>
        <text x={textX} y={middle + 10}>
          {bar.holds}
        </text>
      </g>
    </g>
  );
}

function Arrow({ from, to }: { from: PlacedBar; to: PlacedBar }) {
  const start = from.y + MIDDLE;
  const isBelow = to.y > from.y;
  const end = to.y + MIDDLE + (isBelow ? -9 : 9);
  const x = Math.max(from.x + from.width + 5, to.x + 4);
  const tip = isBelow ? -7 : 7;
  if (from.y === to.y) return null;
  return (
    <path
      d={`M${from.x + from.width} ${start}H${x}V${end}M${x - 4} ${end + tip}L${x} ${end}L${x + 4} ${end + tip}`}
      fill="none"
      stroke="var(--accent)"
      strokeWidth="1.5"
    />
  );
}
