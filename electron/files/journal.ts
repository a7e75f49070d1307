import fs from 'node:fs';
import { crc32 } from 'node:zlib';
import { z } from 'zod';
import { saveAtomically } from './atomic-save';

const startSchema = z.strictObject({
  kind: z.literal('start'),
  name: z.string().max(200),
  at: z.string().max(40),
  /** Where the document is saved and the hash it had there; empty for one that was never saved. */
  place: z.string().max(5000),
  base: z.string().max(64),
  text: z.string(),
});
const editSchema = z.strictObject({
  kind: z.literal('edit'),
  at: z.string().max(40),
  from: z.int().min(0),
  cut: z.int().min(0),
  put: z.string(),
});

/** Unsaved work as a journal holds it. */
export interface KeptWork {
  readonly name: string;
  readonly savedAt: string;
  readonly place: string;
  readonly base: string;
  readonly text: string;
  /** Whether the last entry was cut short and left out. */
  readonly torn: boolean;
}

/** Where unsaved work belongs. */
export interface Origin {
  readonly place: string;
  readonly base: string;
}

/** The text without its check sum, which would make two places of every edit. */
export function withoutCheckSum(text: string): string {
  return text.replace(/"sha256":\s*"[0-9a-f]{64}",\s*/, '');
}

function line(entry: unknown): string {
  const json = JSON.stringify(entry);
  return `${crc32(json).toString(16).padStart(8, '0')} ${json}\n`;
}

/** The one place where two texts differ: everything between their common beginning and their common end. */
export function difference(old: string, fresh: string): { from: number; cut: number; put: string } {
  const most = Math.min(old.length, fresh.length);
  let from = 0;
  while (from < most && old.charCodeAt(from) === fresh.charCodeAt(from)) from++;
  let end = 0;
  while (
    end < most - from &&
    old.charCodeAt(old.length - 1 - end) === fresh.charCodeAt(fresh.length - 1 - end)
  )
    end++;
  return { from, cut: old.length - from - end, put: fresh.slice(from, fresh.length - end) };
}

/** An entry of the journal; `undefined` for a line that is torn or altered. */
function entryOf(text: string): unknown {
  const json = text.slice(9);
  if (text[8] !== ' ' || text.slice(0, 8) !== crc32(json).toString(16).padStart(8, '0')) return undefined;
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}

/**
 * The work a journal holds. Entries count up to the first that is torn or altered: what comes after it cannot
 * be trusted. `undefined` when not even the beginning is whole.
 */
export function replay(journal: string): KeptWork | undefined {
  const lines = journal.split('\n');
  const last = lines.pop() ?? '';
  const start = startSchema.safeParse(entryOf(lines[0] ?? ''));
  if (!start.success) return undefined;
  let { text, at } = start.data;
  let torn = last !== '';
  for (const each of lines.slice(1)) {
    const edit = editSchema.safeParse(entryOf(each));
    if (!edit.success || edit.data.from + edit.data.cut > text.length) {
      torn = true;
      break;
    }
    text = text.slice(0, edit.data.from) + edit.data.put + text.slice(edit.data.from + edit.data.cut);
    at = edit.data.at;
  }
  const { name, place, base } = start.data;
  return { name, place, base, savedAt: at, text, torn };
}

/** Reads a journal; a file that is gone or damaged at its beginning counts as absent. */
export function readJournal(file: string): KeptWork | undefined {
  try {
    return replay(fs.readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}

/** The unsaved work of one document: written once whole, then only what each edit changed is added and synced. */
export class Journal {
  readonly #file: string;
  #text: string | undefined;
  #name = '';
  #size = 0;

  constructor(file: string) {
    this.#file = file;
  }

  async keep(name: string, text: string, origin: Origin): Promise<void> {
    const fresh = withoutCheckSum(text);
    const old = this.#text;
    const isLong = this.#size > 4 * fresh.length + 65_536;
    if (old === undefined || isLong || name !== this.#name || !fs.existsSync(this.#file))
      return this.#begin(name, fresh, origin);
    if (old === fresh) return;
    const entry = line({ kind: 'edit', at: new Date().toISOString(), ...difference(old, fresh) });
    const handle = await fs.promises.open(this.#file, 'a');
    try {
      // Until the entry is whole on disk the next one starts the journal anew.
      this.#text = undefined;
      await handle.appendFile(entry);
      await handle.sync();
      this.#text = fresh;
      this.#size += Buffer.byteLength(entry);
    } finally {
      await handle.close();
    }
  }

  async #begin(name: string, text: string, origin: Origin): Promise<void> {
    const entry = line({ kind: 'start', name, at: new Date().toISOString(), ...origin, text });
    await saveAtomically(this.#file, entry);
    this.#text = text;
    this.#name = name;
    this.#size = Buffer.byteLength(entry);
  }
}
