import { goTo } from '../commands/run';
import type { ViewId } from './view-table';

const FACES = '.title-line .view-switches .switch';
/** Long enough for a view to be shown, in milliseconds. */
const SHOWN = 90;

const wait = () => new Promise(resolve => window.setTimeout(resolve, SHOWN));

function inputAt(at: string): HTMLElement | null {
  return window.document.querySelector<HTMLElement>(`[data-edit="${CSS.escape(at)}"]`);
}

/** Shows the view where an input stands, the face that holds it, and puts the focus on it. */
export async function goToInput(view: ViewId, at?: string): Promise<void> {
  goTo(view);
  await wait();
  if (at === undefined) return;
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
