import { structuredCloneJson } from './overlay';
import type { Project } from './schema';
import { bodyHash } from './sha256';

/** The document as text: readable, fields in a fixed order, with the check sum of its body. The same project gives the same text. */
export function writeProject(project: Project): string {
  const { format, version, sha256: _old, ...body } = structuredCloneJson(project);
  const document = { format: format ?? null, version: version ?? null, ...body };
  return (
    JSON.stringify(
      { format: document.format, version: document.version, sha256: bodyHash(document), ...body },
      null,
      2,
    ) + '\n'
  );
}
