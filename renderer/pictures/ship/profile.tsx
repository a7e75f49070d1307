import { useId } from 'react';
import {
  profileOutline,
  type DrawnCompartment,
  type DrawnOpening,
  type DrawnPart,
  type ShipPicture,
} from '../../../core/views';
import { change, useWindow } from '../../state/store';
import { Patterns } from '../patterns';
import { clearanceAt, saidIn, SaidWords } from './said';
import { outlinePath, shipScales, type ShipScales } from './scales';

const FILLS = ['var(--paper)', 'var(--wash)', 'var(--data3)'] as const;

interface ProfileProps {
  readonly picture: ShipPicture;
  readonly width: number;
  readonly tallest: number;
}

/** The ship afloat and at rest on the seabed, on one scale. */
export function Profile({ picture, width, tallest }: ProfileProps) {
  const id = useId();
  const scales = shipScales(picture, width, tallest);
  const keel = -picture.draught;
  const hull = outlinePath(profileOutline(picture.length, picture.depth), scales, keel);
  const words = saidIn(picture, scales);
  const height = scales.bottom + 28 + words.height;
  return (
    <svg width={width} height={height} role="img" aria-label={picture.words} className="picture">
      <Patterns id={id} />
      <rect
        x={scales.left}
        y={scales.y(0)}
        width={scales.right - scales.left}
        height={scales.bottom - scales.y(0)}
        fill="var(--water)"
      />
      <rect
        x={scales.left}
        y={scales.bottom}
        width={scales.right - scales.left}
        height={28}
        fill="var(--bed)"
      />
      <rect
        x={scales.left}
        y={scales.bottom}
        width={scales.right - scales.left}
        height={28}
        fill={`url(#${id}-bed)`}
      />
      <path
        d={`M${scales.left} ${scales.bottom}H${scales.right}`}
        stroke="var(--bed-ink)"
        strokeWidth="1.5"
      />
      <AtRest picture={picture} scales={scales} />
      <path d={`M${scales.left} ${scales.y(0)}H${scales.right}`} stroke="var(--data)" strokeWidth="1.2" />
      {picture.parts.map(part => (
        <Part key={part.id} part={part} scales={scales} keel={keel} hatch={`url(#${id}-cut)`} />
      ))}
      <clipPath id={`${id}-hull`}>
        <path d={hull} />
      </clipPath>
      <path d={hull} fill="var(--paper)" />
      <g clipPath={`url(#${id}-hull)`}>
        {picture.compartments.map(one => (
          <Compartment key={one.id} one={one} scales={scales} keel={keel} />
        ))}
      </g>
      <path d={hull} fill="none" stroke="var(--data)" strokeWidth="2" />
      {picture.openings.map(one => (
        <Opening key={one.id} one={one} scales={scales} keel={keel} />
      ))}
      <Numbers picture={picture} scales={scales} />
      <Chosen picture={picture} scales={scales} keel={keel} />
      <PartLabels picture={picture} scales={scales} keel={keel} />
      <Axis picture={picture} scales={scales} />
      <Clearance picture={picture} scales={scales} />
      <SaidWords picture={picture} said={words.said} />
    </svg>
  );
}

interface At {
  readonly scales: ShipScales;
  readonly keel: number;
}

function Part({ part, scales, keel, hatch }: At & { part: DrawnPart; hatch: string }) {
  const y = scales.y(keel + part.top);
  const box = {
    x: scales.x(part.from),
    y,
    width: scales.x(part.to) - scales.x(part.from),
    height: scales.y(keel + part.bottom) - y,
  };
  if (part.stays) return <rect {...box} fill="var(--paper)" stroke="var(--data)" strokeWidth="1.5" />;
  return (
    <>
      <rect {...box} fill={hatch} />
      <rect {...box} fill="none" stroke="var(--text3)" strokeWidth="1.2" strokeDasharray="3 2.5" />
    </>
  );
}

function Compartment({ one, scales, keel }: At & { one: DrawnCompartment }) {
  const x = scales.x(one.from);
  const y = scales.y(keel + one.top);
  return (
    <rect
      x={x}
      y={y}
      width={scales.x(one.to) - x}
      height={scales.y(keel + one.bottom) - y}
      fill={one.step === undefined ? 'var(--paper)' : FILLS[one.step]}
      stroke="var(--data)"
      strokeWidth="1"
      className="choosable"
      onClick={() => change({ chosen: one.id })}
    >
      <title>{one.title}</title>
    </rect>
  );
}

