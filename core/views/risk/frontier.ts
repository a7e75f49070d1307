import { aligned, words } from '../cells';
import { dateWords } from '../schedule-axis';
import type { Column, Row } from '../rows';
import { dayNumber, moneyTicks, monthTicks } from './axis';
import type { FrontierPicture } from './rows';
import { bareDollars, inHundred, simulatedDollars } from './words';

/** A scenario as the frontier shows it: its plan, and its line where it was simulated. */
export interface FrontierOf {
  readonly letter: string;
  readonly isChosen: boolean;
  readonly isPermittable: boolean;
  readonly total: number;
  readonly finish: string;
  readonly line: readonly { readonly date: string; readonly budget: number }[];
}

export interface FrontierLimits {
  readonly confidence: number;
  readonly inHand: number | undefined;
  readonly lastDate: string | undefined;
}

const COLUMNS: readonly Column[] = [
  { key: 'letter', title: 'Scenario', kind: 'words' },
  { key: 'date', title: 'Finish by', kind: 'words' },
  { key: 'budget', title: 'Budget that it takes', unit: '$', kind: 'number' },
];
/** So many points of a line stand in the table beside it. */
const POINTS = 7;

/** The line of equal chance of each scenario, with plans and limits on the same axes. */
export function frontierPicture(
  scenarios: readonly FrontierOf[],
  { confidence, inHand, lastDate }: FrontierLimits,
): FrontierPicture {
  const lines = scenarios
    .filter(one => one.line.length > 0)
    .map(({ letter, isChosen, line }) => ({
      letter,
      isChosen,
      points: line.map(({ date, budget }) => ({ day: dayNumber(date), dollars: budget })),
    }));
  const plans = scenarios.map(({ letter, isChosen, isPermittable, finish, total }) => ({
    letter,
    isChosen,
    isPermittable,
    day: dayNumber(finish),
    dollars: total,
  }));
  const shown = [...lines.flatMap(line => line.points), ...plans];
  const days = [...shown.map(one => one.day), ...(lastDate === undefined ? [] : [dayNumber(lastDate)])];
  const money = [...shown.map(one => one.dollars), ...(inHand === undefined ? [] : [inHand])];
  return {
    title:
      lines.length === 0
        ? 'Cost and finish of the plans, $ million'
        : `${inHundred(confidence)} in 100 end inside both, $ million`,
    lines,
    plans,
    dates: shown.length === 0 ? [] : monthTicks(Math.min(...days), Math.max(...days)),
    money: shown.length === 0 ? [] : moneyTicks(Math.min(...money), Math.max(...money)),
    ...(inHand === undefined ? {} : { inHand: { at: inHand, text: `${simulatedDollars(inHand)} budget` } }),
    ...(lastDate === undefined
      ? {}
      : { lastDate: { at: dayNumber(lastDate), text: `after ${dateWords(lastDate)}` } }),
    words: wordsOf(scenarios, confidence),
    table: {
      id: 'frontier',
      caption:
        lines.length === 0
          ? 'Where the plans stand'
          : `Budgets and dates that hold together in ${inHundred(confidence)} of 100 runs`,
      columns: COLUMNS,
      rows: aligned(COLUMNS, scenarios.flatMap(tableRows)),
    },
  };
}

function tableRows({ letter, line, finish, total }: FrontierOf): readonly Row[] {
  const step = Math.max(1, Math.ceil((line.length - 1) / (POINTS - 1)));
  const kept = line.filter((_, at) => at % step === 0 || at === line.length - 1);
  const row = (id: string, lead: string, date: string, budget: number): Row => ({
    id: `${letter}-${id}`,
    kind: 'line',
    cells: {
      letter: words(`${letter}${lead}`),
      date: words(dateWords(date)),
      budget: words(bareDollars(budget)),
    },
  });
  return [
    row('plan', ', the plan, to compare', finish, total),
    ...kept.map((point, at) => row(String(at), '', point.date, point.budget)),
  ];
}

function wordsOf(scenarios: readonly FrontierOf[], confidence: number): string {
  return scenarios
    .map(({ letter, finish, total, line }) => {
      const plan = `The plan of ${letter} costs ${simulatedDollars(total)} and ends on ${dateWords(finish)}.`;
      const [first, last] = [line[0], line.at(-1)];
      if (first === undefined || last === undefined) return plan;
      return `${plan} ${inHundred(confidence)} in 100 runs end inside ${simulatedDollars(first.budget)} by ${dateWords(first.date)}, or inside ${simulatedDollars(last.budget)} by ${dateWords(last.date)}.`;
    })
    .join(' ');
}
