import { useEffect } from 'react';
import { create } from 'zustand';
import type { Project } from '../../core/project';
import type { BottomCell, WhyRows } from '../../core/views';
import type { StudyAnswers, StudyAsk, StudyAsked, StudyName, StudySaid } from '../engine/study-protocol';
import { markOf, studyAgain, withRun } from './remembered-runs';
import { planRevisionOf, plansOf, revisionOf } from './revisions';
import { setSettings } from './settings';
import { change, state, useWindow, type Working } from './store';
import { takeRun } from './working-out';

/** A long question as the window sees it: its last answer, and whether it is being worked out. */
interface Study<N extends StudyName> {
  readonly answer?: StudyAnswers[N];
  /** The document and the scenario that the answer is about. */
  readonly about?: Project;
  readonly scenario?: string;
  readonly document?: string;
  readonly working?: Working;
  readonly fault?: string;
}
type Studies = { readonly [N in StudyName]: Study<N> };

const NONE: Studies = { risk: {}, compare: {}, decision: {}, choices: {}, levelling: {}, crewPlans: {} };
export const useStudies = create<Studies>(() => NONE);

/** An edit waits this long before a study follows it, in milliseconds. */
const MOMENT = 400;
const RUNNING: Working = { words: 'Working it out', done: 0, of: 0 };

