import { goTo } from '../commands/run';
import { change } from '../state/store';
import type { ViewId } from './view-table';

const FACES = '.title-line .view-switches .switch';
/** Long enough for a face to be shown, in milliseconds, and how often a view is waited for. */
const SHOWN = 90;
const MOST = 40;
/** How often an input is looked for once every face of its view was shown. */
const MOST_AGAIN = 5;
/** A view may still grow for so long after an input was found in it, in milliseconds. */
const STILL_LOADING = [250, 700, 1500, 3000];

const wait = () => new Promise(resolve => window.setTimeout(resolve, SHOWN));

/** The input of a place, or the first input below it. */
function inputAt(at: string): HTMLElement | null {
  const found = (how: string, place: string) =>
    window.document.querySelector<HTMLElement>(`[data-edit${how}"${CSS.escape(place)}"]`);
  return at.endsWith('/') ? found('^=', at) : (found('=', at) ?? found('^=', `${at}/`));
}

/** The work item or activity whose input it is: a long list draws the lines around the chosen one. */
function itemOf(at: string | undefined): string | undefined {
  return /^\/(?:items|ownItems|activities)\/([^/]+)/.exec(at ?? '')?.[1];
}

/** Shows the view where an input stands, the face that holds it, and puts the focus on it. */
export async function goToInput(view: ViewId, at?: string): Promise<void> {
  goTo(view, itemOf(at));
  if (at !== undefined) await goToShown(view, () => inputAt(at));
}

/** Shows the view and the face where something stands, a work item or an activity, chooses it and puts the focus there. */
export async function goToSubject(view: ViewId, subject: string): Promise<void> {
  // What is chosen already is chosen anew: a long table brings it into sight only then.
  goTo(view);
  change({ chosen: undefined });
  await wait();
  change({ chosen: subject });
  await goToShown(view, () => subjectIn(view, subject));
}

/** Where something stands in a view: the first input of its row or line, its first cell, or its bar. */
function subjectIn(view: ViewId, subject: string): HTMLElement | SVGElement | null {
  const place = surfaceOf(view)?.querySelector<HTMLElement | SVGElement>(
    `[data-subject="${CSS.escape(subject)}"]`,
  );
  if (place === undefined || place === null) return null;
  const first = (what: string) => place.querySelector<HTMLElement>(what);
  return first('[data-edit]') ?? first('td, button') ?? place;
}

/** Looks through the faces of a view until something is shown, beginning with the one that is open, and looks at it. */
async function goToShown(view: ViewId, find: () => HTMLElement | SVGElement | null): Promise<void> {
  const reader = watched();
  await wait();
  const tried = new Set<string>();
  let again = 0;
  // A view that is opened for the first time is loaded and made first; then its faces are looked through.
  for (let times = 0; times < MOST && again < MOST_AGAIN && find() === null && !reader.goesOn(); times++) {
    const face = facesOf(view).find(one => !tried.has(one.innerText));
    if (face !== undefined) tried.add(face.innerText);
    else if (isMade(view)) again++;
    face?.click();
    await wait();
  }
  if (reader.leave()) return;
  const field = find();
  if (field === null) facesOf(view)[0]?.click();
  if (field !== null) lookAt(field);
}

/** Whether the reader has pressed something else meanwhile, who then is not led anywhere. */
function watched(): { readonly goesOn: () => boolean; readonly leave: () => boolean } {
  let goesOn = false;
  const press = (event: Event) => {
    // A key that is held down repeats; that is no other press.
    if (!(event instanceof KeyboardEvent && event.repeat)) goesOn = true;
  };
  const kinds = ['pointerdown', 'keydown'] as const;
  for (const kind of kinds) window.addEventListener(kind, press, true);
  return {
    goesOn: () => goesOn,
    leave: () => {
      for (const kind of kinds) window.removeEventListener(kind, press, true);
      return goesOn;
    },
  };
}

/** Puts the focus on an input and rings it until it is left: after a press of the mouse a browser draws no ring. */
function lookAt(field: HTMLElement | SVGElement): void {
  // Who has opened it meanwhile keeps the editor.
  if (field !== window.document.activeElement && field.contains(window.document.activeElement)) return;
  field.scrollIntoView({ block: 'center' });
  keepInSight(field);
  field.dataset['found'] = 'true';
  field.addEventListener('blur', () => delete field.dataset['found'], { once: true });
  field.focus();
}

/** While the view still grows, an input that is looked at comes back into sight; scrolling by hand is left alone. */
function keepInSight(field: HTMLElement | SVGElement): void {
  const surface = field.closest('.surface');
  let height = surface?.scrollHeight;
  const look = () => {
    if (surface === null || surface.scrollHeight === height) return;
    height = surface.scrollHeight;
    if (window.document.activeElement !== field) return;
    const [{ top, bottom }, around] = [field.getBoundingClientRect(), surface.getBoundingClientRect()];
    if (top < around.top || bottom > around.bottom) field.scrollIntoView({ block: 'center' });
  };
  for (const later of STILL_LOADING) window.setTimeout(look, later);
}

const surfaceOf = (view: ViewId) => window.document.querySelector(`.surface[data-view="${view}"]`);

/** Whether a view is shown with something to give in it. */
const isMade = (view: ViewId): boolean => (surfaceOf(view)?.querySelector('[data-edit]') ?? null) !== null;

/** The faces of a view once it is shown; before that none. */
function facesOf(view: ViewId): readonly HTMLButtonElement[] {
  return [...(surfaceOf(view)?.querySelectorAll<HTMLButtonElement>(FACES) ?? [])];
}
