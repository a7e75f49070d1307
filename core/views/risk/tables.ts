import { lowerFirst } from '../../base';
import type { RiskView } from '../../evaluation';
import { aligned, NOT_APPLYING, words } from '../cells';
import { dateWords } from '../schedule-axis';
import type { Column, Row, Shown, TableRows } from '../rows';
import type { DriverBar } from './rows';
import { awardWords, bareDollars, inHundred, perCent, signedDollars, simulatedDollars } from './words';

const PERCENTILES: readonly Column[] = [
  { key: 'share', title: 'Runs that end inside', unit: 'in 100', kind: 'number' },
  { key: 'cost', title: 'Cost', unit: '$', kind: 'number' },
  { key: 'range', title: 'Sampling range', unit: '$', kind: 'range', wide: true },
  { key: 'finish', title: 'Finish by', kind: 'number' },
  { key: 'cash', title: 'Cash need', unit: '$', kind: 'number' },
];

/** Cost, finish and cash need by percentile, and where the plan figure stands. */
export function percentileTable(
  view: RiskView,
  tell: (name: string, text: string, title: string, words: string) => Shown,
): TableRows {
  const rows = view.cost.percentiles.map(({ share, value, low, high }, at): Row => {
    const finish = view.finish.percentiles[at]?.date;
    const cash = view.cashNeed?.percentiles[at]?.value;
    return {
      id: `p${inHundred(share)}`,
      kind: 'line',
      cells: {
        share: words(inHundred(share)),
        cost: words(bareDollars(value)),
        range: words(`${bareDollars(low)} to ${bareDollars(high)}`),
        finish: finish === undefined ? NOT_APPLYING : words(dateWords(finish)),
        cash: cash === undefined ? NOT_APPLYING : words(bareDollars(cash)),
      },
    };
  });
  const mean = tell(
    'mean',
    simulatedDollars(view.cost.mean),
    'Mean cost of the runs',
    'The cost of all runs added up and divided by their number.',
  );
  return {
    id: 'percentiles',
    caption: 'Percentiles',
    columns: PERCENTILES,
    rows: aligned(PERCENTILES, rows),
    note: [
      `${planNote(view)} The mean cost is `,
      mean,
      '.',
      ...(view.cashNeed === undefined ? [] : [CASH_NOTE]),
    ],
  };
}

/** Why the cash need of the runs is not that of the plan. */
const CASH_NOTE =
  ' Cash need: a run spends what it costs, on its own days. Funding spends the whole budget, contingency included, on the plan’s days; it also counts the caps of a source, money held back and duties after the sinking, so its figure may lie above all of these.';

/** Where the plan figures stand among the runs. */
function planNote({ cost, finish }: RiskView): string {
  const at = (share: number | undefined) => (share === undefined ? 'unknown' : `${inHundred(share)} in 100`);
  return `The plan’s cost holds in ${at(cost.planShare)} runs, its finish in ${at(finish.planShare)}.`;
}

const CHANCES: readonly Column[] = [
  { key: 'what', title: 'What', kind: 'words' },
  { key: 'chance', title: 'Chance', unit: 'in 100', kind: 'number' },
];

/** The chances a board asks about. */
export function chanceTable(view: RiskView): TableRows {
  const { joint, grantPeriod, award, deadline } = view;
  const row = (id: string, what: string, share: number): Row => ({
    id,
    kind: 'line',
    cells: { what: words(what), chance: words(inHundred(share)) },
  });
  const rows: Row[] = [
    row('joint', `Inside ${simulatedDollars(joint.budget)} and by ${dateWords(joint.date)}`, joint.joint),
    row('money', `Inside ${simulatedDollars(joint.budget)}`, joint.insideMoney),
    row('date', `By ${dateWords(joint.date)}`, joint.insideDate),
    // Where the grant shares the contingency, its amount is the budget of the row above.
    ...(award === undefined || simulatedDollars(award.budget) === simulatedDollars(joint.budget)
      ? []
      : [row('award', awardWords(award), award.chance)]),
    ...(grantPeriod === undefined
      ? []
      : [
          row(
            'grant',
            `Misses the grant period, which ends ${dateWords(grantPeriod.end)}`,
            grantPeriod.chanceOfMissing,
          ),
        ]),
    ...(deadline === undefined
      ? []
      : [row('deadline', `Misses the last date, ${dateWords(deadline.date)}`, deadline.chanceOfMissing)]),
    row('season', 'Needs another season for the tow or the sinking', view.chanceOfAnotherSeason),
  ];
  return { id: 'chances', caption: 'Chances', columns: CHANCES, rows: aligned(CHANCES, rows) };
}