let worker: Worker | undefined;
let count = 0;
const asked = new Map<StudyName, StudyAsk>();
function studies(): Worker {
  if (worker !== undefined) return worker;
  worker = new Worker(new URL('../engine/worker-studies.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<StudySaid>) => hear(event.data);
  return worker;
}

function put<N extends StudyName>(name: N, study: Study<N>): void {
  useStudies.setState({ [name]: study });
}

function hear(said: StudySaid): void {
  const ask = [...asked.values()].find(one => one.number === said.number);
  if (ask === undefined) return;
  const { working: _, ...before } = useStudies.getState()[ask.name];
  if (said.kind === 'progress') {
    put(ask.name, { ...before, working: { words: said.words, done: said.done, of: said.of } });
    return;
  }
  asked.delete(ask.name);
  if (said.kind === 'stopped') put(ask.name, before);
  else if (said.kind === 'fault') put(ask.name, { ...before, fault: said.message });
  else take(ask, said.answer);
}

function take(ask: StudyAsk, answer: StudyAnswers[StudyName] | undefined): void {
  const { name, project, scenario, document, runs } = ask;
  put(name, { ...(answer === undefined ? {} : { answer }), about: project, scenario, document });
  if (runs) change({ status: doneWords(ask) });
  if (runs && name !== 'crewPlans') void remember(ask);
  const { leaves } = useStudies.getState().risk.answer ?? {};
  if (name === 'risk' && leaves !== undefined) takeRun(document, scenario, leaves);
  // The bottom line tells what runs made elsewhere have found.
  if (runs && (name === 'compare' || name === 'decision')) study('risk');
  if (state().history?.project !== project) study(name);
}

function doneWords({ name, number }: StudyAsk): string {
  if (name === 'crewPlans') return 'The search is done.';
  return number === again ? 'The trials of last time were run again.' : 'The runs are done.';
}

/** Keeps in mind of which plan and scenarios trials were run. */
async function remember({ name, project, scenario }: StudyAsk): Promise<void> {
  const plan = await markOf(project);
  const { ran } = state().settings;
  setSettings({
    ran: withRun(ran, plan, name === 'risk' ? [scenario] : project.scenarios.map(({ id }) => id)),
  });
}

/** The number of the run that was begun by opening a document. */
let again = 0;

/** Runs the trials of a document that was just opened again, when they were run of the same plan before. */
export async function runAgain(): Promise<void> {
  const { history, scenario, settings } = state();
  if (history === undefined) return;
  const name = studyAgain(settings.ran, await markOf(history.project), scenario);
  if (name === undefined || state().history !== history) return;
  study(name, true);
  again = count;
}

/** Asks a long question about the document as it stands. */
export function study(name: StudyName, runs = false): void {
  const { history, scenario, about, settings, document } = state();
  if (history === undefined) return;
  const { project } = history;
  const key = document?.key ?? '';
  count += 1;
  const ask: StudyAsk = {
    number: count,
    name,
    project,
    revision: revisionOf(project),
    plans: plansOf(project),
    document: key,
    scenario,
    today: about?.today ?? '',
    measures: settings.measures,
    runs,
  };
  asked.set(name, ask);
  const { working: _, fault: _fault, ...before } = useStudies.getState()[name];
  const isOther = before.document !== key || (before.scenario !== scenario && name !== 'compare');
  put(name, { ...(isOther ? {} : before), working: RUNNING });
  const message: StudyAsked = ask;
  studies().postMessage(message);
}

/** Ends a study at once; what was shown before stays. */
export function stopStudy(name: StudyName): void {
  const message: StudyAsked = { stop: name };
  worker?.postMessage(message);
  asked.delete(name);
  const { working: _, ...before } = useStudies.getState()[name];
  put(name, before);
  change({ status: 'Stopped. The last answer stays.' });
}

/** Whether the answer that a view shows to a long question is about an earlier state of the document. */
export function useIsBehind(view: string): boolean {
  const project = useWindow(window => window.history?.project);
  const about = useStudies(all =>
    view === 'decision' || view === 'compare' ? all[view].answer && all[view].about : undefined,
  );
  return about !== undefined && about !== project;
}

/** A long question of an open view: asked when it opens, and again a moment after every edit. A run goes on meanwhile. */
export function useStudy<N extends StudyName>(name: N): Studies[N] {
  const project = useWindow(window => window.history?.project);
  const scenario = useWindow(window => window.scenario);
  const measures = useWindow(window => window.settings.measures);
  useEffect(() => {
    const { document, scenario: shown } = useStudies.getState()[name];
    const isFirst = document !== state().document?.key || shown !== scenario;
    const timer = window.setTimeout(() => follow(name), isFirst ? 0 : MOMENT);
    return () => window.clearTimeout(timer);
  }, [name, project, scenario, measures]);
  const known = useStudies(all => all[name]);
  const key = useWindow(window => window.document?.key);
  const isOwn = known.document === key && (known.scenario === scenario || name === 'compare');
  return isOwn || known.working !== undefined ? known : NONE[name];
}

/** A run of the same scenario that is going on is not cut short by an edit: it ends, and is then told as of before. */
function follow(name: StudyName): void {
  const going = asked.get(name);
  if (going?.runs === true && going.scenario === state().scenario) return;
  study(name);
}

/** What Risk last told of the document and scenario shown. */
export function useRun(): StudyAnswers['risk'] | undefined {
  const { answer, scenario, document } = useStudies(all => all.risk);
  const key = useWindow(window => window.document?.key);
  const chosen = useWindow(window => window.scenario);
  return document === key && scenario === chosen ? answer : undefined;
}

/** What a run adds to the bottom line; figures of a document that was edited since say so. */
export function useRunCells(): readonly BottomCell[] {
  const about = useStudies(all => all.risk.about);
  const project = useWindow(window => window.history?.project);
  const chosen = useWindow(window => window.scenario);
  const cells = useRun()?.found?.bottom ?? [];
  const isOfPlan =
    about !== undefined &&
    project !== undefined &&
    planRevisionOf(about, chosen) === planRevisionOf(project, chosen);
  return isOfPlan ? cells : cells.map(cell => ({ ...cell, beside: 'before the edit' }));
}

/** How a figure of a study came about: runs, comparison, decision, crews; undefined when it is none of these. */
export function studiedWhy(id: string): WhyRows | undefined {
  const { risk, compare, decision, levelling, crewPlans } = useStudies.getState();
  const answers = [risk.answer, compare.answer, decision.answer, crewPlans.answer?.found];
  return [...answers, ...(levelling.answer?.answers ?? [])]
    .map(answer => answer?.whys?.[id])
    .find(why => why !== undefined);
}
