import { upperFirst } from '../../core/base';
import type { misfit as check, Project } from '../../core/project';
import type { NamedEdit } from '../edits/edits';

let misfit: typeof check | undefined;

/** Loads what knows the shape of a document; until then nothing is known to be wrong with an edit. */
export async function loadShapes(): Promise<void> {
  ({ misfit } = await import('../../core/project'));
}

/**
 * Why an edit cannot be kept: the document would no longer be one that can be opened. What was wrong before the edit
 * does not count against it.
 */
export function unfitting(
  before: Project,
  after: Project,
  scenario: string,
  { label }: Pick<NamedEdit, 'label'>,
): string | undefined {
  const found = misfit?.(after, scenario);
  if (found === undefined || misfit?.(before, scenario) !== undefined) return undefined;
  const subject = upperFirst(label.replace(/^change /, ''));
  const said = found.message.startsWith(found.place)
    ? `${subject}${found.message.slice(found.place.length)}`
    : `${subject} is not taken. ${found.message}`;
  return `${said} ${found.remedy} What stood there still counts.`;
}
