import { heightAllowed } from '../evaluation';
import { highestStaying } from '../vessel';
import { isOption, topsideParts } from './topside-parts';
import { amountIn, isConvertible, isUnit, quantity, type Unit } from '../units';
import type { Figure } from '../base';
import type { Project } from '../project';
import type { EstimateContext } from './context';
import { inMeasures, unitWords } from './measures';
import { decimalsFor, shownNumber } from './number-text';
import type { DrawnCompartment, DrawnOpening, ShipPicture } from './window-rows';
import { fillSteps } from './fill-steps';

/** A given amount in a unit; undefined when it is given in one that measures something else, which is a finding. */
function given({ value, unit }: Figure, to: Unit): number | undefined {
  return isUnit(unit) && isConvertible(unit, to) ? amountIn(quantity(value, unit), to) : undefined;
}

interface Particulars {
  readonly length: number;
  readonly beam: number;
  readonly depth: number;
  readonly draught: number;
}

function particularsOf({ parts: { work } }: EstimateContext): Particulars | undefined {
  const of = (key: 'length' | 'beam' | 'depth' | 'draught-light') =>
    work.result.number(work.takeOff.measures[key]);
  const [length, beam, depth, draught] = [of('length'), of('beam'), of('depth'), of('draught-light')];
  if (length === undefined || beam === undefined || depth === undefined || draught === undefined)
    return undefined;
  return { length, beam, depth, draught };
}

/** A length in the reader's unit, rounded to be read. */
function lengthWords(context: EstimateContext, value: number): string {
  const shown = inMeasures(value.toFixed(3), 'm', context.measures);
  return `${shownNumber(shown.value, Math.min(1, decimalsFor(shown.value)))} ${unitWords(shown.unit)}`;
}

/** The ship to scale, afloat and at rest, from particulars and compartments. */
export function shipPicture(context: EstimateContext): ShipPicture | undefined {
  const found = particularsOf(context);
  const { project } = context.evaluation;
  const waterDepth = given(project.site.waterDepth, 'm');
  const required = given(project.site.clearanceRequired, 'm');
  if (found === undefined || waterDepth === undefined || required === undefined) return undefined;
  const extent = isOption(context, 'topside-extent');
  const highest = highestStaying(found.depth, extent, heightAllowed(project));
  const parts = topsideParts(found, extent);
  const clear = waterDepth - highest;
  const say = (value: number) => lengthWords(context, value);
  const compartments = drawnCompartments(context);
  return {
    ...found,
    blockCoefficient: 0.7,
    waterDepth,
    highestStaying: highest,
    parts,
    compartments,
    openings: openings(context),
    vents: vents(context),
    ...axisOf(context, found, waterDepth, Math.max(...parts.map(part => part.top), found.depth)),
    afloat: `Afloat, draught light ${say(found.draught)}`,
    atRest: `At rest on the seabed, ${say(waterDepth)} down`,
    clearance: `${say(clear)} clear`,
    clearanceRequired: required,
    required: `${say(required)} required`,
    isTooLittle: clear < required,
    steps: fillSteps(context.evaluation.upright).legend,
    words: `The ship to scale: ${say(found.length)} long, ${say(found.beam)} wide, ${say(found.depth)} deep, afloat at ${say(found.draught)} and at rest in ${say(waterDepth)} of water with ${say(clear)} clear above its highest point.`,
  };
}

/** How far the highest point that stays is under water, and what is asked for. */
export function clearanceOf(
  context: EstimateContext,
  picture: ShipPicture,
): { clear: string; spare: string; isTooLittle: boolean } {
  const { clearanceRequired: required, waterDepth, highestStaying } = picture;
  const clear = waterDepth - highestStaying;
  return {
    clear: lengthWords(context, clear),
    spare: lengthWords(context, Math.abs(clear - required)),
    isTooLittle: clear < required,
  };
}

type Compartment = Project['vessel']['compartments'][number];

