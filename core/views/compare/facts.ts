import type { Evaluation } from '../../evaluation';
import type { Comparison, RiskFacts } from '../../scenario';
import { isPermittable, summaryOf } from '../../scenario';
import { NOT_APPLYING, words } from '../cells';
import { inMeasures, unitWords, type Measures } from '../measures';
import { decimalsFor, shownNumber } from '../number-text';
import { dateWords } from '../schedule-axis';
import { bareDollars, inHundred, perCent } from '../risk/words';
import { roundedDollars } from '../whole-dollars';
import type { Column, Row, Shown, TableRows } from '../rows';

/** The scenarios side by side: one column each, the verdict of the screen first. Figures of the chosen one open. */
export function factTable(comparison: Comparison, chosen: string, measures: Measures): TableRows {
  const { evaluations, risks } = comparison;
  const columns: Column[] = [
    { key: 'what', title: 'What', kind: 'words' },
    ...evaluations.map(({ scenario, letter }): Column => ({
      key: scenario.id,
      title: letter,
      unit: scenario.title,
      kind: 'number',
    })),
  ];
  const rows = [...FACTS, ...(risks.length === 0 ? [] : RISK_FACTS), ...SCREEN].flatMap(fact =>
    factRow(fact, evaluations, risks, chosen, measures),
  );
  const isScreened = evaluations.some(({ upright }) => upright?.atTheEnd !== undefined);
  return {
    id: 'scenarios-side-by-side',
    caption: 'Side by side',
    columns,
    rows,
    ...(isScreened ? { note: [AT_REST] } : {}),
  };
}

/** What is known of how she comes to rest. */
const AT_REST =
  'Heel, list and what follows from them are a screening, not a naval architect’s study. How she lies on the bottom is not worked out: the simulation of the likely values ends where she is under, on the bottom or past 60°, and no other values are followed once the deck is awash.';

type Upright = NonNullable<Evaluation['upright']>;

interface Fact {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  /** The name of the figure of the chosen scenario, for its derivation. */
  readonly why?: string;
  readonly read: (one: Evaluation, risk: RiskFacts | undefined, measures: Measures) => Shown | undefined;
}

function factRow(
  fact: Fact,
  evaluations: readonly Evaluation[],
  risks: readonly RiskFacts[],
  chosen: string,
  measures: Measures,
): Row[] {
  const cells = evaluations.map((one): readonly [string, Shown] => {
    const id = one.scenario.id;
    const shown = fact.read(
      one,
      risks.find(risk => risk.scenario === id),
      measures,
    );
    const why = id === chosen && fact.why !== undefined && shown !== undefined ? { why: fact.why } : {};
    return [id, shown === undefined ? NOT_APPLYING : { ...shown, ...why }];
  });
  if (cells.every(([, shown]) => shown === NOT_APPLYING)) return [];
  const unit = fact.unit === 'length' ? unitWords(inMeasures('1', 'm', measures).unit) : fact.unit;
  const title = unit === '' ? fact.title : `${fact.title}, ${unit}`;
  return [
    {
      id: fact.id,
      kind: 'line',
      cells: { what: words(title), ...Object.fromEntries(cells) },
    },
  ];
}

function money(cents: number | undefined): Shown {
  return cents === undefined
    ? { text: 'not known', absent: true }
    : words(bareDollars(roundedDollars(cents)));
}

const FACTS: readonly Fact[] = [
  {
    id: 'verdict',
    title: 'Upright screen',
    unit: '',
    why: 'upright:verdict',
    read: ({ upright }) => (upright === undefined ? undefined : words(upright.verdict)),
  },
  {
    id: 'permittable',
    title: 'May be carried out',
    unit: '',
    read: one => (isPermittable(one) ? words('yes') : { text: 'no', accent: true }),
  },
  {
    id: 'total',
    title: 'Total',
    unit: '$',
    why: 'sums/total',
    read: one => money(summaryOf(one)?.total?.cents),
  },
  {
    id: 'budget',
    title: 'With contingency',
    unit: '$',
    why: 'sums/budget',
    read: one => money(summaryOf(one)?.budget?.cents),
  },
  {
    id: 'finish',
    title: 'Finish',
    unit: '',
    why: 'schedule:finish',
    read: ({ estimate }) => dated(estimate?.schedule.finish),
  },
  {
    id: 'work-days',
    title: 'Start to finish',
    unit: 'work days',
    read: ({ estimate }) => {
      const days = estimate?.schedule.workDays;
      return days === undefined ? undefined : words(shownNumber(String(days), 0));
    },
  },
  {
    id: 'unchecked',
    title: 'Not yet checked',
    unit: '%',
    why: 'basis:unchecked',
    read: one => {
      const share = summaryOf(one)?.uncheckedShare;
      return share === undefined ? undefined : words(perCent(share));
    },
  },
];

