import {
  levelSchedule,
  schedule,
  searchCrewPlan,
  sumOfSquares,
  type ScheduleProblem,
} from '../../../core/scheduling';
import { after, problemOf, work } from '../../core/scheduling/problems';
import { directCost, problemFrom, readTimeCosts } from '../../core/scheduling/time-cost';
import { checksOf, type OutsideCheck } from './check';

const rows = 'A 3 - 3;B 5 - 2;C 6 A 3;D 2 A 4;E 3 D 2;F 3 D 1;G 4 B 3;H 5 G 2;I 4 C 3;J 2 IEF 4;K 3 J 5'
  .split(';')
  .map(row => row.split(' '));
const slides: ScheduleProblem = problemOf(
  rows.map(([id = '', days, , units]) =>
    work(id, Number(days), { calendar: 'all', uses: { crew: Number(units) } }),
  ),
  rows.flatMap(([id = '', , before = '-']) =>
    before === '-' ? [] : Array.from(before).map(from => after(from, id)),
  ),
  { resources: [{ id: 'crew', title: 'Crew', capacity: 99 }] },
);
const options = { schedules: 200, seed: 1 };
const early = once(() => schedule(slides, options).profiles['crew']?.units ?? []);
const levelledBy = (objective: 'squares' | 'peak') =>
  once(() => levelSchedule(slides, { ...options, objective }).profiles['crew']?.units ?? []);
const squares = levelledBy('squares');
const peak = levelledBy('peak');

/** A value that is worked out at its first use and kept. */
function once<T>(make: () => T): () => T {
  let kept: { value: T } | undefined;
  return () => (kept ??= { value: make() }).value;
}

/** Least direct and total cost for each length of the project, longest first. */
function curveOf(text: string, aDay: number): () => string[] {
  const printed = readTimeCosts(text);
  return once(() =>
    searchCrewPlan(problemFrom(printed), {
      schedules: 10,
      seed: 1,
      cost: (plan, { calendarDays }) => directCost(printed, plan) + aDay * calendarDays,
    })
      .curve.map(
        each =>
          `${each.calendarDays}: ${Math.round(each.cost - aDay * each.calendarDays)}/${Math.round(each.cost)}`,
      )
      .reverse(),
  );
}
const weeks = curveOf(
  'A 8/6 15000/20000 -;B 10/7 20000/30000 -;C 5/4 8000/14000 A;D 6/4 11000/15000 A;E 8/5 9000/15000 A;F 12/8 3000/4000 CBD;G 5/4 5000/8000 E',
  2800,
);
const days = curveOf(
  'A 6/5 60/90 -;B 7/4 50/150 -;C 6/4 100/200 A;D 7/7 30/30 A;E 5/4 70/85 B;F 9/7 40/120 C;G 7/4 50/230 ED',
  70,
);
const WEEKS = [
  '26: 71000/143800',
  '25: 71250/141250',
  '24: 71500/138700',
  '23: 71750/136150',
  '22: 72000/133600',
  '21: 74000/132800',
  '20: 76500/132500',
  '19: 79000/132200',
  '18: 89000/139400',
];
const DAYS = ['21: 400/1870', '20: 430/1830', '19: 470/1800', '18: 570/1830', '17: 680/1870', '16: 790/1910'];
const pointsOf = (unit: string, expected: readonly string[], curve: () => string[]) =>
  expected.map((point, i): [string, string, () => string | undefined] => [
    `Least direct and total cost, ${unit} ${point.split(':')[0] ?? ''}`,
    point,
    () => curve()[i],
  ]);

export const scheduleChecks: readonly OutsideCheck[] = [
  ...checksOf(
    'Teaching slides Allocate and level resources (scribd 803324316); optimum by enumerating 3,185 schedules',
    [
      ['Days of the early schedule', 18, () => early().length],
      ['Sum of its units', 111, () => early().reduce((a, b) => a + b, 0)],
      ['Sum of their squares', 743, () => sumOfSquares(early())],
      ['Least sum of squares', 701, () => sumOfSquares(squares())],
      ['Least peak', 8, () => Math.max(...peak())],
      ['Least sum of squares at that peak', 703, () => sumOfSquares(peak())],
    ],
  ),
  ...checksOf(
    'Lecture text on time and cost (Nemotron-CC-Math collection); optimum by enumeration and by linear programming with HiGHS',
    pointsOf('weeks', WEEKS, weeks),
  ),
  ...checksOf(
    'Time and cost problem 5978513 of tutorsglobe; optimum by enumeration',
    pointsOf('days', DAYS, days),
  ),
];
