import { describe, expect, it } from 'vitest';
import { networkTimes, type NetworkRelationship } from '../../../core/network';

const round = (value: number, digits: number) => Number(value.toFixed(digits));

describe('Taylor, Introduction to Management Science, chapter 8, problem 5 (solution manual)', () => {
  // Activities are the arrows of the printed network: i-j and duration.
  const arrows = ['1-2 7', '1-3 10', '2-4 6', '3-4 5', '3-5 4', '4-5 3', '5-6 2'].map(text => {
    const [id = '', duration = ''] = text.split(' ');
    return { id, title: id, duration: Number(duration), tail: id.slice(0, 1), head: id.slice(2) };
  });
  const relationships = arrows.flatMap(a =>
    arrows
      .filter(b => b.tail === a.head)
      .map((b): NetworkRelationship => ({ from: a.id, to: b.id, kind: 'FS' })),
  );

  it('early and late times, total and free float are those printed', () => {
    const result = networkTimes({ activities: arrows, relationships });
    const rows = result.activities?.map(t =>
      [t.id, t.earlyStart, t.earlyFinish, t.lateStart, t.lateFinish, t.totalFloat, t.freeFloat].join(' '),
    );
    expect(result.finish).toBe(20);
    expect(rows).toEqual([
      '1-2 0 7 2 9 2 0',
      '1-3 0 10 0 10 0 0',
      '2-4 7 13 9 15 2 2',
      '3-4 10 15 10 15 0 0',
      '3-5 10 14 14 18 4 4',
      '4-5 15 18 15 18 0 0',
      '5-6 18 20 18 20 0 0',
    ]);
    expect(result.activities?.filter(t => t.critical).map(t => t.id)).toEqual(['1-3', '3-4', '4-5', '5-6']);
  });
});

describe('Three-estimate network of 14 activities (wizedu.com question 717873)', () => {
  const rows =
    'A 5 5 7 -;B 1 2 5 -;C 5 5 5 A;D 4 8 13 A;E 1 10 17 BC;F 1 5 7 D;G 2 6 9 D;H 4 4 6 EF;I 2 7 10 GH;J 2 4 7 I;K 6 10 13 I;L 2 6 6 J;M 2 2 3 K;N 7 7 12 LM'
      .split(';')
      .map(row => row.split(' '));
  const activities = rows.map(([id = '', a, m, b]) => ({
    id,
    title: id,
    duration: (Number(a) + 4 * Number(m) + Number(b)) / 6,
  }));
  const relationships = rows.flatMap(([id = '', , , , before = '-']) =>
    before === '-'
      ? []
      : Array.from(before).map((from): NetworkRelationship => ({ from, to: id, kind: 'FS' })),
  );
  const result = networkTimes({ activities, relationships });

  it('fractional mean durations are those printed', () => {
    expect(activities.map(a => round(a.duration, 4))).toEqual([
      5.3333, 2.3333, 5, 8.1667, 9.6667, 4.6667, 5.8333, 4.3333, 6.6667, 4.1667, 9.8333, 5.3333, 2.1667,
      7.8333,
    ]);
  });

  it('finish, critical activities and floats are those printed', () => {
    expect(round(result.finish ?? 0, 4)).toBe(50.8333);
    expect(
      result.activities
        ?.filter(t => t.critical)
        .map(t => t.id)
        .join(''),
    ).toBe('ACEHIKMN');
    const floats = Object.fromEntries(result.activities?.map(t => [t.id, round(t.totalFloat, 4)]) ?? []);
    expect(floats).toMatchObject({ B: 8, D: 1.8333, F: 1.8333, G: 5, J: 2.5, L: 2.5 });
  });

  it('the variance of the critical activities is 11.1944', () => {
    const critical = new Set(result.activities?.filter(t => t.critical).map(t => t.id));
    const variance = rows
      .filter(([id = '']) => critical.has(id))
      .reduce((sum, [, a, , b]) => sum + ((Number(b) - Number(a)) / 6) ** 2, 0);
    expect(round(variance, 4)).toBe(11.1944);
  });
});
