import { lowerFirst } from '../../base';
import type { PreparedEstimate, RiskView } from '../../evaluation';
import { printed } from '../number-text';
import { dateWords } from '../schedule-axis';
import { step, type Origin } from '../simulated';
import type { Column, Row, TableRows, WhyRow } from '../rows';
import { inHundred, perCent, simulatedDollars } from './words';

/** So many drivers are named under a figure, and so many givens under a driver. */
const NAMED = 5;
const BACK: readonly WhyRow[] = [
  step({ text: 'the plan', why: 'sums/total' }, 'from which each run departs; its figures open their givens'),
];

/** How the sums of a contingency come about. */
const CONTINGENCY: Readonly<Record<string, string>> = {
  total: 'The cost that so many runs stay within, less the total of the plan: all lines below add up to it.',
  whole: 'The total of the plan and the contingency of all lines together: so many runs stay within it.',
};

type Words = (row: Row) => string;
const COLUMN_WORDS: Readonly<Record<string, Words>> = {
  'percentiles|share': () => 'The runs in 100 that this line speaks of.',
  'percentiles|cost': row =>
    `All runs are put in order of cost. ${row.cells['share']?.text ?? ''} in 100 of them cost this much or less.`,
  'percentiles|range': () =>
    'Another seed would draw other runs. In 95 of 100 such repeats the figure lies between these ends.',
  'percentiles|finish': row =>
    `All runs are put in order of their last day. ${row.cells['share']?.text ?? ''} in 100 of them end by this one.`,
  'percentiles|cash': row =>
    `In ${row.cells['share']?.text ?? ''} of 100 runs the county never lends more than this beyond its own share.`,
  'chances|chance': () => 'The runs in which it is so are counted; here they are of 100.',
  'drivers|share': () =>
    'The runs are made again with it held at its likeliest value. So much of the variance of cost goes away.',
  'drivers|finish': () =>
    'The runs are made again with it held at its likeliest value. So much of the variance of the finish goes away.',
  'drivers|low': () =>
    'Mean cost of the runs with its lowest tenth, or of those in which it does not happen.',
  'drivers|high': () => 'Mean cost of the runs with its highest tenth, or of those in which it happens.',
  'drivers|swing': () => 'Mean cost at its high end less mean cost at its low end.',
  'drives-finish|share': () => 'The runs in which the last day would move if this activity moved.',
  'contingency|amount': row =>
    CONTINGENCY[row.id] ??
    'What the chosen confidence costs above the plan is shared out by how much each line adds in the runs near it.',
  'surveys|cost': () => 'What the survey is said to cost.',
  'surveys|narrowing': () =>
    'The runs are made again with the range that the survey would leave. P80 moves by so much.',
  'surveys|per': () => 'How far P80 moves for each dollar of the survey.',
  'frontier|budget': () =>
    'The least budget with which so many runs end inside both the money and this date. For a plan it is its total.',
  'register|probability': () => 'How likely the event is in one run, as the register says.',
  'register|cost': () =>
    'The likely cost when it happens, as the register says. Each run draws from its range.',
  'register|delay': () =>
    'The likely delay when it happens, as the register says. Each run draws from its range.',
  'register|share': () =>
    'The runs are made again without the event. So much of the variance of cost goes away.',
  'register|price': () => 'What it costs to do something about it, as the register says.',
  'register|mean': () => 'The runs are made again with the measure taken. The mean cost moves by so much.',
  'register|p80': () => 'The runs are made again with the measure taken. P80 moves by so much.',
};

/** The runs, the seed, the plan and the drivers behind a figure of the simulation. */
export function runSteps(
  view: RiskView,
  prepared: PreparedEstimate | undefined,
  by: 'cost' | 'finish',
): readonly WhyRow[] {
  const plan =
    by === 'cost'
      ? step(
          { text: simulatedDollars(view.cost.plan ?? view.cost.mean), why: 'sums/total' },
          'the plan, from which each run departs',
        )
      : step(
          { text: dateWords(view.finish.plan), why: 'schedule:finish' },
          'the plan, from which each run departs',
        );
  const share = (one: RiskView['drivers'][number]) =>
    by === 'cost' ? one.contribution : one.finishContribution;
  const drivers = view.drivers.toSorted((a, b) => share(b) - share(a)).slice(0, NAMED);
  return [
    step(
      { text: printed(String(view.trials)) },
      'runs, each with every range, event and weather window drawn afresh',
    ),
    step({ text: String(view.seed) }, 'seed: the same seed gives the same runs'),
    plan,
    ...drivers.map(one =>
      step(
        { text: `${perCent(Math.max(0, share(one)))} %`, ...placeOf(one, prepared) },
        `of the variance: ${one.title}`,
      ),
    ),
  ];
}

