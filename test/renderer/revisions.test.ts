import { produce } from 'immer';
import { expect, test } from 'vitest';
import { setWhole } from '../../renderer/edits/edits';
import { edited, startHistory, undone } from '../../renderer/state/history';
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

test('an edit that is undone by its steps leaves the plan that was simulated', () => {
  const begun = startHistory(project);
  const built = { at: '/vessel/built', kind: 'whole', value: '1957', label: 'Built' } as const;
  const after = edited(begun, setWhole(built, 'none', '1958'));
  const back = undone(after);
  const plan = planRevisionOf(begun.project);
  expect(planRevisionOf(after.project)).not.toBe(plan);
  expect(back.project).not.toBe(begun.project);
  expect(planRevisionOf(back.project)).toBe(plan);
});