const DRIVERS: readonly Column[] = [
  { key: 'title', title: 'What is not known', kind: 'words' },
  { key: 'kind', title: 'Kind', kind: 'words' },
  { key: 'share', title: 'Of the variance of cost', unit: '%', kind: 'number' },
  { key: 'finish', title: 'Of the finish', unit: '%', kind: 'number' },
  { key: 'low', title: 'Mean cost at its low end', unit: '$', kind: 'number', wide: true },
  { key: 'high', title: 'Mean cost at its high end', unit: '$', kind: 'number', wide: true },
  { key: 'swing', title: 'Swing', unit: '$', kind: 'number' },
];

/** What drives the cost, ranked by share of the variance, each with its swing. */
export function driverTable({ drivers }: RiskView): TableRows {
  const share = (value: number): Shown => words(value < 0.0005 ? '0.0' : perCent(value));
  const rows = drivers.map((driver): Row => ({
    id: driver.id,
    kind: 'line',
    cells: {
      title: words(driver.title),
      kind: words(driver.kind),
      share: share(driver.contribution),
      finish: share(driver.finishContribution),
      low: words(bareDollars(driver.costAtLow)),
      high: words(bareDollars(driver.costAtHigh)),
      swing: words(signedDollars(driver.costAtHigh - driver.costAtLow)),
    },
  }));
  return { id: 'drivers', caption: 'What drives the cost', columns: DRIVERS, rows: aligned(DRIVERS, rows) };
}

/** The bars beside the drivers: swing from low to high end on one scale, share of the variance on another. */
export function driverBars({ drivers }: RiskView): Readonly<Record<string, DriverBar>> {
  const ends = drivers.flatMap(driver => [driver.costAtLow, driver.costAtHigh]);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const at = (cost: number) => (most > least ? (cost - least) / (most - least) : 0);
  const largest = Math.max(...drivers.map(driver => driver.contribution), 1e-9);
  return Object.fromEntries(
    drivers.map(({ id, costAtLow, costAtHigh, contribution }) => [
      id,
      {
        from: at(Math.min(costAtLow, costAtHigh)),
        to: at(Math.max(costAtLow, costAtHigh)),
        part: Math.max(0, contribution) / largest,
      },
    ]),
  );
}

const FINISH: readonly Column[] = [
  { key: 'title', title: 'Activity', kind: 'words' },
  { key: 'share', title: 'Drives the finish', unit: 'in 100', kind: 'number' },
];

/** Activities by how often they drive the finish; those that always do are told in one line. */
export function finishDrivers({ drivesFinish }: RiskView): TableRows {
  const always = drivesFinish.filter(row => row.share > 0.9995);
  const rows = drivesFinish
    .filter(row => !always.includes(row))
    .map((row): Row => ({
      id: row.activity,
      kind: 'line',
      subject: row.activity,
      cells: { title: words(row.title), share: words(inHundred(row.share)) },
    }));
  return {
    id: 'drives-finish',
    caption: 'What drives the finish',
    columns: FINISH,
    rows: aligned(FINISH, rows),
    ...(always.length === 0
      ? {}
      : { note: [`In every run: ${always.map(row => lowerFirst(row.title)).join(', ')}.`] }),
  };
}
