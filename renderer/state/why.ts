import { engine } from '../engine/engine';
import { change, state } from './store';
import { studiedWhy } from './studies';

/** Opens the derivation of a figure; following one from another keeps the way back. */
export async function askWhy(id: string): Promise<void> {
  const answer = studiedWhy(id) ?? (await engine().ask('why', { id }));
  if (answer === null) {
    change({ status: 'There is no derivation of this figure.' });
    return;
  }
  const { why } = state();
  const isOpen = why.at(-1)?.id === id;
  change({ why: isOpen ? [...why.slice(0, -1), answer] : [...why, answer] });
}

export function whyBack(): void {
  change({ why: state().why.slice(0, -1) });
}

export function closeWhy(): void {
  change({ why: [] });
}
