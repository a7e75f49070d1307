import { produce } from 'immer';
import { expect, test } from 'vitest';
import { planRevisionOf, revisionOf } from '../../renderer/state/revisions';
import { demoProject } from '../core/evaluation/demo';

const project = demoProject();

test('a vote and a note leave what was simulated as it is, a change of the plan does not', () => {
  const noted = produce(project, draft => {
    draft.notes.push({ at: '/vessel/length', text: 'Measured twice' });
  });
  const voted = produce(noted, draft => {
    draft.decision = { weights: [] };
  });
  const moved = produce(voted, draft => {
    draft.calendars.start = '2027-02-01';
  });
  const states = [project, noted, voted, moved];
  const [first, ...others] = states.map(planRevisionOf);
  expect(others.map(plan => plan === first)).toEqual([true, true, false]);
  expect(new Set(states.map(revisionOf)).size).toBe(4);
  // Undone, a state is the one it was.
  expect(planRevisionOf(voted)).toBe(first);
  expect(revisionOf(noted)).toBe(revisionOf(noted));
});
