import type { OpenedDocument, Problem, Reply, SaveOutcome } from '../../electron/channels';
import { engine } from '../engine/engine';
import { host } from '../host/bridge';
import type { ViewId } from '../frame/view-table';
import { isEdited, markSaved, startHistory } from './history';
import { addNotice, dropNotice, dropRecovery, newKey } from './recovery';
import { change, EMPTY_STATE, state, type Notice } from './store';
import { runAgain } from './studies';
import { workOut } from './working-out';

function told(problem: Problem, about: Pick<Notice, 'id' | 'whileBlocked'> = { id: 'problem' }): void {
  addNotice({
    ...about,
    head: problem.message,
    words: `${problem.meaning} ${problem.remedy}`,
    actions: [{ title: 'Close this notice', run: () => dropNotice(about.id) }],
  });
}

/** The value of an answer, or its problem told as a notice. */
export function valueOf<T>(reply: Reply<T>, about?: Pick<Notice, 'id' | 'whileBlocked'>): T | undefined {
  if (reply.ok) return reply.value;
  told(reply.problem, about);
  return undefined;
}

/** Shows a document that the host has opened. One that cannot be read is told in its findings, and nothing changes. */
export async function show(
  opened: OpenedDocument,
  key = newKey(),
  isUnsaved = false,
  first?: ViewId,
): Promise<void> {
  const read = await engine().ask('read', { text: opened.text });
  if (read.project === undefined) {
    change({ openFindings: read.findings, panel: 'none' });
    const first = read.findings[0];
    told({
      code: first?.code ?? 'document/unread',
      message: `${opened.name} could not be opened: ${first?.message ?? 'it is not a project document.'}`,
      meaning: first?.meaning ?? 'Nothing was changed.',
      remedy: first?.remedy ?? 'Choose a file that ends in .reef.json.',
    });
    return;
  }
  const { about, settings, among } = state();
  const before = state().document?.id ?? '';
  const history = startHistory(read.project);
  change({
    ...EMPTY_STATE,
    about,
    settings,
    among,
    document: { id: opened.id, name: opened.name, readOnly: opened.readOnly || read.readOnly, key },
    history: isUnsaved ? { ...history, saved: -1 } : history,
    scenario: read.project.scenarios[0]?.id ?? '',
    view: first ?? (read.project.reader === 'comparison' ? 'decision' : 'vessel'),
    status: `${opened.name} is open.`,
  });
  await letGo(before, opened.id);
  tellOfPlace(opened);
  if (read.readOnly) {
    addNotice({
      id: 'read-only',
      head: 'Open for reading only.',
      words:
        'This document was written by a newer version of the program. Save it under another name to work on a copy.',
      actions: [],
    });
  }
  await workOut();
  if (opened.id !== '') await runAgain();
}

/** Lets others write the document that was open before. */
async function letGo(before: string, now: string): Promise<void> {
  if (before !== '' && before !== now) await host().closeDocument({ id: before });
}

/** Tells who else has the document open, and what to know of its folder. */
function tellOfPlace(opened: OpenedDocument): void {
  dropNotice('held');
  dropNotice('folder');
  if (opened.hint !== undefined)
    addNotice({ id: 'folder', head: 'A network folder.', words: opened.hint, actions: [] });
  if (opened.heldBy === undefined) return;
  addNotice({
    id: 'held',
    head: `${opened.heldBy} has this document open.`,
    words:
      'You can read it, or save a copy under another name. Take it over only if they have stopped working on it.',
    actions: [{ title: 'Take it over', run: () => void takeOver(opened.id) }],
  });
}

async function takeOver(id: string): Promise<void> {
  const outcome = valueOf(await host().takeOver({ id }));
  if (outcome?.kind === 'opened') await show(outcome.document);
}

/** Leaves the document alone when it has unsaved edits and asks; otherwise goes on. */
function unlessUnsaved(then: () => void): void {
  const { history } = state();
  if (history === undefined || !isEdited(history)) then();
  else change({ panel: 'close' });
}

export function openDocument(): void {
  unlessUnsaved(() => void open());
}

async function open(): Promise<void> {
  const outcome = valueOf(await host().openDocument());
  if (outcome?.kind === 'opened') await show(outcome.document);
  if (outcome?.kind === 'choose') change({ among: outcome.documents, panel: 'open' });
}

