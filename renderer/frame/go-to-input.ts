import { goTo } from '../commands/run';
import type { ViewId } from './view-table';

const FACES = '.title-line .view-switches .switch';
/** Long enough for a face to be shown, in milliseconds, and how often a view is waited for. */
const SHOWN = 90;
const MOST = 40;

const wait = () => new Promise(resolve => window.setTimeout(resolve, SHOWN));

function inputAt(at: string): HTMLElement | null {
  return window.document.querySelector<HTMLElement>(`[data-edit="${CSS.escape(at)}"]`);
}

/** Shows the view where an input stands, the face that holds it, and puts the focus on it. */
export async function goToInput(view: ViewId, at?: string): Promise<void> {
  goTo(view);
  await wait();
  if (at === undefined) return;
  // A view that is opened for the first time is loaded and made first.
  for (let times = 0; times < MOST && window.document.querySelector('.title-line') === null; times++)
    await wait();
  let field = inputAt(at);
  const faces = [...window.document.querySelectorAll<HTMLButtonElement>(FACES)];
  for (const face of faces) {
    if (field !== null) break;
    face.click();
    await wait();
    field = inputAt(at);
  }
  if (field === null) faces[0]?.click();
  field?.scrollIntoView({ block: 'center' });
  field?.focus();
}
