import path from 'node:path';
import type {
  ListedDocument,
  OpenedDocument,
  OpenOutcome,
  RecoveredWork,
  SaveOutcome,
  Settings,
} from '../channels';
import { HostProblem } from '../problem';
import fs from 'node:fs';
import { contentHash, saveAtomically } from './atomic-save';
import type { AppFolder } from './app-folder';
import { sweepLeftovers } from './backups';
import type { Desk } from './desk';
import { folderHint } from './folder-hint';
import { DocumentLock, type LockOwner } from './lock';
import { readDocument } from './read-document';
import { isUnchanged, listed, Shelf } from './shelf';

export interface DocumentsOptions {
  readonly desk: Desk;
  readonly appFolder: AppFolder;
  /** Folder of the samples that come with the program. */
  readonly samples: string;
  /** The document named when the program was started. */
  readonly atStart?: string;
}

/** Documents as the window knows them: opened, saved and remembered by the host, named by opaque ids. */
export class HostDocuments {
  readonly #options: DocumentsOptions;
  readonly #shelf = new Shelf();
  /** Documents that this program holds open, by path. */
  readonly #locks = new Map<string, DocumentLock>();

  constructor(options: DocumentsOptions) {
    this.#options = options;
  }

  readSettings(): Settings {
    return this.#options.appFolder.readSettings();
  }

  writeSettings(settings: Settings): Promise<Settings> {
    return this.#options.appFolder.writeSettings(settings);
  }

  async openedAtStart(): Promise<OpenedDocument | null> {
    return this.#options.atStart === undefined ? null : this.openPath(this.#options.atStart);
  }

  /** Opens a file the host itself found: from a dialog, the command line, the desktop, or the list of recent ones. */
  async openPath(target: string): Promise<OpenedDocument> {
    return this.#openPath(target, false);
  }

  async #openPath(target: string, force: boolean): Promise<OpenedDocument> {
    const holder = await this.#hold(target, force);
    const text = await readDocument(target);
    await this.#options.appFolder.noteRecent(path.resolve(target));
    const id = this.#shelf.put(target, contentHash(text));
    const hint = folderHint(target);
    return {
      id,
      name: path.basename(target),
      text,
      readOnly: holder !== undefined || !isWritable(target),
      ...(holder === undefined ? {} : { heldBy: `${holder.user} on ${holder.host}` }),
      ...(hint === undefined ? {} : { hint }),
    };
  }

  /** Holds a document for this program and clears away what an interrupted save left; or tells who holds it. */
  async #hold(target: string, force: boolean): Promise<LockOwner | undefined> {
    const full = path.resolve(target);
    const held = this.#locks.get(full);
    if (held !== undefined && !held.isLost()) return undefined;
    const taken = fs.existsSync(full) ? DocumentLock.take(full, force) : undefined;
    if (taken === undefined || !(taken instanceof DocumentLock)) return taken;
    held?.release();
    this.#locks.set(full, taken);
    await sweepLeftovers(full);
    return undefined;
  }

  /** Takes a document over from someone else, whose window then saves under another name. */
  async takeOver(id: string): Promise<OpenOutcome> {
    return { kind: 'opened', document: await this.#openPath(this.#shelf.get(id).path, true) };
  }

  /** Lets a document go: others may open it for writing. */
  closeDocument(id: string): null {
    const full = this.#shelf.get(id).path;
    this.#locks.get(full)?.release();
    this.#locks.delete(full);
    return null;
  }

  /** Lets every document go, when the program ends. */
  closeAll(): void {
    for (const lock of this.#locks.values()) lock.release();
    this.#locks.clear();
  }

  async open(): Promise<OpenOutcome> {
    const choice = await this.#options.desk.chooseToOpen();
    if ('among' in choice) {
      const others = this.#options.appFolder.readRecent().filter(target => !choice.among.includes(target));
      return {
        kind: 'choose',
        documents: [...choice.among, ...others].map(target => listed(this.#shelf, target)),
      };
    }
    if (choice.path === undefined) return { kind: 'cancelled' };
    return { kind: 'opened', document: await this.openPath(choice.path) };
  }

  async openListed(id: string): Promise<OpenOutcome> {
    return { kind: 'opened', document: await this.openPath(this.#shelf.get(id).path) };
  }

  recent(): readonly ListedDocument[] {
    return this.#options.appFolder.readRecent().map(target => listed(this.#shelf, target));
  }

  async clearRecent(): Promise<readonly ListedDocument[]> {
    await this.#options.appFolder.clearRecent();
    return [];
  }

  async sample(sample: string): Promise<OpenedDocument> {
    const target = path.join(this.#options.samples, `${sample}.reef.json`);
    return { id: '', name: `${sample}.reef.json`, text: await readDocument(target), readOnly: false };
  }

  async save(id: string, text: string, overwrite: boolean): Promise<SaveOutcome> {
    const place = this.#shelf.get(id);
    const holder = await this.#hold(place.path, overwrite);
    if (!overwrite && (holder !== undefined || !(await isUnchanged(place))))
      return { kind: 'changed-outside' };
    return this.#write(place.path, text);
  }

  async saveAs(name: string, text: string, replace: boolean): Promise<SaveOutcome> {
    const target = await this.#options.desk.chooseToSave(name);
    if (target === undefined) return { kind: 'cancelled' };
    const taken = !this.#options.desk.asksBeforeReplacing && !replace && fs.existsSync(target);
    return taken ? { kind: 'name-taken' } : this.#write(target, text);
  }

  async #write(target: string, text: string): Promise<SaveOutcome> {
    const { hash, warning } = await saveAtomically(target, text, 'versions');
    await this.#hold(target, false);
    await this.#options.appFolder.noteRecent(path.resolve(target));
    const saved = { kind: 'saved', id: this.#shelf.put(target, hash), name: path.basename(target) } as const;
    return warning === undefined ? saved : { ...saved, warning };
  }

  /** Keeps unsaved work of the document `id`, which is empty for one that was never saved. */
  async writeRecovery(key: string, name: string, text: string, id: string): Promise<null> {
    const { path: place, hash: base } = id === '' ? { path: '', hash: '' } : this.#shelf.get(id);
    await this.#options.appFolder.writeRecovery(key, name, text, { place, base });
    return null;
  }

  async discardRecovery(key: string): Promise<null> {
    await this.#options.appFolder.discardRecovery(key);
    return null;
  }

  listRecovery(): readonly RecoveredWork[] {
    return this.#options.appFolder.listRecovery();
  }

  readRecovery(key: string): OpenedDocument {
    const work = this.#options.appFolder.readRecovery(key);
    if (work !== undefined) {
      const id = work.place === '' ? '' : this.#shelf.put(work.place, work.base);
      return { id, name: work.name, text: work.text, readOnly: false };
    }
    throw new HostProblem({
      code: 'file/no-recovery',
      message: 'The kept work is not there any more or cannot be read.',
      meaning: 'Nothing was opened; your saved files are as they were.',
      remedy: 'Open the last version you saved.',
    });
  }

  markEdited(name: string, edited: boolean): null {
    this.#options.desk.markEdited(name, edited);
    return null;
  }
}

function isWritable(target: string): boolean {
  try {
    fs.accessSync(target, fs.constants.W_OK);
    return true;
  } catch {
    return false;
  }
}
