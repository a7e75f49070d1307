import { expect, test } from 'vitest';
import { evaluate, shippedLibrary } from '../../../core/evaluation';
import { startingProject } from '../../../core/project';
import { windowRows } from '../../../core/views';

test('what papers print as their title and every year a finding asks for can be entered with the ship', () => {
  const library = shippedLibrary();
  const project = startingProject(library, {
    reader: 'grant',
    hullType: 'freighter',
    title: 'New project',
    start: '2026-11-24',
  });
  const evaluation = evaluate(project, { today: '2026-11-24', seed: 1 });
  const asked = evaluation.findings.map(one => one.place).filter(place => place.startsWith('/vessel/'));
  expect(asked).toContain('/vessel/lastCoating');
  const text = JSON.stringify(windowRows(evaluation.project, evaluation, 'us', undefined));
  for (const at of ['/title', ...asked]) expect(text).toContain(`"at":"${at}"`);
});
