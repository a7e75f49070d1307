import type { UprightSizing } from './result-types';

export type * from './result-types';

/** A value with its range; all three in the unit the field states. */
export interface LowLikelyHigh {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** How the height of the centre of gravity is known. Only a measured one can carry "stays up". */
export type KgBasis = 'assumed' | 'weight list' | 'inclined';

/** The particulars of the hull in metres, in the light condition before any weight of the plan is removed. */
export interface UprightParticulars {
  readonly length: number;
  readonly breadth: number;
  readonly depth: number;
  readonly lightDraught: number;
  /** Waterplane coefficient at the light draught; without it (1 + 2 Cb) / 3. */
  readonly waterplaneCoefficient?: number;
  /** An offset table: sections from aft to forward, each the outline of the whole section (y, z) in metres. */
  readonly stations?: readonly {
    readonly x: number;
    readonly outline: readonly (readonly [number, number])[];
  }[];
}

/** An opening of a compartment to the sea. `z` is its centre above the keel; `height` 0 is a hole in a floor. */
export interface UprightOpening {
  readonly id: string;
  readonly side: 'port' | 'starboard' | 'bottom' | 'deck';
  /** Clear area of one opening, m2. */
  readonly area: number;
  readonly z: number;
  readonly height: number;
  readonly count: number;
}

/** An air escape: clear area in m2 and height above the keel in metres. */
export interface UprightVent {
  readonly area: number;
  readonly z: number;
}

/** A way for water from one compartment to another. `z` is its centre above the keel. */
export interface UprightConnection {
  readonly to: string;
  readonly area: number;
  readonly z: number;
  readonly kind: 'door' | 'cut' | 'corridor';
  /** Height of the opening, m; 2 for a door, 0.8 for a cut when absent. */
  readonly height?: number;
  /** A closed door passes no water (what a forgotten door does is a case of its own). */
  readonly closed?: boolean;
}

/** x from the aft perpendicular forward, y from the centreline to starboard, z from the keel up; metres. */
export interface UprightCompartment {
  readonly id: string;
  readonly title: string;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
  /** Share of the volume that water can take, 0 to 1. */
  readonly permeability: number;
  readonly openings: readonly UprightOpening[];
  readonly vents: readonly UprightVent[];
  readonly connections: readonly UprightConnection[];
  /** Height above the keel, m, at which its sized openings are cut: high, she keeps its buoyancy until late. */
  readonly entry?: number;
  /** Whether the plan floods it. Default: it does when it has an opening or is reached through a connection.
   * `true` without openings asks for sized ones; `false` keeps it tight. */
  readonly floods?: boolean;
}

/** A weight taken off (positive mass) or put aboard (negative mass), tonnes and metres. */
export interface UprightWeight {
  readonly title?: string;
  readonly mass: number;
  readonly vcg: number;
  readonly lcg?: number;
  readonly tcg?: number;
}

/** A tank whose liquid may have a free surface: metres, m3, t/m3. */
export interface UprightTank {
  readonly title: string;
  readonly length: number;
  readonly breadth: number;
  /** Equal parts across the ship that the surface is divided into. */
  readonly parts: number;
  readonly density: number;
  readonly capacity: number;
  readonly volume: number;
  /** Whether the plan empties it before the sinking. */
  readonly emptied: boolean;
}

/** What can be seen on the ship afloat and bounds the height of its centre of gravity before any default. */
export interface UprightFacts {
  /** She lies afloat and upright with nothing holding her: GM is positive. */
  readonly afloatUpright?: boolean;
  /** An observed list (degrees) and the known moment that causes it (tonne metres), when there is one. */
  readonly list?: { readonly degrees: number; readonly moment?: number };
  /** A timed full roll period, seconds. */
  readonly rollPeriod?: number;
}

/** What a choice changes. Absent means unchanged. */
export interface UprightEffect {
  readonly removedWeights?: readonly UprightWeight[];
  readonly kg?: LowLikelyHigh & { readonly basis: KgBasis };
  readonly openingsMismatch?: number;
  /** Compartments that stay tight to the end. */
  readonly keepTight?: readonly string[];
  /** Compartments whose openings are cut high, at this height above the keel, m: their buoyancy is kept until late. */
  readonly late?: readonly { readonly compartment: string; readonly entry: number }[];
  /** Cuts added between compartments. */
  readonly cuts?: readonly (UprightConnection & { readonly from: string })[];
  /** Openings added, by compartment. */
  readonly openings?: readonly (UprightOpening & { readonly compartment: string })[];
  readonly method?: SinkingMethod;
}

/** One thing the plan could do: its direct cost and work days are handed in as numbers by the estimate. */
export interface UprightChoice {
  readonly id: string;
  readonly title: string;
  readonly cost: number;
  readonly days: number;
  /** Choices of one group exclude each other: the topside comes off by half or by most of it, not by both. */
  readonly group?: string;
  readonly effect: UprightEffect;
}

export type SinkingMethod = 'flooding' | 'explosive scuttling';

export interface UprightSite {
  readonly waterDepth?: number;
  /** Rise over run of the sea bed. */
  readonly bottomSlope?: number;
  /** Highest point of the ship above the keel once the plan has taken off what it takes off, m. */
  readonly highestPoint?: number;
  /** Least clear water over the wreck the permit asks for, m. */
  readonly permitClearance?: number;
  /** Design wave: height m, period s. */
  readonly wave?: { readonly height: number; readonly period: number };
}

/** What it costs to take a measurement, when the estimate knows. */
export type MeasurementId = 'inclining' | 'weight list' | 'bulkhead survey' | 'draught survey';

export interface UprightLimits {
  /** Greatest heel still called "stays up", degrees. Judgement, default 7. */
  readonly staysUp: number;
  /** Greatest heel still called "leans", degrees. Judgement, default 15. */
  readonly leans: number;
}

/** All the screen needs, as plain data (JSON). */
export interface UprightInput {
  readonly particulars: UprightParticulars;
  /** Displacement in the light condition, tonnes, before the removed weights. */
  readonly displacement: LowLikelyHigh;
  /** Height of the centre of gravity above the keel, m, before the removed weights. */
  readonly kg: LowLikelyHigh & { readonly basis: KgBasis };
  /** Distance of the light weight to starboard of the centreline, m, where a weight list tells it. */
  readonly tcg?: number;
  readonly tanks?: readonly UprightTank[];
  readonly compartments: readonly UprightCompartment[];
  readonly removedWeights: readonly UprightWeight[];
  /** How much slower one side may fill than the other, 0 to 1. Default 0.1. */
  readonly openingsMismatch?: number;
  /** Seconds from release to gone. Default by method. */
  readonly targetSinkTime?: number;
  readonly method: SinkingMethod;
  readonly site?: UprightSite;
  /** What stands above the deck and still pierces the water once the deck is under, metres. */
  readonly superstructure?: { readonly length: number; readonly breadth: number };
  readonly facts?: UprightFacts;
  readonly choices?: readonly UprightChoice[];
  readonly limits?: UprightLimits;
  readonly measurementCosts?: Partial<
    Record<MeasurementId, { readonly cost: number; readonly days: number }>
  >;
  /** Shell plate thickness, mm, for the cut quantities. */
  readonly plateThickness?: number;
  /** Sizes already settled: those the work was priced with. Without them the openings are sized anew. */
  readonly sizes?: readonly UprightSizing[];
  /** Vent area as a share of the opening area; default 0.15. */
  readonly ventShare?: number;
}
