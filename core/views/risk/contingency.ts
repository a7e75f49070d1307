import { at } from '../../base';
import type { RiskView } from '../../evaluation';
import { aligned, NOT_APPLYING, words } from '../cells';
import type { Column, Row, Sentence, TableRows } from '../rows';
import { roundedDollars, wholeDollars } from '../whole-dollars';
import { bareDollars, inHundred, signedDollars } from './words';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Line', kind: 'words' },
  { key: 'amount', title: 'Contingency', unit: '$', kind: 'number' },
];

/** Contingency at a confidence, with plan and whole, then line by line in whole dollars that add up to it, and what the document sets aside. */
export function contingencyTable(view: RiskView, titleOf: (line: string) => string): TableRows {
  const { contingencyAtP80, contingency } = view;
  const isBySimulation = contingency.policy === 'confidence' && contingency.amount !== undefined;
  const lines = (isBySimulation ? contingency.lines : contingencyAtP80.lines).toSorted(
    (a, b) => b.amount - a.amount,
  );
  const whole = isBySimulation ? undefined : wholeOf(view);
  const shown = wholeDollars(
    lines.map(one => Math.round(one.amount * 100)),
    whole && whole.reached - whole.plan,
  );
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
    rows: aligned(COLUMNS, [...sumRows(view, sumOf(shown)), ...rows]),
    note: reach,
  };
}

/** Plan and cost that 80 in 100 runs stay within, in the whole dollars in which both stand elsewhere; undefined where nothing is missing. */
function wholeOf({ cost, contingencyAtP80 }: RiskView): { plan: number; reached: number } | undefined {
  const { amount, budget, lines } = contingencyAtP80;
  const isWhole = Math.abs(sumOf(lines.map(one => one.amount)) - amount) < 0.005;
  if (cost.plan === undefined || amount <= 0 || !isWhole) return undefined;
  return {
    plan: roundedDollars(Math.round(cost.plan * 100)),
    reached: roundedDollars(Math.round(budget * 100)),
  };
}

/** Plan, contingency of all lines, and both together: first, since the lines are many. The contingency alone where it is nothing. */
function sumRows({ cost }: RiskView, contingency: number): readonly Row[] {
  const row = (id: string, title: string, amount: number, why?: string): Row => ({
    id,
    kind: 'total',
    cells: {
      title: words(title),
      amount: { text: bareDollars(amount), ...(why === undefined ? {} : { why }) },
    },
  });
  const all = row('total', 'Contingency, all lines together', contingency);
  if (cost.plan === undefined || contingency === 0) return [all];
  const plan = roundedDollars(Math.round(cost.plan * 100));
  return [
    row('plan', 'Total of the plan', plan, 'sums/total'),
    all,
    row('whole', 'Plan and contingency', plan + contingency),
  ];
}

function sumOf(amounts: readonly number[]): number {
  return amounts.reduce((sum, amount) => sum + amount, 0);
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
