import fs from 'node:fs';
import path from 'node:path';
import { documentFileName } from './file-name';

/** How a shell lets a person choose a file. The window never takes part in it with a path. */
export interface Desk {
  /** The chosen file, `undefined` when cancelled, or the documents to choose from in the window. */
  chooseToOpen(): Promise<{ path: string | undefined } | { among: readonly string[] }>;
  /** Where to save: the shell's dialog, or a file of that name in the documents folder. */
  chooseToSave(name: string): Promise<string | undefined>;
  /** Whether the shell itself asks before an existing file is replaced. */
  readonly asksBeforeReplacing: boolean;
  markEdited(name: string, edited: boolean): void;
}

/** The desk of the loopback host: the documents of one folder, given when the program starts. */
export function folderDesk(folder: string): Desk {
  return {
    chooseToOpen: () => Promise.resolve({ among: documentsIn(folder) }),
    chooseToSave: async name => {
      await fs.promises.mkdir(folder, { recursive: true });
      return path.join(folder, documentFileName(name));
    },
    asksBeforeReplacing: false,
    markEdited: () => undefined,
  };
}

/** The project documents of a folder, by name. A folder that is not there holds none. */
export function documentsIn(folder: string): readonly string[] {
  if (!fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder)
    .filter(name => name.endsWith('.reef.json') && !name.startsWith('.'))
    .sort()
    .map(name => path.join(folder, name));
}
