import { evaluate, shippedLibrary } from '../../core/evaluation';
import { startingProject } from '../../core/project';
import { windowParts } from '../../core/views';

/** So few schedules show the search what it will be asked to do. */
const SCHEDULES = 40;

/**
 * Evaluates a project without figures of its own, in steps, and lets go of it: what is run once, the browser runs faster
 * the next time, so the first document opened is shown sooner.
 * @param today `YYYY-MM-DD`.
 */
export function* warmUp(today: string): Generator<undefined, undefined, undefined> {
  const library = shippedLibrary();
  const project = startingProject(library, {
    reader: 'comparison',
    hullType: 'freighter',
    title: 'Nobody sees this',
    start: today,
  });
  const options = { today, seed: 1, upright: false } as const;
  yield;
  const evaluation = evaluate(project, { ...options, schedules: SCHEDULES });
  yield;
  windowParts(project, evaluation, 'us', undefined)?.view('vessel');
}