export async function openListed(id: string): Promise<void> {
  const outcome = valueOf(await host().openListed({ id }));
  if (outcome?.kind === 'opened') await show(outcome.document);
}

/** Opens a file that was dropped on the window or chosen in the page: its text, never its path. */
export async function openFile(file: File): Promise<void> {
  await show({ id: '', name: file.name, text: await file.text(), readOnly: false });
}

export async function openSample(sample: string): Promise<void> {
  const opened = valueOf(await host().readSample({ sample }));
  if (opened !== undefined) await show(opened);
}

/** What each reader needs first. */
const FIRST_VIEWS = { grant: 'funding', bid: 'bid', comparison: 'decision' } as const;

export async function startNew(template: 'grant' | 'bid' | 'comparison', hullType?: string): Promise<void> {
  const today = state().about?.today ?? '';
  const made = await engine().ask('start', {
    template,
    today,
    ...(hullType === undefined ? {} : { hullType }),
  });
  if (made.project === undefined) return;
  const { text } = await engine().ask('write', { project: made.project });
  const opened = { id: '', name: `new ${template}.reef.json`, text, readOnly: false };
  await show(opened, newKey(), true, FIRST_VIEWS[template]);
}

/** The document as text, as it stands now. */
export async function textNow(): Promise<string> {
  const { history } = state();
  if (history === undefined) return '';
  return (await engine().ask('write', { project: history.project })).text;
}

async function afterSaving(outcome: SaveOutcome | undefined): Promise<boolean> {
  const { document, history } = state();
  if (outcome === undefined || document === undefined || history === undefined) return false;
  if (outcome.kind === 'saved') {
    change({
      document: { ...document, id: outcome.id, name: outcome.name, readOnly: false },
      history: markSaved(history),
      status: outcome.warning ?? `Saved as ${outcome.name}.`,
      panel: 'none',
    });
    dropNotice('problem');
    dropNotice('changed-outside');
    dropNotice('read-only');
    await dropRecovery(document.key);
    await host().markEdited({ name: outcome.name, edited: false });
    return true;
  }
  if (outcome.kind === 'changed-outside') askAboutOutside();
  return false;
}

function askAboutOutside(): void {
  addNotice({
    id: 'changed-outside',
    head: 'The file was changed by someone else.',
    words: 'Saving now would replace their work. It is not saved yet.',
    actions: [
      { title: 'Save under another name', run: () => change({ panel: 'save-as' }) },
      { title: 'Replace their version', run: () => void saveDocument(true) },
    ],
  });
}

/** Saves where the document came from; one that came from nowhere is given a name first. */
export async function saveDocument(overwrite = false): Promise<boolean> {
  const { document } = state();
  if (document === undefined) return false;
  if (document.id === '' || document.readOnly) {
    await saveAs();
    return false;
  }
  const text = await textNow();
  return afterSaving(valueOf(await host().saveDocument({ id: document.id, text, overwrite })));
}

/** The desktop window asks with the system's dialog; the browser window asks for a name here. */
export async function saveAs(): Promise<void> {
  const { about, document } = state();
  if (document === undefined) return;
  if (about?.shell === 'browser') change({ panel: 'save-as' });
  else await saveUnder(document.name, true);
}

export async function saveUnder(
  name: string,
  replace: boolean,
): Promise<'saved' | 'name-taken' | 'not-saved'> {
  const outcome = valueOf(await host().saveDocumentAs({ name, text: await textNow(), replace }));
  if (outcome?.kind === 'name-taken') return 'name-taken';
  return (await afterSaving(outcome)) ? 'saved' : 'not-saved';
}

/** Gives the document to the browser as a download, for when the host cannot save. */
export async function downloadCopy(): Promise<void> {
  give(
    state().document?.name ?? 'project.reef.json',
    new Blob([await textNow()], { type: 'application/json' }),
  );
}

/** Hands a file to the person through the browser's own way of saving. */
export function give(name: string, content: Blob): void {
  const link = window.document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

export function closeDocument(): void {
  unlessUnsaved(() => forget());
}

/** Closes without saving; the recovery copy goes too. */
export function forget(): void {
  const { document, about, settings } = state();
  if (document !== undefined) void dropRecovery(document.key);
  if (document !== undefined) void letGo(document.id, '');
  change({ ...EMPTY_STATE, about, settings, status: 'Closed.' });
}