const RISK_FACTS: readonly Fact[] = [
  {
    id: 'p80',
    title: 'P80 cost',
    unit: '$',
    read: (_, risk) => (risk === undefined ? undefined : words(bareDollars(risk.p80))),
  },
  { id: 'finish-p80', title: 'Eight in ten by', unit: '', read: (_, risk) => dated(risk?.finishP80) },
  {
    id: 'deadline',
    title: 'By the last date',
    unit: 'in 100',
    read: (_, risk) =>
      risk?.chanceOfDeadline === undefined ? undefined : words(inHundred(risk.chanceOfDeadline)),
  },
  {
    id: 'misses-grant',
    title: 'Misses the grant period',
    unit: 'in 100',
    read: (_, risk) => (risk?.missesGrant === undefined ? undefined : words(inHundred(risk.missesGrant))),
  },
];

const SCREEN: readonly Fact[] = [
  {
    id: 'heel',
    title: 'Greatest heel while judged (later stages are not), worst values',
    unit: 'degrees',
    why: 'upright:verdict',
    read: ({ upright }) => heel(upright, upright?.greatestHeelDegrees),
  },
  {
    id: 'heel-likely',
    title: 'The same, likely values',
    unit: 'degrees',
    why: 'upright:verdict',
    read: ({ upright }) => heel(upright, upright?.likelyHeelDegrees),
  },
  {
    id: 'list-at-end',
    title: 'List where the simulation ends, likely values (not judged)',
    unit: 'degrees',
    why: 'upright:verdict',
    read: ({ upright }) => endOf(upright?.atTheEnd),
  },
  {
    id: 'on-her-side',
    title: 'May come to rest on her side',
    unit: '',
    why: 'upright:verdict',
    read: ({ upright }) => onHerSide(upright),
  },
  {
    id: 'gm',
    title: 'Lowest GM',
    unit: 'length',
    why: 'upright:verdict',
    read: ({ upright }, _, measures) => {
      const gm = upright?.lowestGmMetres;
      if (gm === undefined) return undefined;
      const shown = inMeasures(gm.toFixed(6), 'm', measures);
      return words(shownNumber(shown.value, decimalsFor(shown.value) > 2 ? 2 : decimalsFor(shown.value)));
    },
  },
];

/** The heel of the check; words where it has no balance, nothing where it was not run. */
function heel(upright: Upright | undefined, degrees: number | undefined): Shown | undefined {
  if (upright?.atTheEnd === undefined) return number(degrees, 1);
  return number(degrees, 1) ?? { text: 'no balance', accent: true };
}

function endOf(end: Upright['atTheEnd']): Shown | undefined {
  const shown = number(end === undefined ? undefined : Math.abs(end.listDegrees), 1);
  return shown === undefined || end?.outcome !== 'rolled over' ? shown : { ...shown, accent: true };
}

/** Whether the simulation rolls over, or a set of values within the ranges may. */
function onHerSide(upright: Upright | undefined): Shown | undefined {
  if (upright?.atTheEnd === undefined) return undefined;
  if (upright.atTheEnd.outcome === 'rolled over') return { text: 'in the simulation', accent: true };
  if (upright.mayRollOver === true) return { text: 'within the ranges', accent: true };
  return words('not seen');
}

function dated(iso: string | undefined): Shown | undefined {
  return iso === undefined ? undefined : words(dateWords(iso));
}

function number(value: number | undefined, decimals: number): Shown | undefined {
  return value === undefined ? undefined : words(shownNumber(value.toFixed(6), decimals));
}
