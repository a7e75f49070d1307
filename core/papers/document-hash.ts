import { bodyHash, type Project } from '../project';

/** The start of the SHA-256 of a project: two papers with the same one speak of the same figures. */
export function documentHash(project: Project): string {
  return bodyHash(JSON.parse(JSON.stringify(project)) as Parameters<typeof bodyHash>[0]).slice(0, 12);
}
