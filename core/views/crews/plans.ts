import { at, lowerFirst } from '../../base';
import type { CrewPlanAnswer, CrewPlanPoint } from '../../evaluation';
import { aligned, words } from '../cells';
import { dayNumber, moneyTicks, monthTicks } from '../risk/axis';
import type { FrontierPicture } from '../risk/rows';
import { shownNumber } from '../number-text';
import { bareDollars } from '../risk/words';
import type { Column, Row, TableRows, WhyRow } from '../rows';
import { dateWords } from '../schedule-axis';
import { Derivations, step, type Origin } from '../simulated';
import type { CrewPlanRows, OfferedPlan } from './rows';

export const PLAN_QUESTION = 'Which crews, shifts and start cost least?';

/** The plans that are drawn with a letter, at most; the table holds all. */
const MOST_LETTERS = 8;
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The curve of cost over time as the window shows it. */
export function crewPlanRows(answer: CrewPlanAnswer | undefined, isStale: boolean): CrewPlanRows {
  if (answer === undefined || answer.curve.length === 0) return { question: PLAN_QUESTION };
  const letters = lettersOf(answer);
  const told = new Derivations('crew-plans');
  const plans = told.table(table(answer, letters), planOrigin(answer));
  const words = 'The plans that were estimated, one set against the other.';
  const compared = [answer.present, answer.best].flatMap(point =>
    point === undefined ? [] : costSteps(point),
  );
  return {
    question: PLAN_QUESTION,
    found: {
      answer: told.sentence('answer', answer.sentence, HERE, words, compared),
      whys: told.whys,
      isStale,
      picture: picture(answer, letters, plans),
      table: plans,
      offers: offers(answer, letters),
      cautions: answer.cautions,
      notes: [...answer.notes, `${answer.tried} plans were estimated.`],
    },
  };
}

/** Letters of the plans worth telling apart: the plan as it stands, the cheapest, and those that no other beats. */
function lettersOf({ curve, frontier, best, present }: CrewPlanAnswer): ReadonlyMap<string, string> {
  const first = [present?.id, best?.id].filter(id => id !== undefined);
  const chosen = new Set([...first, ...spread(frontier)].slice(0, MOST_LETTERS));
  const all = curve.some(point => point.isPresent) || present === undefined ? curve : [...curve, present];
  const shown = all
    .toSorted((a, b) => a.finish.localeCompare(b.finish))
    .filter(point => chosen.has(point.id));
  return new Map(shown.map((point, place) => [point.id, LETTERS.charAt(place)]));
}

/** The plans with a letter, but for the plan as it stands, as scenarios to be: the cheapest first. */
function offers({ curve, best }: CrewPlanAnswer, letters: ReadonlyMap<string, string>): OfferedPlan[] {
  const offered = curve.flatMap(point => {
    const letter = letters.get(point.id);
    return point.isPresent || letter === undefined ? [] : [{ ...point, letter }];
  });
  return offered
    .toSorted((a, b) => Number(b.id === best?.id) - Number(a.id === best?.id))
    .map(({ id, finish, cost, changes, letter }) => {
      const which = id === best?.id ? `plan ${letter}, the cheapest` : `plan ${letter}`;
      return {
        id,
        label: `Make a scenario of ${which}: $${bareDollars(cost)}, ${dateWords(finish)}`,
        title: `Crew plan ${letter}, ${dateWords(finish)}`,
        changes,
      };
    });
}

/** Evenly many of a list, both ends among them. */
function spread(ids: readonly string[]): string[] {
  const most = MOST_LETTERS - 2;
  if (ids.length <= most) return [...ids];
  return Array.from({ length: most }, (_, place) =>
    at(ids, Math.round((place * (ids.length - 1)) / (most - 1))),
  );
}

function pointsOf({ curve, present }: CrewPlanAnswer): readonly CrewPlanPoint[] {
  const all =
    present === undefined || curve.some(point => point.id === present.id) ? curve : [...curve, present];
  return all.toSorted((a, b) => a.finish.localeCompare(b.finish) || a.cost - b.cost);
}

