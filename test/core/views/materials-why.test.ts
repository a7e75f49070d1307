import { describe, expect, test } from 'vitest';
import { WhyDesk } from '../../../core/views';
import { awkward } from './awkward';

const deskOf = (name: Parameters<typeof awkward>[0]) => new WhyDesk(awkward(name), 'us');

describe('how much of a material a ship is taken to carry', () => {
  test('is decided by the laboratory, by a year until there is a survey, or by no rule', () => {
    const desk = deskOf('the example');
    const words = (id: string) => desk.answer(`presence:${id}`)?.words;
    // The example was built in 1957 and has its cable sampled; fuel is on ships of any age.
    expect(words('pcb-cable')).toBe('The laboratory decided it.');
    expect(words('liquid-pcb')).toBe('The year 1957 decides it, until a survey does.');
    expect(words('fuel')).toBe('It has no rule by year; it is found on ships of any age.');
    expect(words('no-such-material')).toBeUndefined();
  });

  test('has its likely share between the least and the greatest, in the middle where they are one', () => {
    const desk = deskOf('the example');
    const of = (id: string) => desk.answer(`presence:${id}`)?.rows[0];
    // 80 % between 40 and 100 lies two thirds of the way.
    expect(of('liquid-pcb')?.range).toEqual({
      low: '40',
      high: '100',
      at: 0.6666666666666667,
    });
    expect(of('pcb-cable')?.range).toEqual({ low: '100', high: '100', at: 0.5 });
    expect(of('pcb-cable')?.value).toMatchObject({ text: '100', unit: '%', basis: 'surveyed' });
  });
});

describe('the clean-up of a family of materials', () => {
  test('is the sum of the lines that meet its goals, and of all families the sum of those', () => {
    const desk = deskOf('the example');
    const { families } = awkward('the example').library;
    const dollars = (id: string) => Number(desk.answer(id)?.value.text.replaceAll(',', ''));
    const sums = families.map(({ id }) => dollars(`family:${id}`));
    expect(sums.every(sum => sum > 0)).toBe(true);
    const all = sums.reduce((sum, each) => sum + each, 0);
    expect(dollars('family:all')).toBeCloseTo(all, 2);
    for (const [id, title] of [
      ['asbestos', 'Clean-up of asbestos'],
      ['pcb', 'Clean-up of PCB'],
      ['all', 'Clean-up of all families'],
    ]) {
      const answer = desk.answer(`family:${id}`);
      expect([answer?.id, answer?.title, answer?.path]).toEqual([`family:${id}`, title, 'Materials, sum']);
    }
    expect(desk.answer('family:gold')).toBeUndefined();
  });

  test('waits for the schedule where there is none', () => {
    const answer = deskOf('without a schedule').answer('family:all');
    expect(answer?.rows.map(row => row.words)).toEqual(['all lines wait for the schedule']);
    expect(answer?.value.text).not.toMatch(/\d/);
  });
});

test('a paper that is unknown widens the ranges of families under their names, abbreviations as they are', () => {
  const intake = deskOf('the example').opened('materials')?.intake;
  const texts = intake?.rows.map(row => row.cells['widens']?.text).join('; ');
  expect(texts).toMatch(/ % wider: [^;]*\basbestos\b/);
  expect(texts).toMatch(/ % wider: [^;]*\bPCB\b/);
  expect(texts).not.toMatch(/\bpcb\b/);
});

test('a limit for hot work says what it is a share of, and organotin is no share', () => {
  const desk = deskOf('the example');
  const limits = (desk.opened('materials')?.families ?? [])
    .flatMap(family => family.tripPoints.rows)
    .map(row => [row.id, row.cells['limit']?.text]);
  expect(Object.fromEntries(limits)).toMatchObject({
    'flammable-hot-work': 'at or above 10 % of the lower explosive limit',
    'oxygen-hot-work': 'above 22 % by volume',
    'tbt-content': 'at or above 2,500 mg of tin per kg of dry paint',
    'asbestos-content': 'above 1 %',
  });
  expect(desk.answer('trip:flammable-hot-work')?.value).toEqual({
    text: '10',
    unit: '% of the lower explosive limit',
  });
});
