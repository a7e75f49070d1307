import { isSameData } from '../../core/base';
import type { OpenedRows, WindowHead } from '../../core/views';
import type { NamedEdit } from '../edits/edits';
import { Stopped } from '../engine/client';
import { engine } from '../engine/engine';
import type { Part, Questions, ShownRows } from '../engine/protocol';
import type { RunFound } from '../engine/study-protocol';
import { edited, isEdited, redone, undone, type History } from './history';
import { keepRecovery, stillHolding } from './recovery';
import { unfitting } from './fits';
import { namesIn } from './opened';
import { change, state } from './store';

/** How long a change of the bottom line stays in view, in milliseconds. */
const FRESH = 6000;
/** Shorter work than this says nothing. */
const QUIET = 300;

let asked = 0;
let freshTimer = 0;

/** Works out the document as it stands now and shows the answer; an answer that a later edit overtook is dropped. */
export async function workOut(): Promise<void> {
  const { history, scenario, about, settings, document } = state();
  if (history === undefined) return;
  asked += 1;
  const mine = asked;
  const found = state().runs[runKey(document?.key ?? '', scenario)];
  const late = window.setTimeout(() => change({ isBehind: true }), QUIET);
  try {
    const ask = {
      project: history.project,
      scenario,
      today: about?.today ?? '',
      measures: settings.measures,
      document: document?.key ?? '',
      view: state().view,
      beside: state().lookedAt,
      ...(found === undefined ? {} : { found }),
    };
    const answer = await engine().ask(
      'evaluate',
      ask,
      (done, of, words) => {
        if (mine === asked) change({ working: { done, of, words } });
      },
      part => {
        if (mine === asked) showPart(part);
      },
    );
    if (mine !== asked) return;
    if (answer.hasRows) void lookAtGrant(mine);
    else showFaults(answer);
  } catch (cause) {
    if (mine === asked && !(cause instanceof Stopped)) {
      change({ fault: cause instanceof Error ? cause.message : String(cause) });
    }
  } finally {
    window.clearTimeout(late);
    if (mine === asked) change({ isBehind: false, working: undefined });
  }
}

/** Shows what making the grant budget finds, once it is made. */
async function lookAtGrant(mine: number): Promise<void> {
  try {
    const { head } = await engine().ask('grant', {});
    if (head !== undefined && mine === asked) showFound(head);
  } catch (cause) {
    if (mine === asked && !(cause instanceof Stopped))
      change({ fault: cause instanceof Error ? cause.message : String(cause) });
  }
}

const runKey = (document: string, scenario: string) => `${document} ${scenario}`;

/** Lets the estimate take the contingency that a run has set. */
export function takeRun(document: string, scenario: string, found: RunFound): void {
  const key = runKey(document, scenario);
  const { runs } = state();
  if (isSameData(runs[key], found)) return;
  change({ runs: { ...runs, [key]: found } });
  void workOut();
}

/** Faults of the document that leave nothing to work out keep the last answer in view, with what is wrong. */
function showFaults({ findings }: Questions['evaluate']['answer']): void {
  const first = findings[0];
  change({
    fault: [first?.message, first?.remedy].filter(part => part !== undefined).join(' '),
    openFindings: findings,
  });
}

/** The bottom line comes first, marked as settling; then the view looked at with all that is settled; then the rest. */
function showPart(part: Part): void {
  const { rows } = state();
  if (part.kind === 'head') show(part.rows, part.opened ?? {});
  else if (rows === undefined) return;
  else if (part.kind === 'view') change({ rows: { ...rows, ...part.rows } });
  else change({ rows: { ...rows, bottom: part.bottom }, isBehind: true });
}

function show(rows: ShownRows, opened: Partial<OpenedRows>): void {
  const isFresh = Object.keys(rows.changes).length > 0;
  change({
    rows,
    opened: { ...state().opened, ...opened },
    ofLast: namesIn(opened),
    notices: stillHolding(state().notices, rows.findings),
    isBehind: false,
    fault: undefined,
    changes: rows.changes,
    areChangesFresh: isFresh,
    scenario: rows.scenario,
  });
  if (isFresh) change({ status: rows.changeWords });
  window.clearTimeout(freshTimer);
  freshTimer = window.setTimeout(() => change({ areChangesFresh: false }), FRESH);
  void refreshWhy();
}

/** The head once more, with all that is found; a change that was told already is not told again. */
function showFound(head: WindowHead): void {
  const { rows, notices } = state();
  if (rows === undefined) return;
  change({
    rows: { ...rows, ...head },
    notices: stillHolding(notices, head.findings),
    changes: head.changes,
  });
  if (head.changeWords !== rows.changeWords && Object.keys(head.changes).length > 0)
    change({ status: head.changeWords });
}

/** The open derivation follows the edit it may have come from. */
async function refreshWhy(): Promise<void> {
  const open = state().why.at(-1);
  if (open === undefined) return;
  const now = await engine().ask('why', { id: open.id });
  if (now !== null) change({ why: [...state().why.slice(0, -1), now] });
}

/** The chosen scenario, or the first when an edit took it away. */
function knownScenario({ project }: History): string {
  const { scenario } = state();
  return project.scenarios.some(one => one.id === scenario) ? scenario : (project.scenarios[0]?.id ?? '');
}

function put(history: History, status: string): void {
  if (history === state().history) return;
  change({ history, status, scenario: knownScenario(history) });
  keepRecovery();
  void workOut();
}

/**
 * Makes an edit of the document and works it out.
 * @returns why it was not made, when the document could not be opened again with it.
 */
export function edit(named: NamedEdit): string | undefined {
  const { history, document, scenario } = state();
  if (history === undefined) return undefined;
  if (document?.readOnly === true) {
    change({ status: 'This document is open for reading only. Save it under another name to change it.' });
    return undefined;
  }
  const after = edited(history, named);
  const wrong = unfitting(history.project, after.project, scenario, named);
  if (wrong === undefined) put(after, '');
  else change({ status: wrong });
  return wrong;
}

export function undo(): void {
  const { history } = state();
  const step = history?.past.at(-1);
  if (history !== undefined && step !== undefined) put(undone(history), `Undone: ${step.label}`);
}

export function redo(): void {
  const { history } = state();
  const step = history?.future[0];
  if (history !== undefined && step !== undefined) put(redone(history), `Done again: ${step.label}`);
}

/** Stops long work; the last answer stays in view. */
export function stopWorking(): void {
  engine().cancel();
  change({ working: undefined, isBehind: false, status: 'Stopped. The last answer stays.' });
}

export function isUnsaved(): boolean {
  const { history } = state();
  return history !== undefined && isEdited(history);
}
