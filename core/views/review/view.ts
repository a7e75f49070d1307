import {
  classOf,
  historyView,
  ownTrials,
  reviewRows,
  type Evaluation,
  type HistoryView,
} from '../../evaluation';
import type { ReviewRow } from '../../review';
import { aligned, NOT_APPLYING, words } from '../cells';
import { percentText } from '../bid/received';
import type { EstimateContext } from '../context';
import { datesSaid } from '../dates-said';
import { asSentence } from '../finding-words';
import { dollars, roundText } from '../number-text';
import type { Column, Row, Sentence, Shown, TableRows } from '../rows';
import { recordTables } from './record';
import type { PracticeGuide, ReviewView } from './rows';

const KNOWN = new WeakMap<Evaluation, { rows: readonly ReviewRow[]; history: HistoryView }>();

/** The quality review and the past hulls of an evaluation, worked out once. */
export function reviewOf(evaluation: Evaluation): { rows: readonly ReviewRow[]; history: HistoryView } {
  const known = KNOWN.get(evaluation) ?? { rows: reviewRows(evaluation), history: historyView(evaluation) };
  KNOWN.set(evaluation, known);
  return known;
}

/** The quality review, the class of the estimate, and what past hulls grew by. */
export function reviewView(context: EstimateContext): ReviewView {
  const { rows, history } = reviewOf(context.evaluation);
  const counted = (standing: ReviewRow['standing']) => rows.filter(row => row.standing === standing).length;
  return {
    practicesSentence: [
      `Of ${rows.length} practices ${counted('met')} are met, ${counted('partly')} partly, ${counted('not met')} not; ${counted('cannot tell')} cannot be told. ${trialWords(context)}`,
    ],
    guides: guides(rows),
    ...classWords(context),
    growthSentence: growthSentence(history),
    growth:
      history.growth === undefined
        ? undefined
        : {
            past: history.cases.map(one => ({ at: one.factor, text: one.hullClass })),
            own: { at: history.growth.factor, text: 'this budget' },
          },
    cases: caseTable(history),
    likeHulls: likeTable(history),
    recordSentence: recordSentence(context),
    record: recordTables(context),
  };
}

/** Whether the trials under Risk were looked at. */
function trialWords({ evaluation }: EstimateContext): string {
  if (evaluation.trials === undefined) return 'No trials were looked at: they are run under Risk.';
  return ownTrials(evaluation) !== undefined
    ? 'The trials run under Risk were looked at.'
    : 'The trials run under Risk were of an earlier plan and are not looked at.';
}

function recordSentence({ evaluation: { project } }: EstimateContext): Sentence {
  const { approval, baseline } = project.record ?? {};
  const agreed =
    approval === undefined
      ? 'Nobody has agreed to this estimate yet'
      : `${approval.by} agreed to this estimate`;
  return [`${agreed}; ${baseline === undefined ? 'no plan is' : 'a plan is'} kept to compare with.`];
}

/** Sentences of evidence shown before the rest is only counted. */
const SHOWN = 3;

function guides(rows: readonly ReviewRow[]): readonly PracticeGuide[] {
  return [...new Set(rows.map(row => row.guide))].map(title => {
    const own = rows.filter(row => row.guide === title);
    const met = own.filter(row => row.standing === 'met').length;
    return {
      title,
      counts: `${met} of ${own.length} met`,
      lines: own.map(({ practiceId, practice, standing, evidence, remedy }) => ({
        id: practiceId,
        practice,
        standing,
        evidence: evidence.slice(0, SHOWN).map(one => datesSaid(asSentence(one))),
        more: evidence.length > SHOWN ? `${evidence.length - SHOWN} more` : '',
        remedy: asSentence(remedy),
      })),
    };
  });
}

