import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { DEFAULT_SETTINGS, type RecoveredWork, type Settings } from '../channels';
import { saveAtomically } from './atomic-save';

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
});
const recentSchema = z.array(z.string()).max(10);
const recoverySchema = z.strictObject({ name: z.string(), savedAt: z.string(), text: z.string() });

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
  constructor(folder: string) {
    this.folder = folder;
    fs.mkdirSync(path.join(folder, 'recovery'), { recursive: true });
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

  async writeRecovery(key: string, name: string, text: string): Promise<void> {
    const record = JSON.stringify({ name, savedAt: new Date().toISOString(), text });
    await saveAtomically(this.#recovery(key), record);
  }

  listRecovery(): readonly RecoveredWork[] {
    return fs
      .readdirSync(path.join(this.folder, 'recovery'))
      .filter(name => /^[a-z0-9]{8,40}\.json$/.test(name))
      .flatMap(name => {
        const work = readSmall(path.join(this.folder, 'recovery', name), recoverySchema);
        return work ? [{ key: name.replace('.json', ''), name: work.name, savedAt: work.savedAt }] : [];
      });
  }

  readRecovery(key: string): { name: string; text: string } | undefined {
    return readSmall(this.#recovery(key), recoverySchema);
  }

  async discardRecovery(key: string): Promise<void> {
    await fs.promises.rm(this.#recovery(key), { force: true });
    await fs.promises.rm(path.join(this.folder, 'recovery', `.${key}.json.before`), { force: true });
  }

  #file(name: string): string {
    return path.join(this.folder, name);
  }

  #recovery(key: string): string {
    return path.join(this.folder, 'recovery', `${key}.json`);
  }
}
