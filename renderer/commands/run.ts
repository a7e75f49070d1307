import { VIEWS, type ViewId } from '../frame/view-table';
import { closeDocument, downloadCopy, openDocument, saveAs, saveDocument } from '../state/files';
import { setSettings, zoom } from '../state/settings';
import { change, state } from '../state/store';
import { redo, undo, workOut } from '../state/working-out';
import { COMMANDS, type CommandId } from './table';

function step<T>(list: readonly T[], at: number, by: 1 | -1): T | undefined {
  return list.at(by > 0 ? (at + 1 === list.length ? 0 : at + 1) : at - 1);
}

function stepView(by: 1 | -1): void {
  const at = VIEWS.findIndex(view => view.id === state().view);
  const next = step(VIEWS, at, by);
  if (next !== undefined) goTo(next.id);
}

/** Goes to a view. */
export function goTo(view: ViewId, chosen?: string): void {
  change({ view, panel: 'none', ...(chosen === undefined ? {} : { chosen }) });
}

function stepScenario(by: 1 | -1): void {
  const { history, scenario } = state();
  const all = history?.project.scenarios ?? [];
  const next = step(
    all,
    all.findIndex(one => one.id === scenario),
    by,
  );
  if (next !== undefined) chooseScenario(next.id);
}

export function chooseScenario(id: string): void {
  change({ scenario: id, chosen: undefined });
  void workOut();
}

/** Closes what is open, the nearest thing first. */
function closeNearest(): void {
  const { panel, why } = state();
  if (panel !== 'none') change({ panel: 'none' });
  else if (why.length > 0) change({ why: [] });
  else change({ chosen: undefined });
}

/** What each command does: one that the table names and nothing runs is an error of the types. */
const RUN: Readonly<Record<CommandId, () => void>> = {
  new: () => change({ panel: 'start' }),
  open: openDocument,
  save: () => void saveDocument(),
  scenarios: () => change({ panel: 'scenarios' }),
  import: () => change({ panel: 'import' }),
  'save-as': () => void saveAs(),
  download: () => void downloadCopy(),
  print: () => window.print(),
  close: closeDocument,
  undo,
  redo,
  find: () => change({ panel: 'find' }),
  why: closeNearest,
  larger: () => zoom('larger'),
  smaller: () => zoom('smaller'),
  'actual-size': () => setSettings({ zoom: 100 }),
  us: () => setSettings({ measures: 'us' }),
  metric: () => setSettings({ measures: 'metric' }),
  'theme-system': () => setSettings({ theme: 'system' }),
  'theme-light': () => setSettings({ theme: 'light' }),
  'theme-dark': () => setSettings({ theme: 'dark' }),
  'theme-contrast': () => setSettings({ theme: 'contrast' }),
  'next-view': () => stepView(1),
  'previous-view': () => stepView(-1),
  'next-scenario': () => stepScenario(1),
  'previous-scenario': () => stepScenario(-1),
  findings: () => goTo('review'),
  help: () => change({ panel: 'help' }),
};

/** Runs a command of the table. One that needs a document does nothing without one. */
export function runCommand(id: string): void {
  const command = COMMANDS.find(one => one.id === id);
  if (command === undefined || (command.needsDocument && state().history === undefined)) return;
  RUN[command.id]();
}