function classWords({ summary }: EstimateContext): Pick<ReviewView, 'classSentence' | 'classNote'> {
  const found = summary?.byBasis === undefined ? undefined : classOf(summary.byBasis);
  if (found === undefined)
    return { classSentence: ['The class of the estimate cannot be told yet.'], classNote: '' };
  const share = { text: percentText(found.share), why: 'basis:unchecked' };
  const end = (one: { narrow: number; wide: number }) =>
    `${roundText((Math.abs(one.narrow) * 100).toFixed(4), 0)} to ${roundText((Math.abs(one.wide) * 100).toFixed(4), 0)} %`;
  return {
    classSentence: [
      `It is a class ${found.estimateClass} estimate: `,
      share,
      ' of the money is surveyed or quoted for this ship.',
    ],
    classNote: `By the published classes such an estimate may come out ${end(found.low)} too high or ${end(found.high)} too low; it is for ${found.use}. Source: ${found.source}.`,
  };
}

function growthSentence({ growth, total }: HistoryView): Sentence {
  if (growth === undefined || total === undefined)
    return ['Set a contingency to see it beside what past hulls grew by.'];
  return [
    `Past hulls grew by a middle factor of ${roundText(growth.median.toFixed(4), 2)}; this budget allows `,
    { text: roundText(growth.factor.toFixed(4), 2), why: 'sums/budget' },
    growth.isBelowMedian ? ', which is less.' : '.',
  ];
}

const CASE_COLUMNS: readonly Column[] = [
  { key: 'hull', title: 'Past hull', kind: 'words' },
  { key: 'length', title: 'Length', unit: 'ft', kind: 'number' },
  { key: 'factor', title: 'Grew by', unit: 'times', kind: 'number' },
  { key: 'cost', title: 'This estimate alike', unit: '$', kind: 'number' },
  { key: 'what', title: 'From what to what', kind: 'words' },
  { key: 'source', title: 'Source', kind: 'words', wide: true },
];

const lengthCell = (feet: number | undefined, why: string): Shown =>
  feet === undefined ? NOT_APPLYING : { text: String(feet), why };

function caseTable({ cases }: HistoryView): TableRows {
  const rows = cases.map((one, at): Row => ({
    id: `case-${at}`,
    kind: 'line',
    cells: {
      hull: words(one.hullClass),
      length: lengthCell(one.lengthFeet, `past:case|${at}`),
      factor: { text: roundText(one.factor.toFixed(6), 2), why: `past:case|${at}` },
      cost: { text: dollars(one.cost).replace('$', ''), why: `past:case|${at}` },
      what: words(one.what),
      source: words(one.source),
    },
  }));
  return {
    id: 'growth-cases',
    caption: 'Growth of past hulls',
    columns: CASE_COLUMNS,
    rows: aligned(CASE_COLUMNS, rows),
  };
}

/** How wide a wide band is. */
function wideWords({ low, high, isWide }: NonNullable<HistoryView['band']>): string {
  if (!isWide) return '';
  return ` The highest is ${roundText((high / low).toFixed(4), 0)} times the lowest, so that agreeing with them tells little.`;
}

const LIKE_COLUMNS: readonly Column[] = [
  { key: 'hull', title: 'Past hull alike', kind: 'words' },
  { key: 'length', title: 'Length', unit: 'ft', kind: 'number' },
  { key: 'year', title: 'Sunk', kind: 'words' },
  { key: 'today', title: 'In the money of the estimate', unit: '$', kind: 'number' },
  { key: 'scope', title: 'Of what', kind: 'words' },
  { key: 'source', title: 'Source', kind: 'words', wide: true },
];

function likeTable({ likeHulls, band }: HistoryView): TableRows {
  const rows = likeHulls.map((one, at): Row => ({
    id: one.id,
    kind: 'line',
    cells: {
      hull: words(one.hullClass),
      length: lengthCell(one.lengthFeet, `past:like|${at}`),
      year: words(String(one.sunkYear)),
      today: { text: dollars(one.today).replace('$', ''), why: `past:like|${at}` },
      scope: words(one.scope),
      source: words(one.source),
    },
  }));
  return {
    id: 'like-hulls',
    caption: 'What hulls alike have cost',
    columns: LIKE_COLUMNS,
    rows: aligned(LIKE_COLUMNS, rows),
    ...(band === undefined
      ? {}
      : {
          note: [
            `An estimate between ${dollars(band.low)} and ${dollars(band.high)} agrees with them.${wideWords(band)}`,
          ],
        }),
  };
}
