import type { FindingRow } from '../../core/views';
import { engine } from '../engine/engine';
import { host } from '../host/bridge';
import { change, state, type Notice } from './store';
import { isEdited } from './history';
import { soon } from './soon';

/** Unsaved work is kept within this many milliseconds of an edit. */
const WITHIN = 2000;
const clock = {
  set: (ring: () => void, milliseconds: number) => window.setTimeout(ring, milliseconds),
  stop: (id: number) => window.clearTimeout(id),
};
const keeping = soon(() => void keepNow(), WITHIN, clock);

/** Keeps a copy of unsaved work with the host, soon and once for many edits. */
export function keepRecovery(): void {
  keeping.call();
}

async function keepNow(): Promise<void> {
  const { document, history } = state();
  if (document === undefined || history === undefined) return;
  const edited = isEdited(history);
  void host().markEdited({ name: document.name, edited });
  if (!edited) return;
  const { text } = await engine().ask('write', { project: history.project });
  const { id, key, name } = document;
  const kept = await host().writeRecovery({ key, name, text, id });
  if (!kept.ok)
    addNotice({
      id: 'not-kept',
      head: kept.problem.message,
      words: `${kept.problem.meaning} ${kept.problem.remedy}`,
      actions: [],
    });
}

export async function dropRecovery(key: string): Promise<void> {
  keeping.cancel();
  await host().discardRecovery({ key });
}

/** A key for a document's recovery copy. */
export function newKey(): string {
  return window.crypto.randomUUID().replaceAll('-', '');
}

export function addNotice(notice: Notice): void {
  change({ notices: [...state().notices.filter(other => other.id !== notice.id), notice] });
}

export function dropNotice(id: string): void {
  change({ notices: state().notices.filter(notice => notice.id !== id) });
}

/** The findings that withhold a figure, each by its code and place. */
export function blockingOf(findings: readonly FindingRow[]): readonly string[] {
  return findings
    .filter(({ finding }) => finding.weight === 'blocks')
    .map(({ finding }) => `${finding.code} ${finding.place}`);
}

/** The notices that still hold: what was withheld by a finding is not, once that is mended. */
export function stillHolding(notices: readonly Notice[], findings: readonly FindingRow[]): readonly Notice[] {
  const blocking = new Set(blockingOf(findings));
  return notices.filter(({ whileBlocked = [] }) => whileBlocked.every(one => blocking.has(one)));
}
