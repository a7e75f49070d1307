import type { Finding } from '../base';
import type { EstimateInput } from '../estimate';
import {
  sizedOpenings,
  uprightScreen,
  type UprightInput,
  type UprightResult,
  type UprightSizing,
} from '../flooding';
import type { Project } from '../project';
import { Sheet, evaluateSheet, type Given } from '../sheet';
import { measuresOf, saidIn, type Measures } from '../units';
import { takeOff, type OpeningMeasure } from '../vessel';
import type { EstimateParts } from './evaluate';
import { atDocument, weightListFindings } from './upright-findings';
import { uprightInput } from './upright-input';
import { withMeasurementPrice } from './upright-measurements';

/** Answers already given, by their whole input: the same hull and weights give the same answer. */
const SCREENED = new Map<string, UprightResult>();
const SIZED = new Map<string, readonly UprightSizing[]>();
const MOST_KEPT = 24;

function kept<T>(answers: Map<string, T>, input: UprightInput, answer: (input: UprightInput) => T): T {
  const key = JSON.stringify(input);
  const known = answers.get(key) ?? answer(input);
  answers.delete(key);
  answers.set(key, known);
  const [oldest] = answers.keys();
  if (answers.size > MOST_KEPT && oldest !== undefined) answers.delete(oldest);
  return known;
}

/**
 * The upright screen of a scenario, with the weights that its work items take off and put aboard, and the price of
 * the measurement that would settle it. Screening only.
 */
export function screenUpright(project: Project, parts: EstimateParts): UprightResult | undefined {
  const screenInput = screenedInput(project, parts);
  if (screenInput === undefined) return undefined;
  const found = kept(SCREENED, screenInput, uprightScreen);
  const findings = [
    ...found.findings.map(finding => atDocument(finding, screenInput)),
    ...weightListFindings(project, screenInput.displacement.likely),
  ].map(finding => inMeasures(finding, measuresOf(project.vessel.length.unit)));
  return withMeasurementPrice({ ...found, findings }, parts);
}

/** A finding of the screen, which counts in metric units, in the measures in which the ship is given. */
function inMeasures(finding: Finding, measures: Measures): Finding {
  const { message, meaning, remedy } = finding;
  return {
    ...finding,
    message: saidIn(message, measures),
    ...(meaning === undefined ? {} : { meaning: saidIn(meaning, measures) }),
    remedy: saidIn(remedy, measures),
  };
}

/** The input of the screen of an estimate: weights as its work moves them, openings as its work cuts them. */
export function screenedInput(
  project: Project,
  { input, work }: Pick<EstimateParts, 'input' | 'work'>,
): UprightInput | undefined {
  const plain = uprightInput(project, input, work, undefined);
  const moved = uprightInput(project, input, work, work);
  return plain && moved && { ...moved, sizes: kept(SIZED, plain, sizedOpenings) };
}

const MEASURED: Readonly<
  Record<
    Exclude<OpeningMeasure, 'inner-opening-count'>,
    { readonly unit: 'each' | 'm'; readonly of: (size: UprightSizing) => number; readonly decimals: number }
  >
> = {
  'opening-count': { unit: 'each', of: size => size.openings, decimals: 0 },
  'opening-cut-length': { unit: 'm', of: size => size.cutLength, decimals: 1 },
  'vent-count': { unit: 'each', of: size => size.ventCount, decimals: 0 },
};

/**
 * The estimate's input with its openings sized for an even sinking in the target time: floats of the sizing, rounded
 * to the decimals of their quantity before they enter the sheet. Without a hull to size the input stays as it is.
 */
export function withSizedOpenings(project: Project, input: EstimateInput): EstimateInput {
  const sheet = new Sheet('take-off');
  const taken = takeOff(sheet, input.ship);
  const screenInput = uprightInput(
    project,
    input,
    { result: evaluateSheet(sheet), takeOff: taken },
    undefined,
  );
  const sizing = screenInput === undefined ? [] : kept(SIZED, screenInput, sizedOpenings);
  if (sizing.length === 0) return input;
  const minutes = Math.round(Math.max(...sizing.map(size => size.fillMinutes)));
  const openings = Object.fromEntries(
    Object.entries(MEASURED).map(([key, { unit, of, decimals }]): [string, Given] => {
      const sum = sizing.reduce((total, size) => total + of(size), 0);
      return [
        key,
        {
          value: sum.toFixed(decimals),
          unit,
          basis: 'judgement',
          source: `Sized so that each compartment fills in about ${minutes} minutes, both sides alike; screening, not a naval architect’s study`,
          place: '/vessel/compartments',
        },
      ];
    }),
  );
  return { ...input, ship: { ...input.ship, openings } };
}
