import { highestStaying } from '../vessel';
import { isOption, topsideParts } from './topside-parts';
import { amountIn, isUnit, quantity } from '../units';
import type { Figure } from '../base';
import type { EstimateContext } from './context';
import { inMeasures, unitWords } from './measures';
import { decimalsFor, shownNumber } from './number-text';
import type { DrawnCompartment, DrawnOpening, ShipPicture } from './window-rows';
import { fillSteps } from './fill-steps';

/** A given length in metres; undefined when its unit is no length. */
function metres(figure: Figure | undefined): number | undefined {
  return figure !== undefined && isUnit(figure.unit)
    ? amountIn(quantity(figure.value, figure.unit), 'm')
    : undefined;
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
  const waterDepth = metres(project.site.waterDepth);
  const required = metres(project.site.clearanceRequired);
  if (found === undefined || waterDepth === undefined || required === undefined) return undefined;
  const extent = isOption(context, 'topside-extent');
  const highest = highestStaying(found.depth, extent, waterDepth - required);
  const parts = topsideParts(found, extent);
  const clear = waterDepth - highest;
  const say = (value: number) => lengthWords(context, value);
  const compartments = drawnCompartments(context, found);
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
  const required = metres(context.evaluation.project.site.clearanceRequired) ?? 0;
  const clear = picture.waterDepth - picture.highestStaying;
  return {
    clear: lengthWords(context, clear),
    spare: lengthWords(context, Math.abs(clear - required)),
    isTooLittle: clear < required,
  };
}

function drawnCompartments(
  { evaluation: { project, upright } }: EstimateContext,
  found: Particulars,
): readonly DrawnCompartment[] {
  const ordered = project.vessel.compartments.toSorted((a, b) => Number(b.from.value) - Number(a.from.value));
  const fills = fillSteps(upright);
  return ordered.map((one, at) => ({
    id: one.id,
    title: one.title,
    number: String(at + 1),
    from: metres(one.from) ?? 0,
    to: metres(one.to) ?? found.length,
    bottom: metres(one.bottom) ?? 0,
    top: metres(one.top) ?? found.depth,
    step: fills.step(one.id),
  }));
}

/** The openings of a compartment, spread along it, each a square of its area. */
function openings({ evaluation: { project } }: EstimateContext): readonly DrawnOpening[] {
  return project.vessel.compartments.flatMap(one => {
    const [from, to] = [metres(one.from) ?? 0, metres(one.to) ?? 0];
    const all = one.openings.filter(opening => opening.side !== 'bottom');
    const count = all.reduce((sum, opening) => sum + opening.count, 0);
    let drawn = 0;
    return all.flatMap(opening => {
      const area = isUnit(opening.area.unit)
        ? amountIn(quantity(opening.area.value, opening.area.unit), 'm2')
        : 0;
      return Array.from({ length: opening.count }, (_, copy): DrawnOpening => {
        drawn += 1;
        return {
          id: `${one.id}-${opening.id}-${copy}`,
          compartment: one.id,
          at: from + ((to - from) * (drawn - 0.5)) / count,
          height: metres(opening.centre) ?? 0,
          size: Math.sqrt(Math.max(0, area / opening.count)),
          side: opening.side,
        };
      });
    });
  });
}

function vents({ evaluation: { project } }: EstimateContext): readonly DrawnOpening[] {
  return project.vessel.compartments.flatMap(one =>
    one.vents.map((vent, at): DrawnOpening => {
      const [from, to] = [metres(one.from) ?? 0, metres(one.to) ?? 0];
      return {
        id: `${one.id}-vent-${at}`,
        compartment: one.id,
        at: from + ((to - from) * (at + 0.5)) / one.vents.length,
        height: metres(vent.centre) ?? 0,
        size: 1,
        side: 'both',
      };
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
