import { describe, expect, test } from 'vitest';
import { misfit, readProject, writeProject } from '../../../core/project';
import { setWhole, setWord } from '../../../renderer/edits/edits';
import { edited, startHistory } from '../../../renderer/state/history';
import { loadShapes, unfitting } from '../../../renderer/state/fits';
import { demoProject } from '../evaluation/demo';

const built = { at: '/vessel/built', kind: 'whole', value: '1968', label: 'Built' } as const;

describe('an edit after which the document could not be opened again', () => {
  test.each([
    ['2999', 'Built is more than 2100 (it says 2999). Enter 2100 or less. What stood there still counts.'],
    ['197', 'Built is less than 1850 (it says 197). Enter 1850 or more. What stood there still counts.'],
    ['1971', undefined],
  ])('a ship built in %s', async (typed, said) => {
    await loadShapes();
    const history = startHistory(demoProject());
    const edit = setWhole(built, 'a', typed);
    const { project } = edited(history, edit);
    expect(unfitting(history.project, project, history.project.scenarios[0]?.id ?? '', edit)).toBe(said);
    // The same text that would be saved is what can or cannot be read again.
    expect(readProject(writeProject(project)).project === undefined).toBe(said !== undefined);
  });

  test('what was wrong before does not stand in the way of putting it right', async () => {
    await loadShapes();
    const { project } = edited(startHistory(demoProject()), setWhole(built, 'a', '2999'));
    const next = edited(
      startHistory(project),
      setWord({ ...built, kind: 'text', at: '/vessel/name', label: 'Name' }, 'a', 'Other'),
    );
    expect(
      unfitting(project, next.project, project.scenarios[0]?.id ?? '', { label: 'change Name' }),
    ).toBeUndefined();
  });

  test('in a scenario alone', () => {
    const project = demoProject();
    const [first] = project.scenarios;
    if (first === undefined) throw new Error('the example has scenarios');
    const scenario = { ...first, changes: [...first.changes, { at: '/vessel/built', to: 2999 }] };
    expect(misfit({ ...project, scenarios: [scenario] }, first.id)?.code).toBe(
      'scenario/change-does-not-fit',
    );
    expect(misfit(project, first.id)).toBeUndefined();
  });
});
