import { useEffect, useState } from 'react';
import type { OpenedName, OpenedRows } from '../../core/views';
import { engine } from '../engine/engine';
import { change, state, useWindow, type WindowState } from './store';

/**
 * The rows of a view that is made when it is opened; while it is looked at they come along with every evaluation. A view
 * that is opened does not show rows of an earlier evaluation: until its own are made there are none.
 */
export function useOpened<N extends OpenedName>(name: N): OpenedRows[N] | undefined {
  const findings = useWindow(window => window.rows?.findings);
  const opened = useWindow(window => window.opened[name]);
  const isOfLast = useWindow(window => window.ofLast.includes(name));
  const [isShown, setShown] = useState(isOfLast);
  // Once shown they stay under the hand of the reader, marked while they are of before: see `isOfBefore`.
  if (isOfLast && !isShown) setShown(true);
  useEffect(() => lookAt(name), [name]);
  useEffect(() => {
    if (!state().ofLast.includes(name)) void ask(name);
  }, [findings, name]);
  return isShown || isOfLast ? opened : undefined;
}

/** Lets the rows of a view come along with every evaluation. @returns what ends it. */
export function lookAt(name: OpenedName): () => void {
  change({ lookedAt: [...state().lookedAt, name] });
  return () => {
    const { lookedAt } = state();
    const at = lookedAt.indexOf(name);
    change({ lookedAt: lookedAt.filter((_, place) => place !== at) });
  };
}

/** Whether a view that is looked at may show rows of an earlier evaluation: the document is being worked out, or they are. */
export function isOfBefore({ isBehind, lookedAt, ofLast }: WindowState): boolean {
  return isBehind || lookedAt.some(name => !ofLast.includes(name));
}

/** Asks for the rows of a view. What the engine answers is of the evaluation that it told of last. */
export async function ask(name: OpenedName): Promise<void> {
  const answer = await engine().ask('opened', { name });
  const { opened, ofLast } = state();
  change({ opened: { ...opened, ...answer }, ofLast: [...ofLast, ...namesIn(answer)] });
}

/** The views that are made when they are opened, each by its name. */
const NAMES: { readonly [N in OpenedName]: N } = {
  materials: 'materials',
  funding: 'funding',
  bid: 'bid',
  review: 'review',
  benefit: 'benefit',
  scenarios: 'scenarios',
  evidence: 'evidence',
};

/** Which of them have rows here. */
export function namesIn(rows: Partial<OpenedRows>): readonly OpenedName[] {
  return Object.values(NAMES).filter(name => rows[name] !== undefined);
}
