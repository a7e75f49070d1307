import { keeping, type Figure, type Finding } from '../base';
import type { Adjustment, EstimateInput } from '../estimate';
import type { Project } from '../project';
import {
  plannedTowDays,
  TOW_DEFAULTS,
  towPlan,
  WEATHER_ALLOWANCE,
  type PropellerKind,
  type TowResult,
} from '../towing';
import { SEA_WATER } from '../stability';
import { highestStaying, wettedSurfaceMumford, type MeasureKey } from '../vessel';
import type { EstimateParts } from './evaluate';
import { heightAllowed, numberIn } from './upright-figures';
import { weightsOfWork } from './upright-weights';

/** A hold point of the tow with the day the schedule gives it. */
export interface TowHoldPoint {
  readonly id: string;
  readonly title: string;
  readonly finish: string | undefined;
}

/** The tow of a scenario: forces, days, route, what has to be tight and who has to agree. Screening for cost. */
export interface TowView extends TowResult {
  readonly knots: number;
  readonly nauticalMiles: number;
  readonly propellersLocked: boolean;
  /** Days the estimate has for the tow. */
  readonly scheduledDays?: number;
  readonly scheduledHoldPoints: readonly TowHoldPoint[];
}

/** The work items of the tow itself, and those that hold it until somebody agrees. */
const TOW = 'ocean-tow';
const HOLD_POINTS = ['tow-survey', 'tow-plan-review', 'acceptance-letter'];

/** Kinds of propeller by hull type; a cargo ship's where nothing else is known. */
const PROPELLERS: Readonly<Record<string, PropellerKind>> = {
  tanker: 'tanker',
  escort: 'destroyer',
  cutter: 'destroyer',
  'aircraft-carrier': 'carrier',
};

function knotsOf({ site }: Project): number {
  return numberIn(site.towSpeed, 'kn') ?? Number(TOW_DEFAULTS.speed.value);
}

/**
 * The input with the days of the tow from its distance and speed, and the weather allowance, where the site gives a
 * speed and the planner has not set the days. Without a speed the tow keeps the rate of the work library.
 */
export function withTowDays(project: Project, input: EstimateInput): EstimateInput {
  const { towSpeed, towDistance } = project.site;
  const [knots, miles] = [numberIn(towSpeed, 'kn'), numberIn(towDistance, 'nmi')];
  const own = input.adjustments.get(TOW);
  if (towSpeed === undefined || knots === undefined || miles === undefined || own?.duration !== undefined)
    return input;
  const change = towChange(own, towSpeed, knots, miles);
  return { ...input, adjustments: new Map([...input.adjustments, [TOW, change]]) };
}

/** The change of the tow with its days; the same object as before when all it is made from is. */
const towChange = keeping(
  4,
  (own: Adjustment | undefined, towSpeed: Figure, knots: number, miles: number): Adjustment => {
    const days = (allowance: number) => String(Math.ceil(plannedTowDays(miles, knots, allowance)));
    const duration = {
      value: days(WEATHER_ALLOWANCE.likely),
      low: days(WEATHER_ALLOWANCE.low),
      high: days(WEATHER_ALLOWANCE.high),
      unit: 'day',
      basis: 'judgement' as const,
      source: `${miles} nautical miles at ${knots} knots and ${100 * WEATHER_ALLOWANCE.likely} % for weather; speed: ${towSpeed.source}`,
      year: towSpeed.year ?? 2026,
    };
    return { ...own, item: TOW, duration };
  },
);

/** The tow of a scenario. Nothing without a distance, particulars or the tow itself. */
export function towOf(project: Project, parts: EstimateParts): TowView | undefined {
  const { work, input, items, schedule } = parts;
  const measure = (key: MeasureKey) => work.result.number(work.takeOff.measures[key]);
  const [length, breadth, depth] = [measure('length'), measure('beam'), measure('depth')];
  const [draught, lightship] = [measure('draught-light'), measure('lightship')];
  const nauticalMiles = measure('tow-distance');
  if (length === undefined || breadth === undefined || depth === undefined) return undefined;
  if (draught === undefined || lightship === undefined || nauticalMiles === undefined) return undefined;
  if (!items.some(({ id }) => id === TOW)) return undefined;
  const displacement = weightsOfWork(work, depth, length).reduce((mass, one) => mass - one.mass, lightship);
  const top = highestStaying(depth, input.options['topside-extent'], heightAllowed(project)) - draught;
  const propellersLocked = input.options['propellers'] === 'locked';
  const knots = knotsOf(project);
  const plan = towPlan({
    ...{ length, breadth, draught, displacement, knots, nauticalMiles },
    wettedSurface: wettedSurfaceMumford(length, draught, displacement / SEA_WATER),
    windage: breadth * top,
    windKnots: numberIn(project.site.towWind, 'kn') ?? Number(TOW_DEFAULTS.wind.value),
    daysSinceDock: Number(TOW_DEFAULTS.fouling.value),
    ...(propellersLocked ? { propellers: PROPELLERS[input.ship.type.id] ?? 'cargo' } : {}),
    route: { airDraught: top, ...routeOf(project) },
  });
  const scheduled = work.result.number(work.items.columns.days, TOW);
  return {
    ...plan,
    ...{ knots, nauticalMiles, propellersLocked },
    ...(scheduled === undefined ? {} : { scheduledDays: scheduled }),
    scheduledHoldPoints: HOLD_POINTS.flatMap(id => {
      const title = items.find(item => item.id === id)?.title;
      const finish = schedule.activities.find(activity => activity.id === id)?.finish;
      return title === undefined ? [] : [{ id, title, finish }];
    }),
    findings: [
      ...plan.findings.map(finding => ({ ...finding, place: finding.place.replace('/route/', '/site/') })),
      ...daysFindings(plan, scheduled),
    ],
  };
}

function routeOf({ site }: Project) {
  const [lowestBridge, shallowestChannel, berthDepth] = [
    numberIn(site.lowestBridge, 'm'),
    numberIn(site.shallowestChannel, 'm'),
    numberIn(site.berthDepth, 'm'),
  ];
  return {
    ...(lowestBridge === undefined ? {} : { lowestBridge }),
    ...(shallowestChannel === undefined ? {} : { shallowestChannel }),
    ...(berthDepth === undefined ? {} : { berthDepth }),
  };
}

/** Days that the rounding to whole ones may make the two differ by. */
const ROUNDING = 1;

/** The days of the estimate against distance, speed and weather: a finding where they lie apart. */
function daysFindings({ steadyDays, plannedDays }: TowResult, scheduled: number | undefined): Finding[] {
  if (scheduled === undefined) return [];
  const short = scheduled < Math.ceil(steadyDays * (1 + WEATHER_ALLOWANCE.low)) - ROUNDING;
  const long = scheduled > Math.ceil(steadyDays * (1 + WEATHER_ALLOWANCE.high)) + ROUNDING;
  if (!short && !long) return [];
  return [
    {
      code: 'towing/days-differ',
      weight: 'warns',
      place: '/items/ocean-tow',
      message: `The estimate has ${scheduled} days for the tow; distance, speed and weather ask for ${plannedDays.toFixed(1)}.`,
      meaning: short
        ? 'Tug, fuel and riding crew are priced for fewer days than the weather is likely to leave.'
        : 'Tug, fuel and riding crew are priced for more days than the tow needs.',
      remedy: 'Give the tow speed of the site, or the days of the tow with their reason.',
    },
  ];
}