/** The given behind a driver: its own derivation, or that of its row. */
function placeOf(
  { id, kind }: RiskView['drivers'][number],
  prepared: PreparedEstimate | undefined,
): { why?: string } {
  const place = prepared?.places.get(id) ?? '';
  if (kind === 'range') return place === '' ? {} : { why: place };
  return { why: kind === 'event' ? `run:register|${id}|probability` : `run:drivers|${id}|share` };
}

/** What stands behind one row of the drivers: the given itself, the event, or the givens that it moves. */
function driverSteps(id: string, view: RiskView, prepared: PreparedEstimate | undefined): readonly WhyRow[] {
  const driver = view.drivers.find(one => one.id === id);
  if (driver === undefined || prepared === undefined) return BACK;
  if (driver.kind !== 'driver') {
    const link = placeOf(driver, prepared);
    return [
      step({ text: driver.kind === 'range' ? 'its range' : 'the event', ...link }, driver.title),
      ...runSteps(view, prepared, 'cost').slice(0, 2),
    ];
  }
  const moved = prepared.run.drivers.find(one => one.id === id)?.inputs ?? [];
  const titles = new Map(prepared.run.inputs.map(input => [input.id, input.title]));
  return [
    ...moved.slice(0, NAMED).map(input => {
      const place = prepared.places.get(input) ?? '';
      return step({ text: 'moves', ...(place === '' ? {} : { why: place }) }, titles.get(input) ?? input);
    }),
    ...(moved.length > NAMED ? [step({ text: String(moved.length - NAMED) }, 'givens more')] : []),
    ...BACK,
  ];
}

function eventSteps(id: string, prepared: PreparedEstimate | undefined): readonly WhyRow[] {
  const event = prepared?.run.events.find(one => one.id === id);
  if (event === undefined) return BACK;
  const line = (words: string, text: string) => step({ text }, words);
  return [
    line('chance in one run', `${inHundred(event.probability)} in 100`),
    ...event.costs.map(one =>
      step({ text: 'adds to', why: `lines/${one.line}/total` }, one.line.replaceAll('-', ' ')),
    ),
    ...event.delays.map(one =>
      step({ text: 'delays', why: `activity:${one.activity}` }, one.activity.replaceAll('-', ' ')),
    ),
    ...(event.mitigation === undefined
      ? []
      : [line(`what can be done: ${event.mitigation.title}`, simulatedDollars(event.mitigation.cost))]),
  ];
}

/** The rows that a sum of the contingency is made from, before the runs behind them. */
function wholeSteps(table: TableRows, { id }: Row, runs: readonly WhyRow[]): readonly WhyRow[] {
  const from = (row: string) => table.rows.find(one => one.id === row)?.cells['amount'];
  const [plan, other] = [from('plan'), from(id === 'total' ? 'whole' : 'total')];
  if (plan === undefined || other === undefined) return runs;
  const told = { text: `$${other.text}` };
  const given = { text: `$${plan.text}`, why: 'sums/total' };
  const steps =
    id === 'total'
      ? [step(told, 'what so many runs stay within', '='), step(given, 'total of the plan', '−')]
      : [step(given, 'total of the plan', '='), step(told, 'contingency of all lines', '+')];
  return [...steps, ...runs];
}

/** How the figures of a table of the simulation came about. */
export function runOrigin(
  table: TableRows,
  view: RiskView | undefined,
  prepared: PreparedEstimate | undefined,
): Origin {
  return {
    path: `Risk, ${lowerFirst(table.caption)}`,
    home: 'risk',
    words: (column, row) => COLUMN_WORDS[`${table.id}|${column.key}`]?.(row),
    steps: (column: Column, row: Row) => {
      if (table.id === 'register') return eventSteps(row.id, prepared);
      if (view === undefined) return BACK;
      if (table.id === 'contingency' && row.id in CONTINGENCY)
        return wholeSteps(table, row, runSteps(view, prepared, 'cost'));
      if (table.id === 'drivers') return driverSteps(row.id, view, prepared);
      const own =
        table.id === 'drives-finish'
          ? [step({ text: 'its dates', why: `activity:${row.id}` }, row.cells['title']?.text ?? row.id)]
          : [];
      return [
        ...own,
        ...runSteps(
          view,
          prepared,
          column.key === 'finish' || table.id === 'drives-finish' ? 'finish' : 'cost',
        ),
      ];
    },
  };
}
