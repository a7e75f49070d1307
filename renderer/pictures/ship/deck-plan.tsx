import { useId } from 'react';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import {
  deckBreadth,
  planOutline,
  type DrawnOpening,
  type Point,
  type ShipPicture,
} from '../../../core/views';
import { change, useWindow } from '../../state/store';
import { Patterns } from '../patterns';
import { shipScales } from './scales';

const FILLS = ['var(--paper)', 'var(--wash)', 'var(--data3)'] as const;

/** The deck from above, on the scale of the profile. */
export function DeckPlan({
  picture,
  width,
  tallest,
}: {
  picture: ShipPicture;
  width: number;
  tallest: number;
}) {
  const id = useId();
  const { x, perMetre } = shipScales(picture, width, tallest);
  const half = (picture.beam * perMetre) / 2;
  const middle = half + 14;
  const y = scaleLinear([-picture.beam / 2, picture.beam / 2], [middle - half, middle + half]);
  const outline =
    line<Point>()
      .x(point => x(point.along))
      .y(point => y(point.up))([...planOutline(picture.length, picture.beam)]) ?? '';
  const chosen = useWindow(window => window.chosen);
  const edge = (one: DrawnOpening) => (picture.beam / 2) * deckBreadth(one.at / picture.length);
  return (
    <svg
      width={width}
      height={middle + half + 14}
      className="picture"
      role="img"
      aria-label={`Deck plan of the same ship. ${picture.words}`}
    >
      <Patterns id={id} />
      <clipPath id={`${id}-deck`}>
        <path d={outline} />
      </clipPath>
      <path d={outline} fill="var(--paper)" />
      <g clipPath={`url(#${id}-deck)`}>
        {picture.compartments.map(one => (
          <rect
            key={one.id}
            x={x(one.from)}
            y={middle - half}
            width={x(one.to) - x(one.from)}
            height={half * 2}
            fill={one.step === undefined ? 'var(--paper)' : FILLS[one.step]}
            stroke={one.id === chosen ? 'var(--accent)' : 'var(--data)'}
            strokeWidth={one.id === chosen ? 3 : 1}
            className="choosable"
            onClick={() => change({ chosen: one.id })}
          >
            <title>{one.title}</title>
          </rect>
        ))}
      </g>
      <path d={outline} fill="none" stroke="var(--data)" strokeWidth="2" />
      {picture.parts.map(part => (
        <rect
          key={part.id}
          x={x(part.from)}
          y={middle - half * 0.6}
          width={x(part.to) - x(part.from)}
          height={half * 1.2}
          fill={part.stays ? 'none' : `url(#${id}-cut)`}
          stroke={part.stays ? 'var(--data)' : 'var(--text3)'}
          strokeWidth="1.2"
          strokeDasharray={part.stays ? undefined : '3 2.5'}
          pointerEvents="none"
        />
      ))}
      <path
        d={`M${x(0) - 8} ${middle}H${x(picture.length) + 10}`}
        stroke="var(--data2)"
        strokeDasharray="8 3 2 3"
      />
      {picture.openings.map(one => (
        <SideGaps
          key={one.id}
          one={one}
          x={x(one.at)}
          y={y}
          edge={edge(one)}
          half={(one.size * perMetre) / 2}
        />
      ))}
      {picture.vents.flatMap(one =>
        [-1, 1].map(side => (
          <circle
            key={`${one.id}${side}`}
            cx={x(one.at)}
            cy={y(side * edge(one) * 0.82)}
            r="2.4"
            fill="var(--paper)"
            stroke="var(--text)"
            strokeWidth="1.2"
          />
        )),
      )}
      <g className="axis-text" textAnchor="end">
        <text x={x(0) - 14} y={middle - half * 0.5}>
          port
        </text>
        <text x={x(0) - 14} y={middle + half * 0.5 + 8}>
          stbd
        </text>
      </g>
    </svg>
  );
}

interface GapProps {
  readonly one: DrawnOpening;
  readonly x: number;
  readonly y: (up: number) => number;
  readonly edge: number;
  readonly half: number;
}

/** An opening in plan: a gap in the side with ticks, at its true width. */
function SideGaps({ one, x, y, edge, half }: GapProps) {
  const sides =
    one.side === 'both' ? [-1, 1] : one.side === 'port' ? [-1] : one.side === 'starboard' ? [1] : [];
  return (
    <>
      {sides.map(side => (
        <g key={side} pointerEvents="none">
          <path d={`M${x - half} ${y(side * edge)}H${x + half}`} stroke="var(--paper)" strokeWidth="4" />
          <path
            d={`M${x - half} ${y(side * edge) - 4}V${y(side * edge) + 4}M${x + half} ${y(side * edge) - 4}V${y(side * edge) + 4}`}
            stroke="var(--text)"
            strokeWidth="1.5"
          />
        </g>
      ))}
    </>
  );
}
