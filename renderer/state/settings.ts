import type { Settings } from '../../electron/channels';
import { host } from '../host/bridge';
import { change, state } from './store';
import { workOut } from './working-out';

const ZOOMS = [50, 67, 80, 90, 100, 110, 125, 150, 175, 200];

/** Shows the settings on the page: theme and zoom. */
export function applySettings(settings: Settings): void {
  const root = window.document.documentElement;
  if (settings.theme === 'system') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', settings.theme);
  root.style.setProperty('zoom', `${settings.zoom}%`);
}

/** Changes settings, shows them and lets the host remember them. */
export function setSettings(part: Partial<Settings>): void {
  const before = state().settings;
  const settings = { ...before, ...part };
  change({ settings });
  applySettings(settings);
  void host().writeSettings(settings);
  if (settings.measures !== before.measures) void workOut();
}

/** The next step of zoom up or down. */
export function zoom(direction: 'larger' | 'smaller'): void {
  const now = state().settings.zoom;
  const next = direction === 'larger' ? ZOOMS.find(step => step > now) : ZOOMS.findLast(step => step < now);
  if (next !== undefined) setSettings({ zoom: next });
}
