import type { Evaluation } from '../evaluation';

/** Signs of the project's title that a name of a file keeps: enough to tell projects apart in a folder. */
const LONGEST = 48;

/**
 * How the names of all papers of one scenario begin: the project, then the scenario, in small letters, digits and hyphens.
 * @example paperStem(evaluation) // 'wrenfield-reef-base'
 */
export function paperStem({ project, scenario }: Pick<Evaluation, 'project' | 'scenario'>): string {
  const words =
    project.title
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .match(/[a-z0-9]+/g) ?? [];
  const title = words.reduce(
    (name, word) => (name.length + word.length < LONGEST ? `${name}${word}-` : name),
    '',
  );
  return `${title}${scenario.id}`;
}
