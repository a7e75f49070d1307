import { produce } from 'immer';
import { expect, test } from 'vitest';
import { setWhole } from '../../renderer/edits/edits';
import { edited, startHistory, undone } from '../../renderer/state/history';
import { planRevisionOf, plansOf, revisionOf } from '../../renderer/state/revisions';
import { demoProject } from '../core/evaluation/demo';

const project = demoProject();
const [first] = project.scenarios;
if (first === undefined) throw new Error('the example has scenarios');
const base = (state: typeof project) => planRevisionOf(state, first.id);

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
  const [one, ...others] = states.map(base);
  expect(others.map(plan => plan === one)).toEqual([true, true, false]);
  expect(new Set(states.map(revisionOf)).size).toBe(4);
  // Undone, a state is the one it was.
  expect(base(voted)).toBe(one);
  expect(revisionOf(noted)).toBe(revisionOf(noted));
});

test('an edit that is undone by its steps leaves the plan that was simulated', () => {
  const begun = startHistory(project);
  const built = { at: '/vessel/built', kind: 'whole', value: '1957', label: 'Built' } as const;
  const after = edited(begun, setWhole(built, 'none', '1958'));
  const back = undone(after);
  const plan = base(begun.project);
  expect(base(after.project)).not.toBe(plan);
  expect(back.project).not.toBe(begun.project);
  expect(base(back.project)).toBe(plan);
});

test('a scenario that is added, taken out or changed leaves the plans of the others', () => {
  const before = plansOf(project);
  const others = project.scenarios.slice(1);
  const [second] = others;
  if (second === undefined) throw new Error('the example has more than one scenario');
  const added = produce(project, draft => {
    draft.scenarios.push({ ...second, id: 'one-more', title: 'One more' });
  });
  expect(plansOf(added)).toEqual({ ...before, 'one-more': expect.any(Number) as number });
  const without = produce(added, draft => {
    draft.scenarios.splice(1, 1);
  });
  const { [second.id]: _taken, ...left } = plansOf(added);
  expect(plansOf(without)).toEqual(left);
  const changed = produce(project, draft => {
    draft.scenarios[1]?.changes.push({ at: '/calendars/start', to: '2027-03-01' });
  });
  expect(plansOf(changed)[second.id]).not.toBe(before[second.id]);
  expect({ ...plansOf(changed), [second.id]: 0 }).toEqual({ ...before, [second.id]: 0 });
});
