import { expect, it } from 'vitest';
import { datesSaid } from '../../../core/views/dates-said';

it('dates of a sentence are said in words', () => {
  expect(datesSaid('Closed from 2027-06-01 to 2027-09-30.')).toBe('Closed from 1 Jun 2027 to 30 Sep 2027.');
  expect(datesSaid('2027-06-01')).toBe('1 Jun 2027');
});

it('what somebody typed, what is no date and what is part of a name stay as they are', () => {
  for (const text of [
    '"2027-06-01" is no number',
    '“2027-06-01”',
    'on 2027-13-45',
    'quote Q-2027-06-01',
    'a2027-06-01',
  ])
    expect(datesSaid(text)).toBe(text);
});
