import {
  hullFromParticulars,
  hullFromStations,
  hullSolid,
  kgAfterRemoval,
  SEA_WATER,
  spaceSolid,
  uprightDraught,
  waterplaneCoefficient,
  type Centre,
  type FloodedSpace,
  type FloodPlan,
  type HullForm,
  type Solid,
} from '../../stability';
import { blockCoefficient } from './check-input';
import { slackMoment } from './free-surface';
import type { UprightCompartment, UprightInput } from './types';

/** Slices of the hull in the screen. */
const SLICES = 20;

/** Volume, m3, below which a compartment counts as lying outside the hull. */
const LEAST_VOLUME = 0.01;

/** A compartment with its shape inside the hull. */
export interface ResolvedSpace {
  readonly compartment: UprightCompartment;
  readonly solid: Solid;
}

/** An input turned into shapes: done once, used by screen, sizing and simulation. */
export interface ResolvedShip {
  readonly input: UprightInput;
  readonly form: HullForm;
  readonly hull: Solid;
  /** The compartments the plan floods, in the order of the input. */
  readonly spaces: readonly ResolvedSpace[];
}

/**
 * The hull of an input: its offset table, or a form with its coefficients. A waterplane finer than the block below it
 * gives way to the block: displacement and particulars are measured, the coefficient is a guess by the hull type.
 */
export function hullOf(input: UprightInput): HullForm {
  const { length, breadth, depth, lightDraught, stations } = input.particulars;
  if (stations && stations.length > 0) return hullFromStations(length, depth, stations);
  const block = Math.min(1, blockCoefficient(input));
  return hullFromParticulars({
    length,
    breadth,
    depth,
    draught: lightDraught,
    blockCoefficient: block,
    waterplaneCoefficient: Math.max(
      block,
      input.particulars.waterplaneCoefficient ?? waterplaneCoefficient(block),
    ),
  });
}

/** Ids of the compartments the sea reaches: with openings, meant to flood, or joined by a way that stands open. */
export function floodedIds(compartments: readonly UprightCompartment[]): Set<string> {
  const isKeptTight = (c: UprightCompartment): boolean => c.floods === false;
  const reached = new Set(
    compartments.filter(c => !isKeptTight(c) && (c.openings.length > 0 || c.floods === true)).map(c => c.id),
  );
  for (let pass = 0; pass < compartments.length; pass++)
    for (const from of compartments)
      for (const { to, closed } of from.connections) {
        if (closed === true) continue;
        const target = compartments.find(c => c.id === to);
        if (!target || isKeptTight(target) || isKeptTight(from)) continue;
        if (reached.has(from.id)) reached.add(to);
        else if (reached.has(to)) reached.add(from.id);
      }
  return reached;
}

/** Shapes of an input without blocking findings. */
export function resolveShip(input: UprightInput): ResolvedShip {
  const form = hullOf(input);
  const flooded = floodedIds(input.compartments);
  const step = form.length / SLICES;
  return {
    input,
    form,
    hull: hullSolid(form, SLICES),
    spaces: input.compartments
      .filter(({ id }) => flooded.has(id))
      .map(compartment => ({ compartment, solid: spaceSolid(form, compartment, step) }))
      .filter(({ solid }) => solid.capacity > LEAST_VOLUME),
  };
}

/** Tonnes left once the plan has removed its weights. */
export function massAfter(input: UprightInput, displacement: number): number {
  return input.removedWeights.reduce((mass, weight) => mass - weight.mass, displacement);
}

/** Where the light weight lies across the ship when nothing is known of it. */
const ON_CENTRELINE = 0;

/**
 * Centre of the light weight once the plan has removed its weights, raised by the free surface of tanks that are
 * still slack at the sinking.
 */
export function centreAfter(input: UprightInput, displacement: number, kg: number): Centre {
  let mass = displacement;
  let height = kg;
  let side = input.tcg ?? ON_CENTRELINE;
  for (const weight of input.removedWeights) {
    height = kgAfterRemoval(mass, height, weight.mass, weight.vcg);
    side = kgAfterRemoval(mass, side, weight.mass, weight.tcg ?? 0);
    mass -= weight.mass;
  }
  return { kg: height + slackMoment(input.tanks ?? [], true) / mass, tcg: side };
}

function lowestWay(compartment: UprightCompartment): number {
  const sills = compartment.openings.map(({ z, height }) => z - height / 2);
  const vents = compartment.vents.map(({ z }) => z);
  const own = compartment.openings.length > 0 || vents.length > 0 ? Math.min(...sills, ...vents) : Infinity;
  const isJoined = compartment.connections.some(({ closed }) => closed !== true);
  const isSized = compartment.openings.length === 0 && compartment.floods === true;
  if (isSized && compartment.entry !== undefined) return compartment.entry;
  return isJoined || isSized ? compartment.z0 : own;
}

/** The flooding plan of a ship at one displacement (t, before removal) and one unevenness of the openings. */
export function floodPlan(ship: ResolvedShip, displacement: number, mismatch: number): FloodPlan {
  const { depth, breadth } = ship.input.particulars;
  const spaces = ship.spaces.map(({ compartment, solid }): FloodedSpace => ({
    solid,
    floor: compartment.z0,
    y: (compartment.y0 + compartment.y1) / 2,
    sill: lowestWay(compartment),
  }));
  const lightVolume = massAfter(ship.input, displacement) / SEA_WATER;
  return { hull: ship.hull, depth, breadth, lightVolume, spaces, mismatch };
}

/** Light draught, m, once the weights are off. */
export function lightDraught(ship: ResolvedShip): number {
  return uprightDraught(ship.hull, massAfter(ship.input, ship.input.displacement.likely) / SEA_WATER);
}
