import { neededBollardPull } from './bollard-pull';
import { KNOT } from './constants';
import { plannedTowDays, towDays } from './duration';
import { bargeResistance } from './barge-resistance';
import { propellerArea, propellerDrag, type PropellerKind } from './propeller-drag';
import type { Finding } from '../base';

/** A dead-ship tow: metres, tonnes, knots, nautical miles. */
export interface TowInput {
  readonly length: number;
  readonly breadth: number;
  readonly draught: number;
  readonly displacement: number;
  /** Wetted surface at the tow draught, m2. */
  readonly wettedSurface: number;
  /** Frontal area in the wind, m2. */
  readonly windage: number;
  readonly windKnots: number;
  readonly knots: number;
  readonly nauticalMiles: number;
  readonly daysSinceDock: number;
  /** The propellers left in place and locked; absent when they are off. */
  readonly propellers?: PropellerKind;
  readonly route: TowRoute;
}

/** Limits along the route, metres; absent when not known. */
export interface TowRoute {
  readonly airDraught?: number;
  readonly lowestBridge?: number;
  readonly shallowestChannel?: number;
  readonly berthDepth?: number;
}

/** Forces in kN, pull in tonnes, days. */
export interface TowResult {
  readonly hull: number;
  readonly propellers: number;
  readonly wind: number;
  readonly total: number;
  readonly bollardPull: number;
  /** Bollard pull saved by taking the propellers off, t. */
  readonly savedWithoutPropellers: number;
  readonly steadyDays: number;
  readonly plannedDays: number;
  readonly findings: readonly Finding[];
  readonly integrityList: readonly string[];
  readonly holdPoints: readonly string[];
}

const VISCOSITY = 1.2e-6;
/** Water under the keel asked for, m, and over the mast. Judgement. */
const UNDER_KEEL = 1;
const OVER_MAST = 1;
const KILONEWTONS_PER_TONNE = 9.81;

/** What has to be tight and checked before a dead ship leaves. Common practice of towing surveys. */
export const INTEGRITY_LIST: readonly string[] = [
  'openings in the shell closed and tested, existing and cut ones listed',
  'watertight doors, hatches, ports and air pipes closed',
  'sea valves shut, blanked and wired; shaft seals tight, propellers locked or off',
  'bulkheads sounded, every tank and bilge sounded before and during the tow',
  'flooding alarm, pumps and a way aboard in place',
  'main and emergency towing gear, lights and day shapes rigged',
];

/** Who has to agree before she leaves. */
export const TOW_HOLD_POINTS: readonly string[] = [
  'approval of the tow by the towing surveyor',
  'order of the Coast Guard captain of the port for a dead-ship tow',
];

function routeFinding(place: string, message: string, remedy: string): Finding {
  const meaning = 'The tow cannot take this way as she lies.';
  return { code: 'towing/route-limit', weight: 'blocks', place: `/route/${place}`, message, meaning, remedy };
}

/** Bridges, channels and berths against air draught and draught. */
export function routeFindings(route: TowRoute, draught: number): Finding[] {
  const findings: Finding[] = [];
  const { airDraught, lowestBridge } = route;
  if (airDraught !== undefined && lowestBridge !== undefined && airDraught + OVER_MAST > lowestBridge)
    findings.push(
      routeFinding(
        'lowestBridge',
        `She stands ${airDraught} m above the water and the lowest bridge is ${lowestBridge} m.`,
        'Cut the mast before the tow or choose another route.',
      ),
    );
  for (const place of ['shallowestChannel', 'berthDepth'] as const) {
    const depth = route[place];
    if (depth !== undefined && draught + UNDER_KEEL > depth)
      findings.push(
        routeFinding(
          place,
          `She draws ${draught} m and there are ${depth} m of water.`,
          'Lighten her, wait for the tide with the pilot, or choose another berth or route.',
        ),
      );
  }
  return findings;
}

/**
 * Resistance of a dead ship (hull by the barge rule, locked propellers, wind), the bollard pull it asks for, and
 * the days. Screening for cost: the towing surveyor approves the tow.
 * Findings: `towing/route-limit`.
 */
export function towPlan(tow: TowInput): TowResult {
  const parts = bargeResistance({
    length: tow.length,
    wettedSurface: tow.wettedSurface,
    displacement: tow.displacement,
    speed: tow.knots * KNOT,
    daysSinceDock: tow.daysSinceDock,
    windage: tow.windage,
    windSpeed: tow.windKnots * KNOT,
    windCoefficient: 1,
    viscosity: VISCOSITY,
  });
  const hull = (parts.friction + parts.wave) / 1000;
  const wind = parts.air / 1000;
  const area = tow.propellers ? propellerArea(tow.length, tow.breadth, tow.propellers) : 0;
  const propellers = propellerDrag(area, tow.knots * KNOT);
  const total = hull + propellers + wind;
  return {
    hull,
    propellers,
    wind,
    total,
    bollardPull: neededBollardPull(total / KILONEWTONS_PER_TONNE),
    savedWithoutPropellers: neededBollardPull(propellers / KILONEWTONS_PER_TONNE),
    steadyDays: towDays(tow.nauticalMiles, tow.knots),
    plannedDays: plannedTowDays(tow.nauticalMiles, tow.knots),
    findings: routeFindings(tow.route, tow.draught),
    integrityList: INTEGRITY_LIST,
    holdPoints: TOW_HOLD_POINTS,
  };
}
