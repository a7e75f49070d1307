import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { DEFAULT_SETTINGS, type RecoveredWork, type Settings } from '../channels';
import { contentHash, saveAtomically } from './atomic-save';
import { Journal, readJournal, withoutCheckSum, type KeptWork, type Origin } from './journal';

/** The folder where the program keeps its own small files, by platform. */
export function appFolder(environment: NodeJS.ProcessEnv = process.env): string {
  const given = environment['REEFWRIGHT_FOLDER'];
  if (given !== undefined && given !== '') return given;
  if (process.platform === 'win32') {
    return path.join(environment['APPDATA'] ?? path.join(os.homedir(), 'AppData', 'Roaming'), 'Reefwright');
  }
  if (process.platform === 'darwin')
    return path.join(os.homedir(), 'Library', 'Application Support', 'Reefwright');
  return path.join(environment['XDG_CONFIG_HOME'] ?? path.join(os.homedir(), '.config'), 'reefwright');
}

export const settingsSchema = z.strictObject({
  theme: z.enum(['system', 'light', 'dark', 'contrast']),
  zoom: z.number().min(50).max(200),
  measures: z.enum(['us', 'metric']),
  ran: z
    .array(z.strictObject({ plan: z.string().max(64), scenarios: z.array(z.string().max(200)).max(100) }))
    .max(20)
    .default([]),
});
const recentSchema = z.array(z.string()).max(10);
/** Work that was let go stays this long, in milliseconds, before it is removed. */
const LET_GO_FOR = 14 * 24 * 3600 * 1000;

/** Reads one small file; a file that is missing or damaged counts as absent, since it only remembers conveniences. */
function readSmall<T>(target: string, schema: z.ZodType<T>): T | undefined {
  try {
    const parsed = schema.safeParse(JSON.parse(fs.readFileSync(target, 'utf8')));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

/** What the program remembers between sessions: settings, recent documents, unsaved work. */
export class AppFolder {
  readonly folder: string;
  readonly #journals = new Map<string, Journal>();

  constructor(folder: string) {
    this.folder = folder;
    fs.mkdirSync(path.join(folder, 'recovery', 'let-go'), { recursive: true });
    this.#sweepLetGo();
  }

  readSettings(): Settings {
    return readSmall(this.#file('settings.json'), settingsSchema) ?? DEFAULT_SETTINGS;
  }

  async writeSettings(settings: Settings): Promise<Settings> {
    await saveAtomically(this.#file('settings.json'), JSON.stringify(settings));
    return settings;
  }

  readRecent(): readonly string[] {
    return readSmall(this.#file('recent.json'), recentSchema) ?? [];
  }

  /** Puts a document first among the ten last used. */
  async noteRecent(target: string): Promise<void> {
    const rest = this.readRecent().filter(other => other !== target);
    await saveAtomically(this.#file('recent.json'), JSON.stringify([target, ...rest].slice(0, 10)));
  }

  async clearRecent(): Promise<void> {
    await saveAtomically(this.#file('recent.json'), '[]');
  }

  /** Adds what an edit changed to the journal of a document, on disk before this returns. */
  async writeRecovery(key: string, name: string, text: string, origin: Origin): Promise<void> {
    const journal = this.#journals.get(key) ?? new Journal(this.#recovery(key));
    this.#journals.set(key, journal);
    await journal.keep(name, text, origin);
  }

  /** Unsaved work of earlier sessions. A journal whose work was saved in the meantime is let go in silence. */
  listRecovery(): readonly RecoveredWork[] {
    return fs
      .readdirSync(path.join(this.folder, 'recovery'))
      .filter(name => /^[a-z0-9]{8,40}\.journal$/.test(name))
      .flatMap(name => {
        const work = readJournal(path.join(this.folder, 'recovery', name));
        const key = name.replace('.journal', '');
        if (work === undefined || isSaved(work)) return [];
        return [{ key, name: work.name, savedAt: work.savedAt, changedSince: isChangedSince(work) }];
      });
  }

  readRecovery(key: string): KeptWork | undefined {
    return readJournal(this.#recovery(key));
  }

  /** Lets unsaved work go: it can be found in the program's folder for two weeks more. */
  async discardRecovery(key: string): Promise<void> {
    this.#journals.delete(key);
    const name = `${key}.journal`;
    if (!fs.existsSync(this.#recovery(key))) return;
    await fs.promises.rename(this.#recovery(key), path.join(this.folder, 'recovery', 'let-go', name));
  }

  #sweepLetGo(): void {
    const folder = path.join(this.folder, 'recovery', 'let-go');
    for (const name of fs.readdirSync(folder)) {
      const file = path.join(folder, name);
      if (Date.now() - fs.statSync(file).mtimeMs > LET_GO_FOR) fs.rmSync(file, { force: true });
    }
  }

  #file(name: string): string {
    return path.join(this.folder, name);
  }

  #recovery(key: string): string {
    return path.join(this.folder, 'recovery', `${key}.journal`);
  }
}

/** The file a journal belongs to, as it is now; `undefined` when it is gone or the work was never saved. */
function savedText(work: KeptWork): string | undefined {
  try {
    return work.place === '' ? undefined : fs.readFileSync(work.place, 'utf8');
  } catch {
    return undefined;
  }
}

function isSaved(work: KeptWork): boolean {
  const saved = savedText(work);
  return saved !== undefined && withoutCheckSum(saved) === work.text;
}

/** Whether the saved file was changed after the work on it began. */
function isChangedSince(work: KeptWork): boolean {
  const saved = savedText(work);
  return saved !== undefined && contentHash(saved) !== work.base;
}
