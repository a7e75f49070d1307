/**
 * The closed list of what the window may ask of its host, with the shape of each question and answer. Both
 * shells (Electron and the loopback host) serve exactly this list. No question carries a path: the host owns
 * dialogs and paths and hands out opaque ids.
 */

import type { Finding } from '../core/base';
import type { TakeBackPreview } from '../core/papers';

/** A problem in words: what happened, what it means, what to do. */
export interface Problem {
  readonly code: string;
  readonly message: string;
  readonly meaning: string;
  readonly remedy: string;
}

/** Every answer: the value, or a problem in words. */
export type Reply<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** What the window is running in. */
export interface About {
  readonly shell: 'electron' | 'browser';
  readonly version: string;
  readonly platform: string;
  /** The machine's date, `YYYY-MM-DD`: core has no clock of its own. */
  readonly today: string;
}

/** A document that the host has opened. `id` is the host's opaque name for the place it came from. */
export interface OpenedDocument {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly readOnly: boolean;
  /** Who else has it open, in words; it is then open for reading only. */
  readonly heldBy?: string;
  /** What to know of the folder it lies in. */
  readonly hint?: string;
}

/** A document the host knows of, without its path. */
export interface ListedDocument {
  readonly id: string;
  readonly name: string;
  readonly folder: string;
  readonly modified: string;
  readonly missing: boolean;
}

/** Unsaved work of an earlier session. */
export interface RecoveredWork {
  readonly key: string;
  readonly name: string;
  readonly savedAt: string;
  /** Whether the saved file was changed by someone else after the work on it began. */
  readonly changedSince: boolean;
}

/** A paper the host has made. */
export interface MadePaper {
  readonly id: string;
  readonly name: string;
  readonly bytes: number;
}

/** A plan whose trials were run: the mark of the plan, and the scenarios they were run of. */
export interface RememberedRun {
  readonly plan: string;
  readonly scenarios: readonly string[];
}

export interface Settings {
  readonly theme: 'system' | 'light' | 'dark' | 'contrast';
  readonly zoom: number;
  readonly measures: 'us' | 'metric';
  /** The plans whose trials are run again when their document is opened, the last first. */
  readonly ran: readonly RememberedRun[];
}

export const DEFAULT_SETTINGS: Settings = { theme: 'system', zoom: 100, measures: 'us', ran: [] };

export type SaveOutcome =
  | { readonly kind: 'saved'; readonly id: string; readonly name: string; readonly warning?: string }
  | { readonly kind: 'changed-outside' }
  | { readonly kind: 'name-taken' }
  | { readonly kind: 'cancelled' };

export type OpenOutcome =
  | { readonly kind: 'opened'; readonly document: OpenedDocument }
  | { readonly kind: 'choose'; readonly documents: readonly ListedDocument[] }
  | { readonly kind: 'cancelled' };

/** Question and answer of every channel. */
export interface Channels {
  readonly about: { request: Record<string, never>; answer: About };
  readonly 'read-settings': { request: Record<string, never>; answer: Settings };
  readonly 'write-settings': { request: Settings; answer: Settings };
  readonly 'opened-at-start': { request: Record<string, never>; answer: OpenedDocument | null };
  readonly 'open-document': { request: Record<string, never>; answer: OpenOutcome };
  readonly 'open-listed': { request: { id: string }; answer: OpenOutcome };
  readonly 'recent-documents': { request: Record<string, never>; answer: readonly ListedDocument[] };
  readonly 'clear-recent': { request: Record<string, never>; answer: readonly ListedDocument[] };
  readonly 'read-sample': { request: { sample: string }; answer: OpenedDocument };
  readonly 'save-document': {
    request: { id: string; text: string; overwrite: boolean };
    answer: SaveOutcome;
  };
  readonly 'save-document-as': {
    request: { name: string; text: string; replace: boolean };
    answer: SaveOutcome;
  };
  readonly 'take-over': { request: { id: string }; answer: OpenOutcome };
  readonly 'close-document': { request: { id: string }; answer: null };
  readonly 'write-recovery': {
    request: { key: string; name: string; text: string; id: string };
    answer: null;
  };
  readonly 'discard-recovery': { request: { key: string }; answer: null };
  readonly 'list-recovery': { request: Record<string, never>; answer: readonly RecoveredWork[] };
  readonly 'read-recovery': { request: { key: string }; answer: OpenedDocument };
  readonly 'make-papers': {
    request: { text: string; scenario: string; only: readonly string[] };
    answer: readonly MadePaper[];
  };
  readonly 'read-paper': { request: { id: string }; answer: { name: string; base64: string } };
  readonly 'read-table': {
    request: { name: string; base64: string };
    answer: { rows: readonly (readonly string[])[] };
  };
  readonly 'take-back': {
    request: { name: string; base64: string; text: string };
    answer: ReturnedPaper;
  };
  readonly 'mark-edited': { request: { name: string; edited: boolean }; answer: null };
}

export type ChannelName = keyof Channels;
export type Request<C extends ChannelName> = Channels[C]['request'];
export type Answer<C extends ChannelName> = Channels[C]['answer'];

/** A paper that came back, looked through: what it would change, what of it is not taken, and the document with it. */
export interface ReturnedPaper {
  readonly findings: readonly Finding[];
  /** Nothing when the paper could not be looked through: the findings say why. */
  readonly preview?: TakeBackPreview;
  /** The text of the document with the changes made; the window takes it only when the person agrees. */
  readonly text?: string;
}

/** What the preload and the loopback bridge hand to the window: one named function for each channel. */
export interface Host {
  about(): Promise<Reply<About>>;
  readSettings(): Promise<Reply<Settings>>;
  writeSettings(settings: Settings): Promise<Reply<Settings>>;
  openedAtStart(): Promise<Reply<OpenedDocument | null>>;
  openDocument(): Promise<Reply<OpenOutcome>>;
  openListed(request: Request<'open-listed'>): Promise<Reply<OpenOutcome>>;
  recentDocuments(): Promise<Reply<readonly ListedDocument[]>>;
  clearRecent(): Promise<Reply<readonly ListedDocument[]>>;
  readSample(request: Request<'read-sample'>): Promise<Reply<OpenedDocument>>;
  saveDocument(request: Request<'save-document'>): Promise<Reply<SaveOutcome>>;
  saveDocumentAs(request: Request<'save-document-as'>): Promise<Reply<SaveOutcome>>;
  takeOver(request: Request<'take-over'>): Promise<Reply<OpenOutcome>>;
  closeDocument(request: Request<'close-document'>): Promise<Reply<null>>;
  writeRecovery(request: Request<'write-recovery'>): Promise<Reply<null>>;
  discardRecovery(request: Request<'discard-recovery'>): Promise<Reply<null>>;
  listRecovery(): Promise<Reply<readonly RecoveredWork[]>>;
  readRecovery(request: Request<'read-recovery'>): Promise<Reply<OpenedDocument>>;
  makePapers(request: Request<'make-papers'>): Promise<Reply<readonly MadePaper[]>>;
  readPaper(request: Request<'read-paper'>): Promise<Reply<{ name: string; base64: string }>>;
  readTable(request: Request<'read-table'>): Promise<Reply<Answer<'read-table'>>>;
  takeBack(request: Request<'take-back'>): Promise<Reply<ReturnedPaper>>;
  markEdited(request: Request<'mark-edited'>): Promise<Reply<null>>;
  onCommand(listener: (command: string) => void): () => void;
  onOpened(listener: (document: OpenedDocument) => void): () => void;
}