function picture(
  answer: CrewPlanAnswer,
  letters: ReadonlyMap<string, string>,
  plans: TableRows,
): FrontierPicture {
  const points = pointsOf(answer);
  const place = ({ finish, cost }: CrewPlanPoint) => ({ day: dayNumber(finish), dollars: cost });
  const { finishBy, best } = answer;
  const days = [
    ...points.map(point => dayNumber(point.finish)),
    ...(finishBy === undefined ? [] : [dayNumber(finishBy)]),
  ];
  const money = points.map(point => point.cost);
  return {
    title: 'Total with expected standby by finish, $ million',
    lines: [
      {
        letter: '',
        isChosen: true,
        points: points.filter(point => answer.frontier.includes(point.id)).map(place),
      },
    ],
    plans: points.flatMap(point => {
      const letter = letters.get(point.id);
      if (letter === undefined) return [];
      return [{ letter, isChosen: point.id === best?.id, isPermittable: true, ...place(point) }];
    }),
    dates: monthTicks(Math.min(...days), Math.max(...days)),
    money: moneyTicks(Math.min(...money), Math.max(...money)),
    ...(finishBy === undefined
      ? {}
      : { lastDate: { at: dayNumber(finishBy), text: `last day ${dateWords(finishBy)}` } }),
    words: `Cost over time: ${answer.sentence} The table beside it tells every plan.`,
    table: plans,
  };
}

const HERE = { path: 'Schedule, crews', home: 'schedule' };

function costSteps({ words, total, standby, standbyDays }: CrewPlanPoint): readonly WhyRow[] {
  return [
    step({ text: bareDollars(total), unit: '$' }, `total of the estimate: ${lowerFirst(words)}`, '='),
    step(
      { text: bareDollars(standby), unit: '$' },
      `expected standby: ${shownNumber(standbyDays.toFixed(6), 1)} days waited for weather beyond the plan, on average`,
      '+',
    ),
  ];
}

const PLAN_WORDS: Readonly<Record<string, string>> = {
  cost: 'The total of the estimate with these crews, shifts and this start, and the standby that the weather makes likely.',
  standby: 'The mean of the days waited for weather beyond the plan, each at what a day of waiting costs.',
  people: 'The most people that are at work on one day of this plan.',
};

function planOrigin({ curve, present }: CrewPlanAnswer): Origin {
  return {
    ...HERE,
    words: ({ key }) => PLAN_WORDS[key],
    steps: ({ key }, row) => {
      const point = [...curve, ...(present === undefined ? [] : [present])].find(one => one.id === row.id);
      if (point === undefined) return [];
      if (key === 'cost') return costSteps(point);
      const waited = shownNumber(point.standbyDays.toFixed(6), 1);
      return [
        key === 'people'
          ? step({ text: String(point.workDays), unit: 'days' }, 'work days of the plan')
          : step({ text: waited, unit: 'days' }, 'waited for weather beyond the plan, on average'),
        step({ text: dateWords(point.finish) }, `the finish: ${lowerFirst(point.words)}`),
      ];
    },
  };
}

const COLUMNS: readonly Column[] = [
  { key: 'letter', title: 'Plan', kind: 'words' },
  { key: 'finish', title: 'Finish', kind: 'words' },
  { key: 'cost', title: 'Total with standby', unit: '$', kind: 'number' },
  { key: 'standby', title: 'Expected standby', unit: '$', kind: 'number' },
  { key: 'people', title: 'Most people', kind: 'number' },
  { key: 'words', title: 'What it is', kind: 'words', wide: true },
];

function table(answer: CrewPlanAnswer, letters: ReadonlyMap<string, string>): TableRows {
  const rows = pointsOf(answer).map((point): Row => {
    const marks = [
      ...(point.id === answer.best?.id ? ['cheapest'] : []),
      ...(point.isPresent ? ['as it stands'] : []),
      ...(answer.frontier.includes(point.id) ? [] : ['another is cheaper and no later']),
    ];
    return {
      id: point.id,
      kind: 'line',
      cells: {
        letter: words(letters.get(point.id) ?? ''),
        finish: words(dateWords(point.finish)),
        cost: words(bareDollars(point.cost)),
        standby: words(bareDollars(point.standby)),
        people: words(String(point.peakCrew)),
        words: words(marks.length === 0 ? point.words : `${point.words} (${marks.join(', ')})`),
      },
    };
  });
  return { id: 'crew-plans', caption: 'Crew plans', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}
