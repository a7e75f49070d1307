import type { z } from 'zod';
import { projectSchema, type Project } from './schema';

const SHAPE: Readonly<Record<string, z.ZodType>> = projectSchema.shape;

/** Of the long lists, the schema of one entry. */
const ENTRIES: Readonly<Record<string, z.ZodType>> = {
  items: projectSchema.shape.items.unwrap().element,
  ownItems: projectSchema.shape.ownItems.unwrap().element,
  relationships: projectSchema.shape.relationships.unwrap().element,
  quotes: projectSchema.shape.quotes.unwrap().element,
};

/** What the schema made of sections and entries that fitted it: a document keeps those that no edit touched. */
const KNOWN = new WeakMap<object, { readonly schema: z.ZodType; readonly value: unknown }>();

interface Read {
  readonly fits: boolean;
  readonly value?: unknown;
}

/**
 * The document as its schema reads it, looking only at sections, and entries of the long lists, not seen before: what
 * has not changed is the same object in every answer.
 * @returns undefined when something does not fit; reading the document whole tells what.
 */
export function readInParts(document: Readonly<Record<string, unknown>>): Project | undefined {
  if (Object.keys(document).some(key => SHAPE[key] === undefined)) return undefined;
  const whole: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(SHAPE)) {
    const entries = ENTRIES[key];
    const section = document[key];
    const read = entries && Array.isArray(section) ? readList(section, entries) : readOnce(section, schema);
    if (!read.fits) return undefined;
    if (read.value !== undefined) whole[key] = read.value;
  }
  return isWhole(whole) ? whole : undefined;
}

/** Whether every section that a project must have is there; each was read by its own schema. */
function isWhole(sections: object): sections is Project {
  return Object.entries(SHAPE).every(
    ([key, schema]) => key in sections || schema.safeParse(undefined).success,
  );
}

function readOnce(part: unknown, schema: z.ZodType): Read {
  if (part === null || typeof part !== 'object') return read(part, schema);
  const known = KNOWN.get(part);
  if (known?.schema === schema) return { fits: true, value: known.value };
  const found = read(part, schema);
  if (found.fits) keep(part, schema, found.value);
  return found;
}

function read(part: unknown, schema: z.ZodType): Read {
  const parsed = schema.safeParse(part);
  return parsed.success ? { fits: true, value: parsed.data } : { fits: false };
}

/** What was read is also known as itself: reading it again changes nothing. */
function keep(part: object, schema: z.ZodType, value: unknown): void {
  KNOWN.set(part, { schema, value });
  if (value !== null && typeof value === 'object') KNOWN.set(value, { schema, value });
}

function readList(list: readonly unknown[], schema: z.ZodType): Read {
  const known = KNOWN.get(list);
  if (known?.schema === schema) return { fits: true, value: known.value };
  const entries = list.map(entry => readOnce(entry, schema));
  if (entries.some(entry => !entry.fits)) return { fits: false };
  const value = entries.map(entry => entry.value);
  keep(list, schema, value);
  return { fits: true, value };
}
