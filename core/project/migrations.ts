import type { Finding } from '../base';
import type { Json } from './json-text';
import { VERSION } from './schema';

type Document = { [key: string]: Json };

/** Pure steps from version n to n + 1, by n. A step never loses a field; each keeps its fixture for ever. */
export const MIGRATIONS: Readonly<Record<number, (document: Document) => Document>> = {};

/** Brings a document to the present version, or says why it cannot. */
export function migrate(document: Document): { document: Document } | { finding: Finding } {
  let version = document['version'];
  let current = document;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return { finding: noVersion() };
  while (version < VERSION) {
    const step = MIGRATIONS[version];
    if (step === undefined) return { finding: noVersion() };
    current = { ...step(current), version: ++version };
  }
  return { document: current };
}

function noVersion(): Finding {
  return {
    code: 'document/no-version',
    weight: 'blocks',
    place: '/version',
    message: 'The file does not say which version of the format it is.',
    meaning: 'The file is not opened and not changed.',
    remedy: 'Open a backup copy, or add the version the file was written with.',
  };
}
