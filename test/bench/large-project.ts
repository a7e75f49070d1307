import { readFileSync } from 'node:fs';
import { evaluate } from '../../core/evaluation';
import { readProject, writeProject, type Project } from '../../core/project';

const FILE = 'demo/wrenfield.reef.json';
export const TODAY = '2026-11-24';

/** The example as it is read from its file. */
export function exampleProject(): Project {
  const { project } = readProject(readFileSync(FILE, 'utf8'));
  if (project === undefined) throw new Error(`${FILE} cannot be read`);
  return project;
}

/** The example with so many lines in its first scenario: its items of work again, as items of its own, written and read. */
export function largeProject(lines: number): Project {
  const project = exampleProject();
  const parts = evaluate(project, { today: TODAY, seed: 1, schedules: 1, upright: false }).estimate;
  const again = (parts?.items ?? []).filter(item => item.disposes === undefined && item.span === undefined);
  const wanted = lines - (parts?.items.length ?? 0);
  const ownItems = Array.from({ length: wanted }, (_, i) => {
    const item = again[i % again.length];
    if (item === undefined) throw new Error('the example has no work items');
    const copy = Math.floor(i / again.length) + 2;
    return { ...item, id: `${item.id}-again-${copy}`, title: `${item.title}, ${copy}` };
  });
  const read = readProject(writeProject({ ...project, ownItems }));
  if (read.project === undefined) throw new Error('the large project cannot be read');
  return read.project;
}
