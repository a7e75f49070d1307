import { at } from '../../base';
import type { RiskView } from '../../evaluation';
import { aligned, NOT_APPLYING, words } from '../cells';
import type { Column, Row, Sentence, TableRows } from '../rows';
import { wholeDollars } from '../whole-dollars';
import { bareDollars, inHundred, signedDollars } from './words';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Line', kind: 'words' },
  { key: 'amount', title: 'Contingency', unit: '$', kind: 'number' },
];

/** Contingency at a confidence, line by line in whole dollars that add up, and what the document sets aside. */
export function contingencyTable(view: RiskView, titleOf: (line: string) => string): TableRows {
  const { contingencyAtP80, contingency } = view;
  const isBySimulation = contingency.policy === 'confidence' && contingency.amount !== undefined;
  const lines = (isBySimulation ? contingency.lines : contingencyAtP80.lines).toSorted(
    (a, b) => b.amount - a.amount,
  );
  const shown = wholeDollars(lines.map(one => Math.round(one.amount * 100)));
  const rows = lines.flatMap(({ line }, place): Row[] => {
    const amount = at(shown, place);
    return amount === 0
      ? []
      : [
          {
            id: line,
            kind: 'line',
            cells: { title: words(titleOf(line)), amount: words(bareDollars(amount)) },
          },
        ];
  });
  const total: Row = {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('Contingency'),
      amount: words(bareDollars(shown.reduce((sum, one) => sum + one, 0))),
    },
  };
  const reach: Sentence =
    contingency.amount === undefined || contingency.reaches === undefined
      ? ['The document sets no contingency aside.']
      : [
          'The document sets ',
          { text: `$${bareDollars(contingency.amount)}`, why: 'sums/budget' },
          ` aside, which reaches ${inHundred(contingency.reaches)} in 100 runs.`,
        ];
  return {
    id: 'contingency',
    caption: `Contingency at ${isBySimulation ? 'the confidence of the document' : '80 in 100 runs'}`,
    columns: COLUMNS,
    rows: aligned(COLUMNS, [...rows, total]),
    note: reach,
  };
}

const SURVEYS: readonly Column[] = [
  { key: 'title', title: 'Survey', kind: 'words' },
  { key: 'cost', title: 'Price', unit: '$', kind: 'number' },
  { key: 'narrowing', title: 'P80 comes closer to P50 by', unit: '$', kind: 'number' },
  { key: 'per', title: 'For each dollar', unit: '$', kind: 'number' },
];

/** What a further survey would be worth. */
export function surveyTable({ surveys }: RiskView): TableRows {
  const rows = surveys.map((survey): Row => ({
    id: survey.input,
    kind: 'line',
    cells: {
      title: words(survey.title),
      cost: words(bareDollars(survey.cost)),
      narrowing: words(signedDollars(survey.narrowing)),
      per: Number.isFinite(survey.perDollar)
        ? words(survey.perDollar.toFixed(1).replace('-', '\u2212'))
        : NOT_APPLYING,
    },
  }));
  return {
    id: 'surveys',
    caption: 'What more survey would be worth',
    columns: SURVEYS,
    rows: aligned(SURVEYS, rows),
  };
}
