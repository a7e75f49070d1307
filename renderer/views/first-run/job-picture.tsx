import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { profileOutline, type Point } from '../../../core/views';
import { useWidth } from '../../pictures/use-width';

/** An invented ship, 300 ft long, in metres: hull 91 by 8, with what stands on it. */
const LENGTH = 91;
const DEPTH = 8;
const DRAUGHT = 3.6;
const WATER = 27;
const TALLEST = 22;
const HOUSE = [
  { from: 20, to: 50, bottom: 8, top: 10.2, stays: true },
  { from: 24, to: 46, bottom: 10.2, top: 12.4, stays: true },
  { from: 30, to: 44, bottom: 12.4, top: 16, stays: false },
  { from: 25, to: 29.5, bottom: 12.4, top: 18, stays: false },
  { from: 36.5, to: 37.6, bottom: 16, top: 22, stays: false },
  { from: 60, to: 61, bottom: 8, top: 17.5, stays: false },
];

/** The job as one picture to scale: laid up, made ready and towed, upright on the bottom. */
export function JobPicture() {
  const { ref, width } = useWidth<HTMLDivElement>(1048);
  const perMetre = Math.min(3.3, width / (LENGTH * 3.42));
  const ship = LENGTH * perMetre;
  const y = scaleLinear([TALLEST - DRAUGHT, -WATER], [4, 4 + (TALLEST - DRAUGHT + WATER) * perMetre]);
  const bed = y(-WATER);
  const places = [0, (width - ship) / 2, width - ship - 8];
  return (
    <div ref={ref} className="job-picture">
      <svg
        width={width}
        height={bed + 18}
        className="picture"
        role="img"
        aria-label="A ship laid up; the same ship with its topside cut away, ready for the tow; the ship upright on the seabed."
      >
        <defs>
          <pattern id="job-bed" width="9" height="9" patternUnits="userSpaceOnUse">
            <circle cx="2" cy="2.5" r="0.8" fill="var(--bed-ink)" />
            <circle cx="6.5" cy="7" r="0.8" fill="var(--bed-ink)" />
          </pattern>
        </defs>
        <rect x="0" y={y(0)} width={width} height={bed - y(0)} fill="var(--water)" />
        <rect x="0" y={bed} width={width} height="18" fill="var(--bed)" />
        <rect x="0" y={bed} width={width} height="18" fill="url(#job-bed)" />
        <path d={`M0 ${bed}H${width}`} stroke="var(--bed-ink)" strokeWidth="1.5" />
        <path d={`M0 ${y(0)}H${width}`} stroke="var(--data)" strokeWidth="1.3" />
        <Ship left={places[0] ?? 0} perMetre={perMetre} y={y} keel={-DRAUGHT} cut="none" />
        <Ship left={places[1] ?? 0} perMetre={perMetre} y={y} keel={-DRAUGHT} cut="dashed" />
        <Ship left={places[2] ?? 0} perMetre={perMetre} y={y} keel={-WATER} cut="gone" />
        <text x={(places[0] ?? 0) + 2} y={y(-DRAUGHT) + 24}>
          Laid up
        </text>
        <text x={places[1] ?? 0} y={y(-DRAUGHT) + 24}>
          Made ready and towed
        </text>
        <text x={places[2] ?? 0} y={y(-DRAUGHT) + 24}>
          Upright on the bottom
        </text>
      </svg>
    </div>
  );
}

interface ShipProps {
  readonly left: number;
  readonly perMetre: number;
  readonly y: (up: number) => number;
  readonly keel: number;
  readonly cut: 'none' | 'dashed' | 'gone';
}

function Ship({ left, perMetre, y, keel, cut }: ShipProps) {
  const x = (along: number) => left + along * perMetre;
  const hull =
    line<Point>()
      .x(point => x(point.along))
      .y(point => y(keel + point.up))([...profileOutline(LENGTH, DEPTH)]) ?? '';
  return (
    <g stroke="var(--data)" fill="var(--paper)">
      {HOUSE.filter(part => part.stays || cut !== 'gone').map(part => {
        const isCut = !part.stays && cut === 'dashed';
        return (
          <rect
            key={part.from}
            x={x(part.from)}
            y={y(keel + part.top)}
            width={x(part.to) - x(part.from)}
            height={y(keel + part.bottom) - y(keel + part.top)}
            fill={isCut ? 'none' : 'var(--paper)'}
            stroke={isCut ? 'var(--text3)' : 'var(--data)'}
            strokeWidth={isCut ? 1.1 : 1.4}
            strokeDasharray={isCut ? '3 2.5' : undefined}
          />
        );
      })}
      <path d={`${hull}Z`} strokeWidth="2" />
    </g>
  );
}
