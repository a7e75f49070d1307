import { SEA_WATER, uprightDraught, wet, dry, UPRIGHT } from '../../stability';
import { SHARP_EDGE } from '../hydraulics/orifice';
import { SEA, type FloodableShip, type Link, type Point, type Room } from '../simulate/ship';
import { centreAfter, massAfter, type ResolvedShip } from './resolved';
import { isPaired, SHAPE, sizedOpeningHeight } from './sizing';
import type { UprightCompartment, UprightConnection, UprightOpening, UprightSizing } from './types';

const WAY_HEIGHT: Record<UprightConnection['kind'], number> = { door: 2, corridor: 2, cut: 0.8 };

function middle(a0: number, a1: number): number {
  return (a0 + a1) / 2;
}

function seaLink(
  room: number,
  c: UprightCompartment,
  o: Omit<UprightOpening, 'id'>,
  share: number,
  id: string,
): Link {
  const y = { port: c.y0, starboard: c.y1, bottom: middle(c.y0, c.y1), deck: middle(c.y0, c.y1) }[o.side];
  return {
    id,
    a: SEA,
    b: room,
    x: middle(c.x0, c.x1),
    y,
    z: o.z,
    height: o.side === 'bottom' || o.side === 'deck' ? 0 : o.height,
    area: o.area * o.count * share,
    discharge: SHARP_EDGE,
    isVent: false,
  };
}

/** Sized openings of a compartment that has none of its own, in pairs where it reaches both sides. */
function sizedOpenings(
  c: UprightCompartment,
  sizing: UprightSizing | undefined,
): Omit<UprightOpening, 'id'>[] {
  if (!sizing || sizing.openings === 0) return [];
  const height = Math.min(Math.sqrt(sizing.openingArea * SHAPE), c.z1 - c.z0);
  const standard = { area: sizing.openingArea, z: sizedOpeningHeight(c), height };
  if (isPaired(c)) {
    const count = sizing.openings / 2;
    return [
      { ...standard, side: 'port', count },
      { ...standard, side: 'starboard', count },
    ];
  }
  return [{ ...standard, side: middle(c.y0, c.y1) < 0 ? 'port' : 'starboard', count: sizing.openings }];
}

function ventLinks(room: number, c: UprightCompartment, sized: number | undefined): Link[] {
  const vents = sized === undefined ? c.vents : [{ area: sized, z: c.z1 }];
  return vents.map((vent, i) => ({
    id: `${c.id}-vent-${i}`,
    a: SEA,
    b: room,
    x: middle(c.x0, c.x1),
    y: middle(c.y0, c.y1),
    z: vent.z,
    height: 0,
    area: vent.area,
    discharge: SHARP_EDGE,
    isVent: true,
  }));
}

function wayBetween(a: UprightCompartment, b: UprightCompartment, way: UprightConnection): Point {
  const x = middle(Math.max(a.x0, b.x0), Math.min(a.x1, b.x1));
  return { x, y: middle(Math.max(a.y0, b.y0), Math.min(a.y1, b.y1)), z: way.z };
}

function wayLinks(compartments: readonly UprightCompartment[]): Link[] {
  const seen = new Set<string>();
  return compartments.flatMap((from, a) =>
    from.connections.flatMap((way): Link[] => {
      const b = compartments.findIndex(({ id }) => id === way.to);
      const to = compartments[b];
      const key = `${Math.min(a, b)}-${Math.max(a, b)}-${way.kind}-${way.z}-${way.area}`;
      if (!to || a === b || way.closed === true || seen.has(key)) return [];
      seen.add(key);
      const height = Math.min(way.height ?? WAY_HEIGHT[way.kind], from.z1 - from.z0);
      const at = wayBetween(from, to, way);
      return [{ id: key, a, b, ...at, height, area: way.area, discharge: SHARP_EDGE, isVent: false }];
    }),
  );
}

function seaLinks(ship: ResolvedShip, sizing: readonly UprightSizing[], mismatch: number): Link[] {
  return ship.spaces.flatMap(({ compartment: c }, room) => {
    const size = sizing.find(({ compartment }) => compartment === c.id);
    const isSized = c.openings.length === 0 && c.floods === true;
    const openings = isSized ? sizedOpenings(c, size) : c.openings;
    const links = openings.map((o, i) => {
      const isSlow = o.side === 'port' || (o.side !== 'starboard' && middle(c.y0, c.y1) < 0);
      return seaLink(room, c, o, isSlow ? 1 - mismatch : 1, `${c.id}-opening-${i}`);
    });
    return [...links, ...ventLinks(room, c, isSized ? size?.ventArea : undefined)];
  });
}

/** Where the light weight acts: along the ship where it leaves her on an even keel before weights come off. */
function centreOf(ship: ResolvedShip, displacement: number, kg: number): Point {
  const sums = dry();
  const volume = displacement / SEA_WATER;
  wet(ship.hull, UPRIGHT, uprightDraught(ship.hull, volume), sums);
  let mass = displacement;
  let x = sums.mx / sums.volume;
  for (const weight of ship.input.removedWeights) {
    const at = weight.lcg ?? x;
    x = (mass * x - weight.mass * at) / (mass - weight.mass);
    mass -= weight.mass;
  }
  const { kg: z, tcg: y } = centreAfter(ship.input, displacement, kg);
  return { x, y, z };
}

/** A ship as the simulation wants it, with the port openings smaller by the mismatch. */
export function shipToSimulate(
  ship: ResolvedShip,
  sizing: readonly UprightSizing[],
  at: { displacement: number; kg: number; mismatch: number },
): FloodableShip {
  const { length, breadth, depth } = ship.input.particulars;
  const rooms = ship.spaces.map(({ compartment, solid }): Room => ({
    id: compartment.id,
    solid,
    floor: compartment.z0,
    top: compartment.z1,
  }));
  return {
    hull: ship.hull,
    length,
    breadth,
    depth,
    lightVolume: massAfter(ship.input, at.displacement) / SEA_WATER,
    centre: centreOf(ship, at.displacement, at.kg),
    rooms,
    links: [...seaLinks(ship, sizing, at.mismatch), ...wayLinks(ship.spaces.map(s => s.compartment))],
  };
}
