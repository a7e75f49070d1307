import { TEMPLATE_FILES } from '../../core/evaluation/templates';
import { readLibrary, type Library, type TemplateFiles } from '../../core/work';

/** The shipped templates as plain data that a test may spoil. */
export function templateCopy(): TemplateFiles {
  return structuredClone(TEMPLATE_FILES);
}

/** The shipped library; the findings name the row when it does not fit. */
export function shipped(): Library {
  const { library, findings } = readLibrary(TEMPLATE_FILES);
  if (library === undefined)
    throw new Error(findings.map(found => `${found.place}: ${found.message}`).join('\n'));
  return library;
}

/** Every object inside a value, with the names of the rows it lies in. */
export function* objectsIn(value: unknown, row: string): Generator<{ row: string; object: object }> {
  if (value === null || typeof value !== 'object') return;
  const id: unknown = 'id' in value ? value.id : undefined;
  const here = typeof id === 'string' ? `${row}/${id}` : row;
  yield { row: here, object: value };
  for (const [key, inner] of Object.entries(value)) {
    yield* objectsIn(inner, Array.isArray(value) ? here : `${here}/${key}`);
  }
}
