import type { UprightCompartment, UprightConnection, UprightOpening, UprightVent } from '../flooding';
import type { Project } from '../project';
import { numberIn } from './upright-figures';

type Row = Project['vessel']['compartments'][number];

/** Permeability of a space of which nothing else is said. Judgement: between machinery and an empty space. */
const PERMEABILITY = 0.9;
/** Height over its own depth at which the openings of a space kept until late are cut. Judgement. */
export const LATE_ENTRY = 0.8;

/**
 * The compartments of the document, else as many equal ones as the hull type has; full width, to be flooded.
 * @returns nothing when an extent of the document cannot be read: its finding says which.
 */
export function compartmentsOf(
  project: Project,
  length: number,
  breadth: number,
  depth: number,
  count: number,
): UprightCompartment[] | undefined {
  const given = project.vessel.compartments;
  if (given.length === 0) return equalCompartments(length, breadth, depth, count);
  const read = given.flatMap(row => compartment(row, breadth) ?? []);
  return read.length < given.length ? undefined : read;
}

/** Ids of the equal compartments that stand in for those that nobody has entered. */
const EQUAL = 'compartment-';
const equalTitle = (number: string) => `Compartment ${number}`;

/** The title of a compartment of the screen: the document’s, else that of the equal one. */
export function compartmentTitle({ vessel }: Project, id: string): string {
  const given = vessel.compartments.find(one => one.id === id)?.title;
  return given ?? (id.startsWith(EQUAL) ? equalTitle(id.slice(EQUAL.length)) : id);
}

function equalCompartments(
  length: number,
  breadth: number,
  depth: number,
  count: number,
): UprightCompartment[] {
  return Array.from({ length: Math.max(1, Math.round(count)) }, (_, i) => ({
    id: `${EQUAL}${i + 1}`,
    title: equalTitle(String(i + 1)),
    x0: (length * i) / count,
    x1: (length * (i + 1)) / count,
    y0: -breadth / 2,
    y1: breadth / 2,
    z0: 0,
    z1: depth,
    permeability: PERMEABILITY,
    openings: [],
    vents: [],
    connections: [],
    floods: true,
  }));
}

function compartment(row: Row, breadth: number): UprightCompartment | undefined {
  const [x0, x1, z0, z1] = [row.from, row.to, row.bottom, row.top].map(figure => numberIn(figure, 'm'));
  const permeability = numberIn(row.permeability, '1');
  const y0 = row.inner === undefined ? -breadth / 2 : numberIn(row.inner, 'm');
  const y1 = row.outer === undefined ? breadth / 2 : numberIn(row.outer, 'm');
  if (x0 === undefined || x1 === undefined || z0 === undefined || z1 === undefined) return undefined;
  if (permeability === undefined || y0 === undefined || y1 === undefined) return undefined;
  return {
    id: row.id,
    title: row.title,
    ...{ x0, x1, y0, y1, z0, z1, permeability },
    openings: row.openings.flatMap(openings),
    vents: row.vents.flatMap(vent),
    connections: row.connections.flatMap(connection),
    floods: row.floods !== 'no',
    ...(row.floods === 'late' ? { entry: z0 + LATE_ENTRY * (z1 - z0) } : {}),
  };
}

function vent(row: Row['vents'][number]): UprightVent[] {
  const [area, z] = [numberIn(row.area, 'm2'), numberIn(row.centre, 'm')];
  return area === undefined || z === undefined ? [] : [{ area, z }];
}

function connection(row: Row['connections'][number]): UprightConnection[] {
  const [area, z] = [numberIn(row.area, 'm2'), numberIn(row.centre, 'm')];
  const height = numberIn(row.height, 'm');
  if (area === undefined || z === undefined) return [];
  return [
    {
      to: row.to,
      area,
      z,
      kind: row.kind,
      ...(height === undefined ? {} : { height }),
      ...(row.closed === undefined ? {} : { closed: row.closed }),
    },
  ];
}

function openings(row: Row['openings'][number]): UprightOpening[] {
  const [area, z] = [numberIn(row.area, 'm2'), numberIn(row.centre, 'm')];
  const height = numberIn(row.height, 'm');
  if (area === undefined || z === undefined || height === undefined) return [];
  const base = { area, z, height, count: row.count };
  if (row.side === 'both')
    return [
      { ...base, id: `${row.id}-p`, side: 'port' },
      { ...base, id: `${row.id}-s`, side: 'starboard' },
    ];
  return [{ ...base, id: row.id, side: row.side }];
}
