import { expect, test } from 'vitest';
import { boardDates } from '../../../core/papers/decision/board-dates';
import { demoProject, evaluated } from '../evaluation/demo';

test('the board must act where a title names it, and not where asbestos boards are taken out', () => {
  const evaluation = evaluated(demoProject());
  const titles = new Set(evaluation.estimate?.schedule.activities.map(({ title }) => title));
  expect(titles).toContain('Asbestos board and panels taken out');
  const acts = boardDates(evaluation).map(({ title }) => title);
  expect(acts).toEqual(expect.arrayContaining(['Board accepts the grant', 'Award by the board']));
  expect(acts).not.toContain('Asbestos board and panels taken out');
});