/** Where a compartment begins and ends; undefined while one of its ends cannot be read. */
function extentOf({ from, to }: Compartment): { readonly from: number; readonly to: number } | undefined {
  const [start, end] = [given(from, 'm'), given(to, 'm')];
  return start === undefined || end === undefined ? undefined : { from: start, to: end };
}

/** The compartments whose extent is known, each with its number in the list of all. */
function drawnCompartments({
  evaluation: { project, upright },
}: EstimateContext): readonly DrawnCompartment[] {
  const ordered = project.vessel.compartments.toSorted((a, b) => Number(b.from.value) - Number(a.from.value));
  const fills = fillSteps(upright);
  return ordered.flatMap((one, place) => {
    const extent = extentOf(one);
    const [bottom, top] = [given(one.bottom, 'm'), given(one.top, 'm')];
    if (extent === undefined || bottom === undefined || top === undefined) return [];
    const { id, title } = one;
    return [{ id, title, number: String(place + 1), ...extent, bottom, top, step: fills.step(id) }];
  });
}

/** The openings of a compartment, spread along it, each a square of its area. */
function openings({ evaluation: { project } }: EstimateContext): readonly DrawnOpening[] {
  return project.vessel.compartments.flatMap(one => {
    const extent = extentOf(one);
    if (extent === undefined) return [];
    const all = one.openings.filter(opening => opening.side !== 'bottom');
    const count = all.reduce((sum, opening) => sum + opening.count, 0);
    let drawn = 0;
    return all.flatMap(opening => {
      const [area, height] = [given(opening.area, 'm2'), given(opening.centre, 'm')];
      if (area === undefined || height === undefined) return [];
      return Array.from({ length: opening.count }, (_, copy): DrawnOpening => {
        drawn += 1;
        return {
          id: `${one.id}-${opening.id}-${copy}`,
          compartment: one.id,
          at: extent.from + ((extent.to - extent.from) * (drawn - 0.5)) / count,
          height,
          size: Math.sqrt(Math.max(0, area / opening.count)),
          side: opening.side,
        };
      });
    });
  });
}

function vents({ evaluation: { project } }: EstimateContext): readonly DrawnOpening[] {
  return project.vessel.compartments.flatMap(one =>
    one.vents.flatMap((vent, place): DrawnOpening[] => {
      const extent = extentOf(one);
      const height = given(vent.centre, 'm');
      if (extent === undefined || height === undefined) return [];
      const at = extent.from + ((extent.to - extent.from) * (place + 0.5)) / one.vents.length;
      return [{ id: `${one.id}-vent-${place}`, compartment: one.id, at, height, size: 1, side: 'both' }];
    }),
  );
}

const STEPS = [1, 2, 5, 10, 20, 25, 50, 100];

/** Ticks of the height axis in the reader's unit, from the highest point down to the seabed. */
function axisOf(
  context: EstimateContext,
  found: Particulars,
  waterDepth: number,
  top: number,
): Pick<ShipPicture, 'axis' | 'axisUnit'> {
  const unit = context.measures === 'us' ? 'ft' : 'm';
  const perMetre = amountIn(quantity('1', 'm'), unit);
  const above = (top - found.draught) * perMetre;
  const below = waterDepth * perMetre;
  const step = STEPS.find(size => (above + below) / size <= 9) ?? 200;
  const ups = Array.from({ length: Math.floor(above / step) }, (_, at) => (at + 1) * step).reverse();
  const downs = Array.from({ length: Math.floor((below - step * 0.45) / step) + 1 }, (_, at) => at * step);
  return {
    axisUnit: unit,
    axis: [
      ...ups.map(value => ({ at: value / perMetre, text: String(value) })),
      ...downs.map(value => ({ at: -value / perMetre, text: String(value) })),
      { at: -waterDepth, text: shownNumber(below.toFixed(2), 0), strong: true as const },
    ],
  };
}
