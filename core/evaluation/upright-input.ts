import type { EstimateInput, WorkSheet } from '../estimate';
import { UPRIGHT_DEFAULTS, type UprightInput, type UprightSite } from '../flooding';
import type { Project } from '../project';
import type { SheetResult } from '../sheet';
import { highestStaying, houseStaying, type MeasureKey, type TakeOff } from '../vessel';
import { compartmentsOf } from './upright-compartments';
import { heightAllowed, numberIn, rangeIn } from './upright-figures';
import { factsOf, slackTanks, stationsOf } from './upright-hull';
import { centreOfGravity } from './upright-kg';
import { weightsOfWork } from './upright-weights';

/** The numbers of the take-off that the screen starts from. */
export interface TakenOff {
  readonly result: SheetResult;
  readonly takeOff: TakeOff;
}

/** How far a lightship without a range of its own may be off: an old booklet, changes since (judgement). */
const DISPLACEMENT_SPREAD = 0.07;

/**
 * The input of the upright screen from the project and its take-off: SI doubles, ranges as they are given.
 * @param work the work sheet, for the weights that its items move; none before there is one.
 * @returns nothing when a particular or an extent is absent: there is no hull to screen.
 */
export function uprightInput(
  project: Project,
  input: EstimateInput,
  taken: TakenOff,
  work: WorkSheet | undefined,
): UprightInput | undefined {
  const measure = (key: MeasureKey) => taken.result.number(taken.takeOff.measures[key]);
  const [length, breadth, depth] = [measure('length'), measure('beam'), measure('depth')];
  const [lightDraught, lightship] = [measure('draught-light'), measure('lightship')];
  if (length === undefined || breadth === undefined || depth === undefined) return undefined;
  if (lightDraught === undefined || lightship === undefined) return undefined;
  const compartments = compartmentsOf(project, length, breadth, depth, measure('compartment-count') ?? 1);
  if (compartments === undefined) return undefined;
  const waterplane = numberIn(input.ship.type.quantities['waterplane-coefficient'], '1');
  const thickness = measure('opening-thickness');
  const house = houseStaying(length, breadth, input.options['topside-extent']);
  return {
    particulars: {
      ...{ length, breadth, depth, lightDraught },
      ...(waterplane === undefined ? {} : { waterplaneCoefficient: waterplane }),
      ...stationsOf(project),
    },
    displacement: rangeIn(project.vessel.lightship, 't', lightship, DISPLACEMENT_SPREAD),
    ...centreOfGravity(project, input, depth, lightship),
    tanks: slackTanks(project),
    compartments,
    removedWeights: work === undefined ? [] : weightsOfWork(work, depth, length),
    method: input.options['sinking-method'] === 'explosive' ? 'explosive scuttling' : 'flooding',
    site: siteOf(project, input, depth, measure('water-depth')),
    ...(house === undefined ? {} : { superstructure: house }),
    facts: factsOf(project),
    ...(thickness === undefined ? {} : { plateThickness: thickness }),
    ...chosen(project),
  };
}

function siteOf(
  { site }: Project,
  input: EstimateInput,
  depth: number,
  waterDepth: number | undefined,
): UprightSite {
  const slope = numberIn(site.bottomSlope, '1');
  const clearance = numberIn(site.clearanceRequired, 'm');
  const [height, period] = [numberIn(site.waveHeight, 'm'), numberIn(site.wavePeriod, '1')];
  return {
    ...(waterDepth === undefined ? {} : { waterDepth }),
    ...(slope === undefined ? {} : { bottomSlope: slope }),
    ...(clearance === undefined ? {} : { permitClearance: clearance }),
    highestPoint: highestStaying(depth, input.options['topside-extent'], heightAllowed({ site })),
    ...(height === undefined || period === undefined ? {} : { wave: { height, period } }),
  };
}

const SECONDS_AN_HOUR = 3600;

/** The planner's own choices of the screen. */
function chosen({ upright }: Project): Partial<UprightInput> {
  const [staysUp, leans] = [numberIn(upright?.staysUp, '1'), numberIn(upright?.leans, '1')];
  const limits = UPRIGHT_DEFAULTS.limits.value;
  const hours = numberIn(upright?.sinkTime, 'h');
  const unevenness = numberIn(upright?.unevenness, '1');
  const ventShare = numberIn(upright?.ventShare, '1');
  return {
    ...(staysUp === undefined && leans === undefined
      ? {}
      : { limits: { staysUp: staysUp ?? limits.staysUp, leans: leans ?? limits.leans } }),
    ...(hours === undefined ? {} : { targetSinkTime: hours * SECONDS_AN_HOUR }),
    ...(unevenness === undefined ? {} : { openingsMismatch: unevenness }),
    ...(ventShare === undefined ? {} : { ventShare }),
  };
}
