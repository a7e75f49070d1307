import { lowerFirst, type Figure, type Finding } from '../../base';
import { dayOf } from '../../calendar';
import { clearanceOver, tbtPresumption, tripPoint } from '../../materials';
import type { EstimateInput, WorkSheet } from '../../estimate';
import type { Project } from '../../project';
import type { ScheduleResult } from '../../scheduling';
import { compareDecimals, convert, decimalDifference, isConvertible, isUnit, quantity } from '../../units';
import { highestStaying } from '../../vessel';
import type { WorkItem } from '../../work';
import { heightAllowed } from '../upright-figures';

const TBT = 'tbt-antifouling';

/** What is presumed of tributyltin on the hull, by the year of the last coating; nothing where samples decide. */
export function coatingFindings(
  project: Project,
  input: EstimateInput,
  items: readonly WorkItem[],
): Finding[] {
  if (input.presence.get(TBT)?.basis === 'surveyed') return [];
  const point = tripPoint(input.library.tripPoints, 'tbt-last-coating');
  const { lastCoating } = project.vessel;
  const presumed = tbtPresumption(input.library.tripPoints, lastCoating, false);
  const removal = items.find(item => item.meets.includes(TBT));
  const remedy =
    'Sample the coating and enter the result; where a sealing coat is shown, enter a measured antifouling area of 0.';
  if (presumed === 'cannot tell')
    return [
      {
        code: 'rules/coating-date-unknown',
        weight: 'warns',
        place: '/vessel/lastCoating',
        message:
          'The year of the last antifouling coating is not known: whether it holds tributyltin, nobody can tell.',
        meaning: `The year of the last refit or build stands in for it${removal === undefined ? '' : `; ${lowerFirst(removal.title)} is in the estimate`}.`,
        remedy: `Enter the year. ${remedy}`,
        rule: point.rule,
      },
    ];
  if (presumed !== 'presumed' || removal === undefined || lastCoating === undefined) return [];
  return [
    {
      code: 'rules/tbt-presumed',
      weight: 'notes',
      place: '/vessel/lastCoating',
      message: `The last antifouling coating is of ${lastCoating}, before ${point.figure.value}: tributyltin is presumed.`,
      meaning: `${removal.title} is in the estimate.`,
      remedy,
      rule: point.rule,
    },
  ];
}

/** The water over the reef against the permit and the State's depth rule, and the term of the permit. */
export function siteFindings(
  project: Project,
  input: EstimateInput,
  work: WorkSheet,
  schedule: ScheduleResult,
): Finding[] {
  return [...clearanceFindings(project, input, work), ...permitFindings(project, schedule)];
}

function clearanceFindings(project: Project, input: EstimateInput, work: WorkSheet): Finding[] {
  const { site } = project;
  const [depth, required] = [feet(site.waterDepth), feet(site.clearanceRequired)];
  const hullDepth = work.result.number(work.takeOff.measures.depth);
  if (depth === undefined || required === undefined || hullDepth === undefined) return [];
  const extent = input.options['topside-extent'];
  const points = input.library.tripPoints;
  const height = (metres: number) => Number(convert(quantity(metres.toFixed(6), 'm'), 'ft').value).toFixed(2);
  const usual = height(highestStaying(hullDepth, extent));
  const top = height(highestStaying(hullDepth, extent, heightAllowed(project)));
  const over = clearanceOver(points, { depth, top: least(top, usual), required });
  const rule = tripPoint(points, 'clearance-default').rule;
  const words = { top: short(top), usual: short(usual), depth: short(depth), required: short(required) };
  const isShort = compareDecimals(over.clearance, decimalDifference(required, ROUNDING)) < 0;
  return [
    ...(isShort ? [tooSmall(words, short(over.clearance), rule)] : []),
    ...(!isShort && compareDecimals(top, usual) < 0 ? [clearanceAsks(words, rule)] : []),
    ...(over.generalPermit ? [] : [noGeneralPermit(words, tripPoint(points, 'florida-depth-share').rule)]),
  ];
}

type Heights = Readonly<Record<'top' | 'usual' | 'depth' | 'required', string>>;

function tooSmall({ top, depth, required }: Heights, clearance: string, rule: string): Finding {
  return {
    code: 'rules/clearance-too-small',
    weight: 'warns',
    place: '/site/clearanceRequired',
    message: `What stays of the ship stands ${top} ft above the keel in ${depth} ft of water: ${clearance} ft stay over it, and ${required} ft are asked for.`,
    meaning: 'The site may not take the ship as she is left.',
    remedy: 'Take more of the topside off, choose deeper water, or have the permit changed.',
    rule,
  };
}

function clearanceAsks({ top, usual, required }: Heights, rule: string): Finding {
  return {
    code: 'rules/clearance-asks',
    weight: 'notes',
    place: '/site/clearanceRequired',
    message: `Masts and stacks off would leave ${usual} ft above the keel; ${required} ft of water over the ship allow ${top} ft.`,
    meaning: 'The house is cut down to that height; the share of the topside removed must hold it.',
    remedy: 'Measure the heights of the house and state the weight that comes off.',
    rule,
  };
}

function noGeneralPermit({ top, depth }: Heights, rule: string): Finding {
  return {
    code: 'rules/not-under-general-permit',
    weight: 'notes',
    place: '/site/waterDepth',
    message: `The top of the reef, ${top} ft above the bottom, is higher than half of the ${depth} ft of water or has less than 6 ft over it.`,
    meaning:
      'In State waters of Florida the general permit does not cover it; elsewhere the site’s own permit governs.',
    remedy: 'In State waters of Florida ask for an individual permit.',
    rule,
  };
}

/** Feet within which two heights are the same: they are worked out in metres and rounded to a hundredth of a foot. */
const ROUNDING = '0.01';

function least(a: string, b: string): string {
  return compareDecimals(a, b) <= 0 ? a : b;
}

function permitFindings({ site }: Project, schedule: ScheduleResult): Finding[] {
  const sunk = schedule.activities
    .filter(activity => activity.id === 'sinking-by-flooding' || activity.id === 'scuttling-firm')
    .map(activity => activity.finish)
    .at(-1);
  if (site.permit === undefined || sunk === undefined || dayOf(sunk) <= dayOf(site.permit.expires)) return [];
  return [
    {
      code: 'rules/permit-expires',
      weight: 'warns',
      place: '/site/permit/expires',
      message: `The permit ${site.permit.number} ends on ${site.permit.expires}; the ship is sunk on ${sunk}.`,
      meaning: 'Nothing may be placed at the site after the permit has ended.',
      remedy: 'Ask for an extension before it ends, or sink earlier.',
      rule: '33 CFR 325.6',
    },
  ];
}

function feet(figure: Figure): string | undefined {
  if (!isUnit(figure.unit) || !isConvertible(figure.unit, 'ft')) return undefined;
  return convert(quantity(figure.value, figure.unit), 'ft').value;
}

function short(text: string): string {
  return String(Math.round(Number(text) * 10) / 10);
}
