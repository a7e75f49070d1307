import type { Figure } from '../base';
import type { EstimateInput, WorkSheet } from '../estimate';
import type { LowLikelyHigh, UprightCompartment, UprightInput, UprightOpening } from '../flooding';
import type { Project } from '../project';
import type { SheetResult } from '../sheet';
import { amountIn, isConvertible, isUnit, quantity, type Unit } from '../units';
import { highestStaying, type MeasureKey, type TakeOff } from '../vessel';
import { weightsOfWork } from './upright-weights';

/** The numbers of the take-off that the screen starts from. */
export interface TakenOff {
  readonly result: SheetResult;
  readonly takeOff: TakeOff;
}

/**
 * The input of the roll-over screen from the project and its take-off: SI doubles, ranges as they are given.
 * @param work the work sheet, for the weights that its items take off; none before there is one.
 * @returns nothing when a particular is absent: there is no hull to screen.
 */
export function uprightInput(
  project: Project,
  input: EstimateInput,
  taken: TakenOff,
  work: WorkSheet | undefined,
): UprightInput | undefined {
  const measure = (key: MeasureKey) => taken.result.number(taken.takeOff.measures[key]);
  const [length, breadth, depth, lightDraught, lightship] = [
    measure('length'),
    measure('beam'),
    measure('depth'),
    measure('draught-light'),
    measure('lightship'),
  ];
  if (
    length === undefined ||
    breadth === undefined ||
    depth === undefined ||
    lightDraught === undefined ||
    lightship === undefined
  )
    return undefined;
  const { vessel, site } = project;
  const waterplane = number(input.ship.type.quantities['waterplane-coefficient'], '1');
  const thickness = measure('opening-thickness');
  const slope = number(site.bottomSlope, '1');
  const clearance = number(site.clearanceRequired, 'm');
  const waterDepth = measure('water-depth');
  const allowedHeight =
    waterDepth === undefined || clearance === undefined ? undefined : waterDepth - clearance;
  return {
    particulars: {
      length,
      breadth,
      depth,
      lightDraught,
      ...(waterplane === undefined ? {} : { waterplaneCoefficient: waterplane }),
    },
    displacement: range(vessel.lightship, 't', lightship, DISPLACEMENT_SPREAD),
    kg: centreOfGravity(project, input, depth),
    compartments: compartments(project, length, breadth, depth, measure('compartment-count') ?? 1),
    removedWeights: work === undefined ? [] : weightsOfWork(work, depth, length),
    method: input.options['sinking-method'] === 'explosive' ? 'explosive scuttling' : 'flooding',
    site: {
      ...(waterDepth === undefined ? {} : { waterDepth }),
      ...(slope === undefined ? {} : { bottomSlope: slope }),
      ...(clearance === undefined ? {} : { permitClearance: clearance }),
      highestPoint: highestStaying(depth, input.options['topside-extent'], allowedHeight),
    },
    facts: {
      afloatUpright: vessel.observedList === undefined || Number(vessel.observedList.value) === 0,
      ...(vessel.rollPeriod === undefined ? {} : { rollPeriod: Number(vessel.rollPeriod.value) }),
    },
    ...(thickness === undefined ? {} : { plateThickness: thickness }),
  };
}

/** How far a lightship without a range of its own may be off: an old booklet, changes since (judgement). */
const DISPLACEMENT_SPREAD = 0.07;
/** How far a height of the centre of gravity without a range may be off (judgement). */
const KG_SPREAD = 0.05;

function number(figure: Figure | undefined, unit: Unit): number | undefined {
  if (figure === undefined || !isUnit(figure.unit) || !isConvertible(figure.unit, unit)) return undefined;
  return amountIn(quantity(figure.value, figure.unit), unit);
}

