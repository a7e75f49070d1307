import { UNCHECKED_BASES } from '../../base';
import { ELEMENTS, sumCents, type EstimateLine } from '../../cash-flow';
import { review, type GrowthData, type ReviewInput, type ReviewLine, type ReviewRow } from '../../review';
import { shippedReviewData } from '../estimate-class';
import type { Evaluation } from '../evaluate';
import { bookBasis, type BookBasis } from './book-lines';
import { lineWords } from './line-words';
import { priceFactors } from './price-factors';
import { reviewSchedule } from './review-schedule';
import { shippedBookRules, type BookRules } from './shipped-rules';

/** What a simulation and other people add to a review; what was not done is left out. */
export type ReviewExtras = Partial<
  Pick<ReviewInput, 'approval' | 'earlier' | 'drivers' | 'planPercentile' | 'chanceOfFinish' | 'independent'>
>;

/** The quality review of an evaluation, practice by practice; nothing while the estimate is absent. */
export function reviewRows(
  evaluation: Evaluation,
  extras: ReviewExtras = {},
  rules: BookRules = shippedBookRules(),
): ReviewRow[] {
  const { basis } = bookBasis(evaluation);
  if (basis === undefined) return [];
  return review({ ...reviewInput(basis, rules.growth), ...extras }, shippedReviewData(), rules.growth);
}

/** An evaluation as what the quality review looks at. */
export function reviewInput(basis: BookBasis, growth: GrowthData): ReviewInput {
  const { project } = basis.evaluation;
  const { summary } = basis;
  const schedule = reviewSchedule(basis);
  const { priceDate, fixedPriceYear } = project.rates;
  const contingency = summary.contingency?.cents;
  return {
    lines: basis.lines.map(line => reviewLine(line, basis)),
    total: summary.total?.cents ?? 0,
    ...(contingency !== undefined && { contingency }),
    priceYear: fixedPriceYear ?? Number(priceDate.slice(0, 4)),
    isEscalated: fixedPriceYear === undefined,
    excludedStages: [],
    definition: definitionOf(basis),
    ...(schedule && { schedule }),
    madeOn: priceDate,
    statusDate: project.statusDate ?? basis.evaluation.today,
    hull: hullOf(basis, growth),
    priceFactors: priceFactors(basis),
  };
}

/** The parts of the money an obligation has after the finish are its nature, not a fault of the schedule. */
function reviewLine(line: EstimateLine, basis: BookBasis): ReviewLine {
  const { evaluation, parts, summary } = basis;
  const own = summary.lines.find(one => one.id === line.id);
  const words = own && lineWords(own, parts.money);
  const priceYear = Number(evaluation.project.rates.priceDate.slice(0, 4));
  const months = line.stage === 'after-sinking' ? [] : line.months;
  const [first, last] = [months[0]?.month, months.at(-1)?.month];
  const isUnchecked = UNCHECKED_BASES.includes(line.basis);
  return {
    id: line.id,
    stage: line.stage,
    title: line.title,
    total: line.total,
    elementSum: sumCents(ELEMENTS.map(element => line.amounts[element])),
    hours: own?.hours ?? 0,
    basis: line.basis,
    source: line.source,
    ...(line.workings !== undefined && { workings: line.workings }),
    priceYear: line.year ?? priceYear,
    isNormalised: true,
    ...(isUnchecked && words?.given !== undefined && { assumption: `${words.given}; ${line.source}` }),
    isCrossChecked: isQuoted(line.id, evaluation),
    ...(first !== undefined && last !== undefined && { firstMonth: first, lastMonth: last }),
  };
}

/** A line that was worked out and quoted as well is checked a second way. */
function isQuoted(lineId: string, { project }: Evaluation): boolean {
  return project.quotes.some(quote => quote.covers.some(cover => cover.item === lineId));
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
function hullOf({ parts }: BookBasis, growth: GrowthData): ReviewInput['hull'] {
  const { ship } = parts.input;
  const words = ship.type.id.replaceAll('-', ' ');
  const recorded = growth.history.find(hull => hull.hullClass.startsWith(words));
  const metres = ship.particulars.length?.value;
  return {
    hullClass: recorded?.hullClass ?? words,
    ...(metres !== undefined && { lengthFeet: Math.round(Number(metres) * FEET_A_METRE) }),
  };
}
