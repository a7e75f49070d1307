import { BASES, lowerFirst, sourceWithYear, upperFirst, type Figure } from '../../base';
import { surveyOf } from '../../evaluation';
import type { EstimateContext } from '../context';
import { unitWords } from '../measures';
import { printed, roundText } from '../number-text';
import type { WhyRow, WhyRows } from '../rows';
import { lineParts, sumRows } from '../why-sums';
import { familyOfItem } from './cost';
import { shippedIntake } from './intake';
import { heldAgainst } from './laboratory';
import { limitWords } from './trip-point-table';

type Answer = (context: EstimateContext, rest: string) => WhyRows | undefined;

function frame(id: string, title: string, text: string, unit: string, said: string): Omit<WhyRows, 'rows'> {
  return {
    id,
    title,
    path: 'Materials',
    value: { text, unit },
    words: said,
    usedBy: [],
    bases: BASES,
    home: 'materials',
  };
}

function givenRow(figure: Figure, said: string): WhyRow {
  return {
    depth: 0,
    operator: '=',
    value: {
      text: printed(figure.value),
      unit: unitWords(figure.unit),
      basis: figure.basis,
      source: sourceWithYear(figure),
    },
    words: said,
  };
}

/** The threshold of a rule: what it says, when somebody last read it. */
const tripWhy: Answer = ({ evaluation }, id) => {
  const point = evaluation.library.tripPoints.find(one => one.id === id);
  if (point === undefined) return undefined;
  const { figure, title, trips, rule, consequence, checkedOn } = point;
  const limit = limitWords(point);
  return {
    ...frame(
      `trip:${id}`,
      title,
      limit.text,
      limit.unit,
      `${rule}: ${trips} this, ${lowerFirst(consequence)}. Last compared with the rule on ${checkedOn}.`,
    ),
    rows: [{ ...givenRow(figure, 'limit of the rule'), value: { ...givenRow(figure, '').value, ...limit } }],
  };
};

const percent = (share: number) => roundText((share * 100).toFixed(4), 0);

/** How much of a material the ship is taken to carry. */
const presenceWhy: Answer = ({ evaluation }, id) => {
  const material = evaluation.library.materials.find(one => one.id === id);
  const presence = surveyOf(evaluation.project, evaluation.library).presence.get(id);
  if (material === undefined || presence === undefined) return undefined;
  const { low, likely, high, basis, source, year, decidedBy } = presence;
  const span = high - low;
  return {
    ...frame(
      `presence:${id}`,
      `${material.title}: share present`,
      percent(likely),
      '% of what a full ship of its era carries',
      basis === 'surveyed'
        ? 'The laboratory decided it.'
        : decidedBy === undefined
          ? 'It has no rule by year; it is found on ships of any age.'
          : `The year ${decidedBy} decides it, until a survey does.`,
    ),
    rows: [
      {
        depth: 0,
        operator: '=',
        value: {
          text: percent(likely),
          unit: '%',
          basis,
          source: sourceWithYear({ source, year }),
        },
        words: 'likely share',
        range: {
          low: percent(low),
          high: percent(high),
          at: span <= 0 ? 0.5 : Math.min(1, Math.max(0, (likely - low) / span)),
        },
      },
    ],
  };
};

/** A laboratory result beside its rule. */
const laboratoryWhy: Answer = ({ evaluation }, rest) => {
  const result = evaluation.project.survey.laboratory[Number(rest)];
  const held = result === undefined ? undefined : heldAgainst(evaluation.library.tripPoints, result);
  if (result === undefined || held === undefined) return undefined;
  const { point } = held;
  return {
    ...frame(
      `laboratory:${rest}`,
      `Sample ${result.sample}, ${result.analyte}`,
      result.result,
      result.unit,
      `${upperFirst(held.words)}: a result trips ${point.trips} the limit.`,
    ),
    rows: [
      {
        depth: 0,
        operator: '=',
        value: {
          text: result.result,
          unit: result.unit,
          basis: 'surveyed',
          source: `Laboratory report, ${result.date}`,
        },
        words: 'as the laboratory wrote it',
      },
      {
        depth: 0,
        operator: '',
        value: {
          text: printed(point.figure.value),
          unit: unitWords(point.figure.unit),
          why: `trip:${point.id}`,
        },
        words: point.title,
      },
    ],
  };
};

const intakeWhy: Answer = (_context, id) => {
  const row = shippedIntake().find(one => one.item === id);
  if (row === undefined) return undefined;
  return {
    ...frame(
      `intake:${id}`,
      'Range while a paper is unknown',
      percent(Number(row.widening.value)),
      '% of the likely amount, below and above',
      'An unknown answer widens the ranges of these families; an answer of yes or no does not.',
    ),
    rows: [givenRow(row.widening, 'share of the likely amount')],
  };
};

/** While nothing has a date nothing has a price. */
const WAITING = [{ cents: undefined, words: 'all lines wait for the schedule' }];

const familyWhy: Answer = (context, id) => {
  const { library } = context.evaluation;
  const family = library.families.find(one => one.id === id);
  if (family === undefined && id !== 'all') return undefined;
  const lines = (context.summary?.lines ?? []).filter(line => {
    const of = familyOfItem(context, line.id);
    return of !== undefined && (id === 'all' || of === id);
  });
  const rows = sumRows(
    `family:${id}`,
    `Clean-up of ${family === undefined ? 'all families' : lowerFirst(family.title)}`,
    'The lines that meet the goal of a material of the family. A line counts for the first material it meets.',
    context.summary === undefined ? WAITING : lineParts(lines),
  );
  return { ...rows, path: 'Materials, sum' };
};

const ANSWERS: Readonly<Record<string, Answer>> = {
  trip: tripWhy,
  presence: presenceWhy,
  laboratory: laboratoryWhy,
  intake: intakeWhy,
  family: familyWhy,
};

/** The derivation of a figure of the Materials view. */
export function materialsWhy(context: EstimateContext, id: string): WhyRows | undefined {
  const at = id.indexOf(':');
  return at < 0 ? undefined : ANSWERS[id.slice(0, at)]?.(context, id.slice(at + 1));
}
