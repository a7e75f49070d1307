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
  return comparison.bridges.map(bridge => oneBridge(comparison, bridge));
}

function oneBridge({ evaluations }: Comparison, { from, to, steps }: Bridge): Bridged {
  const [first, second] = [from, to].map(id => evaluations.find(one => one.scenario.id === id));
  const [start, end] = [first, second].map(one => roundedDollars((one && summaryOf(one)?.total?.cents) ?? 0));
  const difference = (end ?? 0) - (start ?? 0);
  const amounts = wholeDollars(
    steps.map(step => step.amount.cents),
    difference,
  );
  const named = steps.map((step, at) => ({ id: step.key, title: step.title, amount: amounts[at] ?? 0 }));
  const name = (one: typeof first) => (one === undefined ? '' : `${one.letter} ${one.scenario.title}`);
  const signed = (amount: number) => (amount === 0 ? '0' : dollarChange(amount * 100).replace('$', ''));
  const line = (id: string, title: string, amount: string, kind: Row['kind']): Row => ({
    id,
    kind,
    cells: { title: words(title), amount: words(amount) },
  });
  return {
    id: `${from}-${to}`,
    letter: second?.letter ?? '',
    title: `What separates ${first?.letter ?? ''} from ${second?.letter ?? ''}, $`,
    words: wordsOf(first?.letter ?? '', second?.letter ?? '', named, difference),
    bars: bars(
      { title: name(first), amount: start ?? 0 },
      named,
      { title: name(second), amount: end ?? 0 },
      signed,
    ),
    table: {
      id: `bridge-${to}`,
      caption: `What separates ${first?.letter ?? ''} from ${second?.letter ?? ''}`,
      columns: COLUMNS,
      rows: aligned(COLUMNS, [
        line('from', name(first), bareDollars(start ?? 0), 'total'),
        ...named.map(step => line(step.id, step.title, signed(step.amount), 'line')),
        line('to', name(second), bareDollars(end ?? 0), 'total'),
      ]),
      note: [
        'Each step is the average over every order of making the changes, so none depends on coming first.',
      ],
    },
  };
}

interface Named {
  readonly id: string;
  readonly title: string;
  readonly amount: number;
}

function wordsOf(from: string, to: string, steps: readonly Named[], total: number): string {
  if (steps.length === 0) return `${from} and ${to} cost the same.`;
  const largest = steps.toSorted((a, b) => Math.abs(b.amount) - Math.abs(a.amount))[0];
  const way = total === 0 ? 'as much as' : total > 0 ? 'more than' : 'less than';
  const amount = total === 0 ? '' : ` $${bareDollars(Math.abs(total))}`;
  return `${to} costs${amount} ${way} ${from}; most of it is ${lower(largest?.title ?? '')}.`;
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** Bars on the scale of the steps; the totals are marks at both ends of it. */
function bars(
  first: Pick<Named, 'title' | 'amount'>,
  steps: readonly Named[],
  last: Pick<Named, 'title' | 'amount'>,
  signed: (amount: number) => string,
): readonly BridgeBar[] {
  const ends = [0];
  for (const { amount } of steps) ends.push((ends.at(-1) ?? 0) + amount);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const at = (sum: number) => (most > least ? (sum - least) / (most - least) : 0);
  return [
    {
      id: 'from',
      title: first.title,
      text: bareDollars(first.amount),
      from: at(0),
      to: at(0),
      kind: 'total',
    },
    ...steps.map(({ id, title, amount }, step): BridgeBar => ({
      id,
      title,
      text: signed(amount),
      from: at(ends[step] ?? 0),
      to: at(ends[step + 1] ?? 0),
      kind: amount < 0 ? 'saves' : 'adds',
    })),
    {
      id: 'to',
      title: last.title,
      text: bareDollars(last.amount),
      from: at(ends.at(-1) ?? 0),
      to: at(ends.at(-1) ?? 0),
      kind: 'total',
    },
  ];
}
