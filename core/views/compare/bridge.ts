import { at, lowerFirst, withId } from '../../base';
import { summaryOf, type Bridge, type Comparison } from '../../scenario';
import { aligned, words } from '../cells';
import { dollarChange } from '../number-text';
import { roundedDollars, wholeDollars } from '../whole-dollars';
import type { Column, Row } from '../rows';
import { bareDollars } from '../risk/words';
import type { BridgeBar, BridgeRows } from './rows';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Step', kind: 'words' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
];

/** A bridge before its amounts open. */
export type Bridged = Omit<BridgeRows, 'words'> & { readonly words: string };

/** Each bridge as a picture and a table in whole dollars that add up. */
export function bridgeRows(comparison: Comparison): readonly Bridged[] {
  const ends = endsOf(comparison);
  return comparison.bridges.map(bridge => oneBridge(ends, bridge));
}

function oneBridge(ends: readonly End[], { from, to, steps }: Bridge): Bridged {
  const [first, second] = [withId(ends, from), withId(ends, to)];
  const difference = second.amount - first.amount;
  const amounts = wholeDollars(
    steps.map(step => step.amount.cents),
    difference,
  );
  const named = steps.map((step, place) => ({
    id: step.key,
    title: step.title,
    amount: at(amounts, place),
  }));
  const signed = (amount: number) => (amount === 0 ? '0' : dollarChange(amount * 100).replace('$', ''));
  const line = (id: string, title: string, amount: string, kind: Row['kind']): Row => ({
    id,
    kind,
    cells: { title: words(title), amount: words(amount) },
  });
  return {
    id: `${from}-${to}`,
    letter: second.letter,
    title: `What separates ${first.letter} from ${second.letter}, $`,
    words: wordsOf(first.letter, second.letter, named, difference),
    bars: bars(first, named, second, signed),
    table: {
      id: `bridge-${to}`,
      caption: `What separates ${first.letter} from ${second.letter}`,
      columns: COLUMNS,
      rows: aligned(COLUMNS, [
        line('from', first.title, bareDollars(first.amount), 'total'),
        ...named.map(step => line(step.id, step.title, signed(step.amount), 'line')),
        line('to', second.title, bareDollars(second.amount), 'total'),
      ]),
      note: [
        'Each step is the average over every order of making the changes, so none depends on coming first.',
        'Rounded to whole dollars that add up; to the cent the steps stand in the report and the workbook.',
      ],
    },
  };
}

/** A scenario at one end of a bridge: its name and its total in whole dollars. */
interface End extends Named {
  readonly letter: string;
}

/** The scenarios with a total: only they are joined by a bridge. */
function endsOf({ evaluations }: Comparison): readonly End[] {
  return evaluations.flatMap(one => {
    const total = summaryOf(one)?.total;
    if (total === undefined) return [];
    const { letter, scenario } = one;
    return [
      { id: scenario.id, letter, title: `${letter} ${scenario.title}`, amount: roundedDollars(total.cents) },
    ];
  });
}

interface Named {
  readonly id: string;
  readonly title: string;
  readonly amount: number;
}

function wordsOf(from: string, to: string, steps: readonly Named[], total: number): string {
  if (steps.length === 0) return `${from} and ${to} cost the same.`;
  const largest = steps.reduce((a, b) => (Math.abs(b.amount) > Math.abs(a.amount) ? b : a));
  const way = total === 0 ? 'as much as' : total > 0 ? 'more than' : 'less than';
  const amount = total === 0 ? '' : ` $${bareDollars(Math.abs(total))}`;
  return `${to} costs${amount} ${way} ${from}; most of it is ${lowerFirst(largest.title)}.`;
}

/** Bars on the scale of the steps; the totals are marks at both ends of it. */
function bars(
  first: Pick<Named, 'title' | 'amount'>,
  steps: readonly Named[],
  last: Pick<Named, 'title' | 'amount'>,
  signed: (amount: number) => string,
): readonly BridgeBar[] {
  let end = 0;
  const spans = steps.map(step => {
    const start = end;
    end += step.amount;
    return { step, start, end };
  });
  const ends = [0, ...spans.map(span => span.end)];
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const place = (sum: number) => (most > least ? (sum - least) / (most - least) : 0);
  return [
    {
      id: 'from',
      title: first.title,
      text: bareDollars(first.amount),
      from: place(0),
      to: place(0),
      kind: 'total',
    },
    ...spans.map((span): BridgeBar => ({
      id: span.step.id,
      title: span.step.title,
      text: signed(span.step.amount),
      from: place(span.start),
      to: place(span.end),
      kind: span.step.amount < 0 ? 'saves' : 'adds',
    })),
    {
      id: 'to',
      title: last.title,
      text: bareDollars(last.amount),
      from: place(end),
      to: place(end),
      kind: 'total',
    },
  ];
}
