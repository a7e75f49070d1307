import { UNCHECKED_BASES, withId } from '../../base';
import { ELEMENTS, sumCents, type EstimateLine } from '../../cash-flow';
import { review, type GrowthData, type ReviewInput, type ReviewLine, type ReviewRow } from '../../review';
import type { SimulationResult } from '../../risk';
import { shippedReviewData } from '../estimate-class';
import type { Evaluation } from '../evaluate';
import { rangedGivens } from '../risk';
import { bookBasis, paidHours, type BookBasis } from './book-lines';
import { lineWords } from './line-words';
import { priceFactors } from './price-factors';
import { recordOfReview, simulationOfReview, type ReviewTrials } from './review-record';
import { reviewSchedule } from './review-schedule';
import { shippedBookRules, type BookRules } from './shipped-rules';

/**
 * The quality review of an evaluation, practice by practice; nothing while the estimate is absent.
 * @param simulation of the same evaluation; without it the trials that the evaluation was given count, where they were
 * of this total, contingency and finish. Without any, what only a simulation can tell is told as not done.
 */
export function reviewRows(
  evaluation: Evaluation,
  simulation?: SimulationResult,
  rules: BookRules = shippedBookRules(),
): ReviewRow[] {
  const { basis } = bookBasis(evaluation);
  if (basis === undefined) return [];
  return review(reviewInput(basis, rules.growth, simulation), shippedReviewData(), rules.growth);
}

/** An evaluation, its record and a simulation of it as what the quality review looks at. */
export function reviewInput(
  basis: BookBasis,
  growth: GrowthData,
  simulation?: SimulationResult,
): ReviewInput {
  const { project } = basis.evaluation;
  const { summary } = basis;
  const { priceDate, fixedPriceYear } = project.rates;
  const contingency = summary.contingency?.cents;
  const total = summary.total?.cents ?? 0;
  const ranged = rangedItems(basis);
  return {
    lines: basis.lines.map(line => reviewLine(line, basis, ranged.has(line.id))),
    total,
    ...(contingency !== undefined && { contingency }),
    priceYear: fixedPriceYear ?? Number(priceDate.slice(0, 4)),
    isEscalated: fixedPriceYear === undefined,
    definition: definitionOf(basis),
    schedule: reviewSchedule(basis),
    madeOn: priceDate,
    statusDate: project.statusDate ?? basis.evaluation.today,
    hull: reviewHull(basis, growth),
    priceFactors: priceFactors(basis),
    ...recordOfReview(project.record),
    ...(simulation === undefined
      ? ownTrials(basis.evaluation)?.found
      : simulationOfReview(simulation, total, contingency)),
  };
}

/** What the trials of an evaluation tell the review of it; nothing where there is no estimate. */
export function trialsOfReview(
  evaluation: Evaluation,
  simulation: SimulationResult,
): ReviewTrials | undefined {
  const against = heldAgainst(evaluation);
  if (against?.total === undefined) return undefined;
  const { total, contingency, finish } = against;
  return { total, contingency, finish, found: simulationOfReview(simulation, total, contingency) };
}

/** The trials that an evaluation was given, where they were held against its own total, contingency and finish. */
export function ownTrials(evaluation: Evaluation): ReviewTrials | undefined {
  const { trials } = evaluation;
  const now = heldAgainst(evaluation);
  const isOwn =
    trials?.total === now?.total &&
    trials?.contingency === now?.contingency &&
    trials?.finish === now?.finish;
  return isOwn ? trials : undefined;
}

/** What trials are held against: cents, and the day of the finish. */
function heldAgainst(evaluation: Evaluation) {
  const { basis } = bookBasis(evaluation);
  if (basis === undefined) return undefined;
  const { summary, parts } = basis;
  return {
    total: summary.total?.cents,
    contingency: summary.contingency?.cents,
    finish: parts.schedule.finish,
  };
}

/** The items that a given with a range moves, in cost or in time. */
function rangedItems({ parts }: BookBasis): ReadonlySet<string> {
  return new Set(rangedGivens(parts).flatMap(given => given.items));
}

/** The parts of the money an obligation has after the finish are its nature, not a fault of the schedule. */
function reviewLine(line: EstimateLine, basis: BookBasis, isRanged: boolean): ReviewLine {
  const { evaluation, parts, summary } = basis;
  const words = lineWords(withId(summary.lines, line.id), parts.money);
  const priceYear = Number(evaluation.project.rates.priceDate.slice(0, 4));
  const [first, last] = [line.months[0]?.month, line.months.at(-1)?.month];
  const isUnchecked = UNCHECKED_BASES.includes(line.basis);
  return {
    id: line.id,
    stage: line.stage,
    title: line.title,
    total: line.total,
    elementSum: sumCents(ELEMENTS.map(element => line.amounts[element])),
    hours: paidHours(basis, line.id),
    basis: line.basis,
    source: line.source,
    ...(line.workings !== undefined && { workings: line.workings }),
    priceYear: line.year ?? priceYear,
    isNormalised: true,
    ...(isUnchecked && words.given !== undefined && { assumption: `${words.given}; ${line.source}` }),
    isRanged,
    isCrossChecked: isCheckedTwice(line.id, evaluation),
    ...(first !== undefined && last !== undefined && { firstMonth: first, lastMonth: last }),
    ...(line.stage === 'after-sinking' && { followsFinish: true }),
  };
}

/** A line that was worked out and quoted as well, or worked out a second way, is checked a second way. */
function isCheckedTwice(lineId: string, { project }: Evaluation): boolean {
  const checks = project.record?.crossChecks ?? [];
  return (
    checks.some(check => check.item === lineId) ||
    project.quotes.some(quote => quote.covers.some(cover => cover.item === lineId))
  );
}

function definitionOf({ evaluation }: BookBasis): ReviewInput['definition'] {
  const { survey, vessel } = evaluation.project;
  const papers = Object.entries(survey.intake).map(([id, answer]) => ({
    title: id.replaceAll('-', ' '),
    isKnown: answer === 'yes',
  }));
  const particulars = (['beam', 'depth', 'draughtLight', 'lightship'] as const).map(name => ({
    title: PARTICULARS[name],
    isKnown: vessel[name] !== undefined,
  }));
  return [...papers, ...particulars];
}

const PARTICULARS = {
  beam: 'beam',
  depth: 'depth',
  draughtLight: 'light draught',
  lightship: 'lightship',
} as const;

const FEET_A_METRE = 1 / 0.3048;

/** The hull by class and length; the recorded class that begins with the words of the hull type stands for it. */
export function reviewHull({ parts }: BookBasis, growth: GrowthData): ReviewInput['hull'] {
  const { ship } = parts.input;
  const words = ship.type.id.replaceAll('-', ' ');
  const recorded = growth.history.find(hull => hull.hullClass.startsWith(words));
  const metres = ship.particulars.length?.value;
  return {
    hullClass: recorded?.hullClass ?? words,
    ...(metres !== undefined && { lengthFeet: Math.round(Number(metres) * FEET_A_METRE) }),
  };
}
