import type { ShipPicture } from '../../../core/views';
import { textWidth } from '../text-width';
import type { ShipScales } from './scales';

/** Words of the picture where they stand: left end and base line, in drawing units. */
interface Said {
  readonly id: 'afloat' | 'clearance' | 'at-rest';
  readonly text: string;
  /** The part of the words that is told in strong type, from their beginning. */
  readonly strong: number;
  readonly x: number;
  readonly y: number;
}

/** Height of a line of the words, and the room it needs to the next. */
const LINE = 17;

/** Where the clearance is drawn: at a bulkhead forward of midships, else there where one could be. */
export function clearanceAt({ compartments, length }: ShipPicture): number {
  const bulkheads = compartments.map(one => one.to).filter(at => at > length * 0.55 && at < length * 0.8);
  return bulkheads[0] ?? length * 0.62;
}

/** The words of the picture beside what they speak of; all of them under it where one would leave it or meet another. */
export function saidIn(picture: ShipPicture, scales: ShipScales): { said: readonly Said[]; height: number } {
  const { x, y } = scales;
  const from = y(-picture.draught);
  const top = y(picture.highestStaying - picture.waterDepth);
  const clearance = `${picture.clearance}, ${picture.required}`;
  const beside: readonly Said[] = [
    { id: 'afloat', text: picture.afloat, strong: 0, x: x(picture.length * 0.14), y: from + 34 },
    {
      id: 'clearance',
      text: clearance,
      strong: picture.clearance.length,
      x: x(clearanceAt(picture)) + 8,
      y: Math.max(from + 30, (from + top) / 2 + 18),
    },
    {
      id: 'at-rest',
      text: picture.atRest,
      strong: 0,
      x: x(picture.length * 0.6),
      y: y(picture.depth * 0.42 - picture.waterDepth),
    },
  ];
  if (isRoom(beside, scales.right)) return { said: beside, height: 0 };
  const below = scales.bottom + 28;
  return {
    said: beside.map((one, at) => ({ ...one, x: scales.left, y: below + (at + 1) * LINE })),
    height: beside.length * LINE + 6,
  };
}

function isRoom(said: readonly Said[], right: number): boolean {
  const boxes = said.map(one => ({ ...one, end: one.x + textWidth(one.text) + 6 }));
  return boxes.every(
    (one, at) =>
      one.end <= right &&
      boxes
        .slice(at + 1)
        .every(other => one.end <= other.x || other.end <= one.x || Math.abs(one.y - other.y) >= LINE),
  );
}

/** The words of the picture: afloat, clear water, at rest. */
export function SaidWords({ picture, said }: { picture: ShipPicture; said: readonly Said[] }) {
  return said.map(({ id, text, strong, x, y }) => (
    <text
      key={id}
      x={x}
      y={y}
      className="mark-text"
      fill={id === 'clearance' && picture.isTooLittle ? 'var(--accent)' : 'var(--text)'}
    >
      {strong === 0 ? null : <tspan className="strong-text">{text.slice(0, strong)}</tspan>}
      {text.slice(strong)}
    </text>
  ));
}
