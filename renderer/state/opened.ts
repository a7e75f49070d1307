import { useEffect } from 'react';
import type { OpenedName, OpenedRows } from '../../core/views';
import { engine } from '../engine/engine';
import { change, state, useWindow } from './store';

/** The rows of a view that is made when it is opened; asked again after every evaluation that did not bring them. */
export function useOpened<N extends OpenedName>(name: N): OpenedRows[N] | undefined {
  const findings = useWindow(window => window.rows?.findings);
  const opened = useWindow(window => window.opened[name]);
  useEffect(() => {
    if (state().cameAlong !== name) void ask(name);
  }, [findings, name]);
  return opened;
}

async function ask(name: OpenedName): Promise<void> {
  const answer = await engine().ask('opened', { name });
  change({ opened: { ...state().opened, ...answer } });
}
