export { withScenario } from './overlay';
export { LARGEST, readProject, type ReadResult } from './reader';
export * from './schema';
export { bodyHash, canonicalJson } from './sha256';
export { writeProject } from './writer';
export { parseJsonText, type Json } from './json-text';
export { checkProject, checkGiven } from './check';
export { knownItems } from './check-items';
export { startingProject, type StartingPoint } from './starting';
