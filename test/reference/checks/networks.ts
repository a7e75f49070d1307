import { networkTimes, type NetworkRelationship } from '../../../core/network';
import { checksOf, within, type OutsideCheck } from './check';

const arrows = ['1-2 7', '1-3 10', '2-4 6', '3-4 5', '3-5 4', '4-5 3', '5-6 2'].map(text => {
  const [id = '', duration = ''] = text.split(' ');
  return { id, title: id, duration: Number(duration), tail: id.slice(0, 1), head: id.slice(2) };
});
const printed = networkTimes({
  activities: arrows,
  relationships: arrows.flatMap(a =>
    arrows
      .filter(b => b.tail === a.head)
      .map((b): NetworkRelationship => ({ from: a.id, to: b.id, kind: 'FS' })),
  ),
});
const TAYLOR = [
  '0 7 2 9 2 0',
  '0 10 0 10 0 0',
  '7 13 9 15 2 2',
  '10 15 10 15 0 0',
  '10 14 14 18 4 4',
  '15 18 15 18 0 0',
  '18 20 18 20 0 0',
];

const rows =
  'A 5 5 7 -;B 1 2 5 -;C 5 5 5 A;D 4 8 13 A;E 1 10 17 BC;F 1 5 7 D;G 2 6 9 D;H 4 4 6 EF;I 2 7 10 GH;J 2 4 7 I;K 6 10 13 I;L 2 6 6 J;M 2 2 3 K;N 7 7 12 LM'
    .split(';')
    .map(row => row.split(' '));
const threeEstimates = networkTimes({
  activities: rows.map(([id = '', a, m, b]) => ({
    id,
    title: id,
    duration: (Number(a) + 4 * Number(m) + Number(b)) / 6,
  })),
  relationships: rows.flatMap(([id = '', , , , before = '-']) =>
    before === '-'
      ? []
      : Array.from(before).map((from): NetworkRelationship => ({ from, to: id, kind: 'FS' })),
  ),
});
const floatOf = (id: string) => () => threeEstimates.activities?.find(times => times.id === id)?.totalFloat;

export const networkChecks: readonly OutsideCheck[] = [
  ...checksOf('Taylor, Introduction to Management Science, chapter 8, problem 5 (solution manual)', [
    ['Finish of the network of seven arrows', 20, () => printed.finish],
    ...TAYLOR.map((times, i): [string, string, () => string] => [
      `Early and late times, total and free float of arrow ${arrows[i]?.id ?? ''}`,
      times,
      () => {
        const found = printed.activities?.[i];
        if (found === undefined) return 'nothing';
        const { earlyStart, earlyFinish, lateStart, lateFinish, totalFloat, freeFloat } = found;
        return [earlyStart, earlyFinish, lateStart, lateFinish, totalFloat, freeFloat].join(' ');
      },
    ]),
  ]),
  ...checksOf('Worked three-estimate network of 14 activities (wizedu.com question 717873)', [
    ['Finish', 50.8333, () => threeEstimates.finish, within(1e-4)],
    [
      'Critical activities',
      'ACEHIKMN',
      () =>
        threeEstimates.activities
          ?.filter(times => times.critical)
          .map(times => times.id)
          .join(''),
    ],
    ['Total float of B', 8, floatOf('B'), within(1e-4)],
    ['Total float of D', 1.8333, floatOf('D'), within(1e-4)],
    ['Total float of F', 1.8333, floatOf('F'), within(1e-4)],
    ['Total float of G', 5, floatOf('G'), within(1e-4)],
    ['Total float of J', 2.5, floatOf('J'), within(1e-4)],
    ['Total float of L', 2.5, floatOf('L'), within(1e-4)],
  ]),
];
