import { expect, test } from 'vitest';
import { readProject, writeProject, type Project } from '../../core/project';
import { edited, startHistory } from '../../renderer/state/history';
import { setWhole } from '../../renderer/edits/edits';
import { markOf, studyAgain, withRun } from '../../renderer/state/remembered-runs';
import { demoProject } from '../core/evaluation/demo';

const project = demoProject();

function readBack(of: Project): Project {
  const read = readProject(writeProject(of)).project;
  if (read === undefined) throw new Error('what was written cannot be read');
  return read;
}

test('the mark of a plan does not hang on the order of its fields, nor on what stands beside the plan', async () => {
  const mark = await markOf(project);
  const turned = { ...Object.fromEntries(Object.entries(project).toReversed()), ...project };
  const { vessel } = project;
  const shuffled = {
    ...project,
    vessel: { ...Object.fromEntries(Object.entries(vessel).toReversed()), ...vessel },
  };
  expect(await markOf(turned)).toBe(mark);
  expect(await markOf(shuffled)).toBe(mark);
  expect(await markOf({ ...project, decision: undefined })).toBe(mark);
  expect(await markOf({ ...project, vessel: { ...vessel, name: 'Corrigan' } })).not.toBe(mark);
  expect(mark).toMatch(/^[0-9a-f]{32}$/);
});

test('a run goes first among twenty, with the scenarios that were run of the same plan before', () => {
  const one = withRun([], 'a', ['base']);
  expect(one).toEqual([{ plan: 'a', scenarios: ['base'] }]);
  expect(withRun([{ plan: 'b', scenarios: ['x'] }, ...one], 'a', ['early', 'base'])).toEqual([
    { plan: 'a', scenarios: ['base', 'early'] },
    { plan: 'b', scenarios: ['x'] },
  ]);
  const many = Array.from({ length: 20 }, (_, i) => ({ plan: `p${i}`, scenarios: ['base'] }));
  const kept = withRun(many, 'a', ['base']);
  expect(kept.map(({ plan }) => plan)).toEqual(['a', ...many.slice(0, 19).map(({ plan }) => plan)]);
});

test('trials of the scenario shown alone are run by themselves, others by the comparison, none of an unknown plan', () => {
  const ran = [
    { plan: 'a', scenarios: ['base'] },
    { plan: 'b', scenarios: ['base', 'early'] },
  ];
  expect(studyAgain(ran, 'a', 'base')).toBe('risk');
  expect(studyAgain(ran, 'a', 'early')).toBe('compare');
  expect(studyAgain(ran, 'b', 'base')).toBe('compare');
  expect(studyAgain(ran, 'c', 'base')).toBeUndefined();
});

test('the mark is the same for a document that was edited, saved and read again', async () => {
  const begun = startHistory(readBack(project));
  const built = { at: '/vessel/built', kind: 'whole', value: '1957', label: 'Built' } as const;
  const { project: now } = edited(begun, setWhole(built, 'none', '1958'));
  expect(await markOf(now)).not.toBe(await markOf(begun.project));
  expect(await markOf(readBack(now))).toBe(await markOf(now));
});