function Opening({ one, scales, keel }: At & { one: DrawnOpening }) {
  const side = one.size * scales.perMetre;
  return (
    <rect
      x={scales.x(one.at) - side / 2}
      y={scales.y(keel + one.height) - side / 2}
      width={side}
      height={side}
      fill="var(--paper)"
      stroke="var(--text)"
      strokeWidth="1.5"
      pointerEvents="none"
    />
  );
}

/** The number of each compartment, under the keel. */
function Numbers({ picture, scales }: { picture: ShipPicture; scales: ShipScales }) {
  return (
    <g className="strong-text" textAnchor="middle">
      {picture.compartments.map(one => (
        <text
          key={one.id}
          x={(scales.x(one.from) + scales.x(one.to)) / 2}
          y={scales.y(-picture.draught) + 16}
        >
          {one.number}
        </text>
      ))}
    </g>
  );
}

function Chosen({ picture, scales, keel }: At & { picture: ShipPicture }) {
  const chosen = useWindow(window => window.chosen);
  const one = picture.compartments.find(compartment => compartment.id === chosen);
  if (one === undefined) return null;
  const y = scales.y(keel + one.top);
  return (
    <rect
      x={scales.x(one.from)}
      y={y}
      width={scales.x(one.to) - scales.x(one.from)}
      height={scales.y(keel + one.bottom) - y}
      fill="none"
      stroke="var(--accent)"
      strokeWidth="2"
    />
  );
}

function PartLabels({ picture, scales, keel }: At & { picture: ShipPicture }) {
  return (
    <g className="mark-text">
      {picture.parts.map(part => (
        <text
          key={part.id}
          x={(scales.x(part.from) + scales.x(part.to)) / 2}
          y={scales.y(keel + part.top) - 6}
          textAnchor="middle"
        >
          {part.label}
        </text>
      ))}
    </g>
  );
}

function Axis({ picture, scales }: { picture: ShipPicture; scales: ShipScales }) {
  return (
    <g className="axis-text" textAnchor="end">
      <path d={`M${scales.left} ${scales.top}V${scales.bottom}`} stroke="var(--rule2)" />
      <text x={scales.left - 9} y={scales.top - 8}>
        {picture.axisUnit}
      </text>
      {picture.axis.map(tick => (
        <g key={tick.text + String(tick.at)} className={tick.strong === true ? 'strong-text' : undefined}>
          <path d={`M${scales.left - 5} ${scales.y(tick.at)}H${scales.left}`} stroke="var(--rule2)" />
          <text x={scales.left - 9} y={scales.y(tick.at) + 4.5}>
            {tick.text}
          </text>
        </g>
      ))}
    </g>
  );
}

/** The ship at rest: outline only, what is cut away is gone. */
function AtRest({ picture, scales }: { picture: ShipPicture; scales: ShipScales }) {
  const keel = -picture.waterDepth;
  const hull = outlinePath(profileOutline(picture.length, picture.depth), scales, keel);
  return (
    <g fill="none" stroke="var(--data2)" strokeWidth="1.3">
      <path d={hull} />
      {picture.parts
        .filter(part => part.stays)
        .map(part => (
          <rect
            key={part.id}
            x={scales.x(part.from)}
            y={scales.y(keel + part.top)}
            width={scales.x(part.to) - scales.x(part.from)}
            height={scales.y(keel + part.bottom) - scales.y(keel + part.top)}
          />
        ))}
    </g>
  );
}

/** The one dimension of the picture: clear water over the highest point that stays. */
function Clearance({ picture, scales }: { picture: ShipPicture; scales: ShipScales }) {
  const top = scales.y(picture.highestStaying - picture.waterDepth);
  const x = scales.x(clearanceAt(picture));
  const ink = picture.isTooLittle ? 'var(--accent)' : 'var(--text)';
  return (
    <g>
      <path d={`M${x} ${scales.y(0)}V${top}`} stroke={ink} strokeWidth="1.2" />
      <path
        d={`M${x - 5} ${top - 8}L${x} ${top}L${x + 5} ${top - 8}`}
        stroke={ink}
        fill="none"
        strokeWidth="1.2"
      />
      <path d={`M${x - 40} ${top}H${x + 6}`} stroke={ink} strokeDasharray="2 2" />
    </g>
  );
}
