import { describe, expect, test } from 'vitest';
import { structuredCloneJson, withScenario, type Json } from '../../../core/project';
import { demoProject } from '../evaluation/demo';

const project = demoProject();

function seenWith(at: string, to: Json) {
  return withScenario(project, { id: 'x', title: 'X', changes: [{ at, to }] });
}

describe('a change of a scenario', () => {
  test('names an entry of a list by its key or by its number', () => {
    const [first, second] = project.vessel.tanks;
    if (first === undefined || second === undefined) throw new Error('the example has two tanks');
    const byKey = seenWith(`/vessel/tanks/${second.id}/title`, 'Renamed').project;
    const byNumber = seenWith('/vessel/tanks/1/title', 'Renamed').project;
    expect(byKey?.vessel.tanks.map(tank => tank.title).slice(0, 2)).toEqual([first.title, 'Renamed']);
    expect(byNumber).toEqual(byKey);
  });

  test('puts an entry in the place of another, or adds one under a name that is not there yet', () => {
    const [first] = project.vessel.tanks;
    if (first === undefined) throw new Error('the example has a tank');
    const other = structuredCloneJson({ ...first, title: 'Other' });
    const replaced = seenWith(`/vessel/tanks/${first.id}`, other).project?.vessel.tanks;
    expect(replaced).toEqual([other, ...project.vessel.tanks.slice(1)]);
    const more = structuredCloneJson({ ...first, id: 'new-tank' });
    const added = seenWith('/vessel/tanks/new-tank', more).project?.vessel.tanks;
    expect(added).toEqual([...project.vessel.tanks, more]);
  });

  test.each<[string, Json, string]>([
    ['/mystery', 1, 'mystery'],
    ['/items/hull-survey', { item: 'hull-survey', quantity: 'seven' }, '/items/'],
    ['/contingency', null, '/contingency'],
    ['/vessel/name/first', 'A', 'there is nothing at "name"'],
    ['/vessel/tanks/no-such-tank/title', 'A', 'there is nothing at "no-such-tank"'],
    ['/scenarios/x/title', 'A', 'cannot change this field'],
  ])('of %s that does not fit is told with its place', (at, to, words) => {
    const { project: seen, findings } = seenWith(at, to);
    expect(seen).toBeUndefined();
    expect(findings).toMatchObject([{ code: 'scenario/change-does-not-fit', weight: 'blocks' }]);
    expect(findings[0]?.message).toContain(words);
  });

  test('is blamed for its own section when several changes are made', () => {
    const { findings } = withScenario(project, {
      id: 'x',
      title: 'X',
      changes: [
        { at: '/site/county', to: 'Elsewhere' },
        { at: '/calendars/start', to: 'soon' },
      ],
    });
    expect(findings).toMatchObject([{ place: '/scenarios/x/changes/1' }]);
  });

  test('is not named for a document that does not fit by itself: its own fault is told', () => {
    const faulty = { ...project, title: '' };
    expect(withScenario(faulty, { id: 'x', title: 'X', changes: [] }).findings[0]?.code).toBe(
      'document/too-small',
    );
  });
});
