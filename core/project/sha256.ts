import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Json } from './json-text';

/** JSON text with keys in alphabetical order and no white space: the same value always gives the same text. */
export function canonicalJson(value: Json): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const keys = Object.keys(value).sort();
  return `{${keys.map(name => `${JSON.stringify(name)}:${canonicalJson(value[name] ?? null)}`).join(',')}}`;
}

/**
 * SHA-256 of a document's body: everything but the `sha256` field itself.
 * @source NIST FIPS 180-4.
 */
export function bodyHash(document: { [key: string]: Json }): string {
  const { sha256: _own, ...body } = document;
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(body))));
}