function range(figure: Figure | undefined, unit: Unit, likely: number, spread: number): LowLikelyHigh {
  const at = (text: string | undefined, otherwise: number) =>
    text === undefined || figure === undefined
      ? otherwise
      : (number({ ...figure, value: text }, unit) ?? otherwise);
  return {
    low: at(figure?.low, likely * (1 - spread)),
    likely,
    high: at(figure?.high, likely * (1 + spread)),
  };
}

/** The height of the centre of gravity: as measured, from the weight list, or assumed by the hull type. */
function centreOfGravity(project: Project, input: EstimateInput, depth: number): UprightInput['kg'] {
  const { kg, weights } = project.vessel;
  const measured = number(kg, 'm');
  if (kg !== undefined && measured !== undefined)
    return {
      ...range(kg, 'm', measured, KG_SPREAD),
      basis: kg.basis === 'surveyed' ? 'inclined' : 'assumed',
    };
  if (weights.length > 0) {
    const rows = weights.map(weight => ({
      mass: number(weight.mass, 't') ?? 0,
      vcg: number(weight.vcg, 'm') ?? 0,
    }));
    const mass = rows.reduce((sum, row) => sum + row.mass, 0);
    const likely = rows.reduce((sum, row) => sum + row.mass * row.vcg, 0) / mass;
    return { low: likely * (1 - KG_SPREAD), likely, high: likely * (1 + KG_SPREAD), basis: 'weight list' };
  }
  const share = input.ship.type.quantities['kg-over-depth'];
  const likely = (number(share, '1') ?? 0.65) * depth;
  const ends = range(share, '1', likely / depth, KG_SPREAD);
  return { low: ends.low * depth, likely, high: ends.high * depth, basis: 'assumed' };
}

/** The compartments of the document, else as many equal ones as the hull type has; full width, to be flooded. */
function compartments(
  project: Project,
  length: number,
  breadth: number,
  depth: number,
  count: number,
): UprightCompartment[] {
  const given = project.vessel.compartments;
  if (given.length > 0) return given.map(compartment => documentCompartment(compartment, breadth));
  return Array.from({ length: Math.max(1, Math.round(count)) }, (_, i) => ({
    id: `compartment-${i + 1}`,
    title: `Compartment ${i + 1}`,
    x0: (length * i) / count,
    x1: (length * (i + 1)) / count,
    y0: -breadth / 2,
    y1: breadth / 2,
    z0: 0,
    z1: depth,
    permeability: 0.9,
    openings: [],
    vents: [],
    connections: [],
    floods: true,
  }));
}

function documentCompartment(
  row: Project['vessel']['compartments'][number],
  breadth: number,
): UprightCompartment {
  const metres = (figure: Figure | undefined, otherwise: number) => number(figure, 'm') ?? otherwise;
  return {
    id: row.id,
    title: row.title,
    x0: metres(row.from, 0),
    x1: metres(row.to, 0),
    y0: metres(row.inner, -breadth / 2),
    y1: metres(row.outer, breadth / 2),
    z0: metres(row.bottom, 0),
    z1: metres(row.top, 0),
    permeability: number(row.permeability, '1') ?? 0.9,
    openings: row.openings.flatMap(openings),
    vents: row.vents.map(vent => ({ area: number(vent.area, 'm2') ?? 0, z: metres(vent.centre, 0) })),
    connections: row.connections.map(way => ({
      to: way.to,
      area: number(way.area, 'm2') ?? 0,
      z: metres(way.centre, 0),
      kind: way.kind,
    })),
    floods: true,
  };
}

function openings(row: Project['vessel']['compartments'][number]['openings'][number]): UprightOpening[] {
  const base = {
    area: number(row.area, 'm2') ?? 0,
    z: number(row.centre, 'm') ?? 0,
    height: number(row.height, 'm') ?? 0,
    count: row.count,
  };
  if (row.side === 'both')
    return [
      { ...base, id: `${row.id}-p`, side: 'port' },
      { ...base, id: `${row.id}-s`, side: 'starboard' },
    ];
  return [{ ...base, id: row.id, side: row.side }];
}
