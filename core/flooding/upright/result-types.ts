import type { Finding } from '../../base';
import type { MeasurementId } from './types';

export type UprightVerdict = 'stays up' | 'leans' | 'may roll over' | 'does not sink' | 'cannot tell';

/** One stage of the flooding. Angles in degrees positive to starboard, trim in metres by the stern. */
export interface UprightStage {
  /** Seconds from the release. */
  readonly t: number;
  /** Common flood level above the keel, m. */
  readonly level: number;
  /** Small-angle GM referred to the light displacement, m. */
  readonly gm: number;
  /** Greatest equilibrium heel of the upright screen at this level; absent where none exists below 60 degrees. */
  readonly heel?: number;
  /** Heel of the flooding simulation. */
  readonly list: number;
  readonly trim: number;
  /** Mean draught, m. */
  readonly draught: number;
  /** What happens here, such as "deck edge under", "bow on the bottom" or "rolled over". */
  readonly event?: string;
  /** More water is aboard than the section check follows: level, GM and heel are those of its last level and judge nothing here. */
  readonly isPastCheck?: true;
}

/** What one compartment needs so that it fills within the target time. */
export interface UprightSizing {
  readonly compartment: string;
  /** Number of openings. */
  readonly openings: number;
  /** Clear area of each, m2: the standard 1.2 x 1.5 m, or cut to size where that is too large. */
  readonly openingArea: number;
  /** Total clear area, m2. */
  readonly area: number;
  /** Length of shell cut, m. */
  readonly cutLength: number;
  readonly ventArea: number;
  readonly ventCount: number;
  readonly fillMinutes: number;
  /** Why it could not be sized, or what limits it. */
  readonly note?: string;
}

/** The effect of a choice, or of the cheapest set, side by side. */
export interface UprightChoiceResult {
  readonly ids: readonly string[];
  readonly titles: readonly string[];
  readonly cost: number;
  readonly days: number;
  readonly verdict: UprightVerdict;
  /** Over the ranges; absent where no equilibrium exists. */
  readonly greatestHeelDegrees?: number;
  /** Change of the greatest heel, degrees; absent where one side of it has no equilibrium. */
  readonly heelChangeDegrees?: number;
  /** The same for the likely values alone. */
  readonly likelyHeelDegrees?: number;
  /** The worst standing within the ranges: what the verdict comes to once everything is measured and comes out badly. */
  readonly worst: UprightVerdict;
  readonly lowestGmMetres: number;
  /** Port and starboard evenness: difference of filled volume over the whole, 0 is even. */
  readonly unevenness: number;
  readonly unevennessChange?: number;
  /** Greatest list of the flooding simulation of the likely values while there is freeboard left. */
  readonly peakListDegrees?: number;
}

export interface UprightChoices {
  /** The plan as it stands, looked at in the same way as the choices. */
  readonly now: UprightChoiceResult;
  readonly each: readonly UprightChoiceResult[];
  /** The cheapest set of the list that improves the verdict by one step. */
  readonly cheapest?: UprightChoiceResult;
  /** Where no set improves the verdict: the cheapest that takes the worst standing out of the ranges. */
  readonly narrows?: UprightChoiceResult;
  readonly message: string;
}

export interface UprightSiteResult {
  readonly canTurnOver?: boolean;
  readonly halfDiagonal?: number;
  readonly firstEnd?: 'bow' | 'stern' | 'neither';
  readonly endAngleDegrees?: number;
  readonly clearance?: number;
  readonly waveFactors?: { readonly dragOnly: number; readonly inertia: number };
  readonly notes: readonly string[];
}

/** What holds the cuts back. */
export type CrossFloodingLimit = 'structure' | 'deck edge' | 'number of cuts' | 'stability';

/** Cuts between two compartments. */
export interface SizedCut {
  readonly from: string;
  readonly to: string;
  readonly count: number;
  /** Clear area of all of them, m2. */
  readonly area: number;
  readonly cutLength: number;
  readonly z: number;
  readonly height: number;
}

