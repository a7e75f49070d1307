import { structuredCloneJson } from './overlay';
import type { Project } from './schema';
import { bodyHash } from './sha256';

/** The document as text: readable, fields in a fixed order, with the check sum of its body. The same project gives the same text. */
export function writeProject(project: Project): string {
  const { sha256: _old, ...body } = structuredCloneJson(project);
  const { format, version } = project;
  return JSON.stringify({ format, version, sha256: bodyHash(body), ...body }, null, 2) + '\n';
}
