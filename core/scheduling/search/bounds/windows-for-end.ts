import { criticalPath, type BoundNet } from './bound-net';
import { isRefuted } from './destructive';
import { incompatiblePairs } from './pairs';
import { windowsFor, type Windows } from './windows';

/** The windows of all activities for an assumed end, or null when the rules refute it. */
export function windowsForEnd(net: BoundNet, end: number): Windows | null {
  if (end < criticalPath(net)) return null;
  const windows = windowsFor(net, end);
  return isRefuted(net, windows, incompatiblePairs(net)) ? null : windows;
}