/** Sized cuts and what they do to the list. Degrees. */
export interface CrossFlooding {
  readonly cuts: readonly SizedCut[];
  readonly peakBefore: number;
  readonly peakAfter: number;
  readonly removedShare: number;
  /** What stopped the cuts short of the wanted share, when they were. */
  readonly limit?: { readonly kind: CrossFloodingLimit; readonly message: string };
}

/** One asymmetric case of the flooding simulation. */
export interface UprightWhatIf {
  readonly title: string;
  readonly outcome: 'sunk' | 'on the bottom' | 'rolled over' | 'afloat' | 'still flooding';
  /** Greatest list while there is freeboard left, degrees. */
  readonly peakListDegrees: number;
  readonly minutes: number;
}

/** How the flooding simulation of the likely values ends. How she lies on the bottom is not worked out. */
export interface UprightEnd {
  readonly outcome: UprightWhatIf['outcome'];
  /** List in degrees, to starboard when positive; judged no more once the deck is nearly under. */
  readonly listDegrees: number;
}

/** One yardstick of a public rule, for context: nothing here is approved by it. */
export interface UprightYardstick {
  readonly condition: 'afloat before the sinking' | 'at the worst flood level';
  readonly rule: string;
  /** What the rule asks for, in words with units. */
  readonly asks: string;
  /** What she has; absent where there is no equilibrium to measure from. */
  readonly found?: number;
  readonly unit: 'm' | 'degrees' | 'm degrees' | '1';
  readonly meets: boolean;
}

/** What the section check cannot follow: the deck edge under, and the ship under altogether. */
export interface AfterDeckEdge {
  /** GM with the deck just under, m: only the footprint of the superstructure still pierces the water. */
  readonly houseGmMetres?: number;
  /** Air still aboard then, m3, and the height of its middle above the centre of gravity, m. */
  readonly airCubicMetres: number;
  readonly airLeverMetres?: number;
  readonly notes: readonly string[];
}

/** Screening only, not a naval architect's study. */
export interface UprightResult {
  readonly verdict: UprightVerdict;
  readonly reasons: readonly string[];
  /** Greatest equilibrium heel over the ranges; absent where none exists below 60 degrees. */
  readonly greatestHeelDegrees?: number;
  /** The same for the likely values alone. */
  readonly likelyHeelDegrees?: number;
  readonly atStage?: string;
  readonly lowestGmMetres?: number;
  /** Flood level of the lowest GM, m above the keel. */
  readonly atLevel?: number;
  readonly sinks: boolean;
  /** Absent where she does not sink or rolls over first. */
  readonly sinkMinutes?: number;
  readonly stages: readonly UprightStage[];
  /** Absent where nothing was simulated. */
  readonly atTheEnd?: UprightEnd;
  /** Whether she may roll over with some values of the ranges, or does in the simulation while it is judged. */
  readonly mayRollOver?: boolean;
  readonly sizing: readonly UprightSizing[];
  readonly missingInputs: readonly string[];
  readonly settles?: {
    readonly measurement: MeasurementId;
    readonly why: string;
    readonly cost?: number;
    readonly days?: number;
  };
  readonly choices?: UprightChoices;
  /** Cuts across the ship, sized when she lists more than 2 degrees while flooding. */
  readonly crossFlooding?: CrossFlooding;
  /** All even, one side slower, each closed door forgotten open. */
  readonly whatIfs: readonly UprightWhatIf[];
  readonly site: UprightSiteResult;
  /** Values of public rules beside those of the ship, as context and not as approval. */
  readonly yardsticks: readonly UprightYardstick[];
  readonly afterDeckEdge?: AfterDeckEdge;
  readonly findings: readonly Finding[];
  /** "Screening, not a naval architect's study" and what it cannot see. */
  readonly caution: string;
  readonly cannotSee: readonly string[];
}
