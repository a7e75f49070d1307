import { earliestFit } from '../../dated-fit';
import { holdFor } from '../../dated-pass';
import { NONE } from '../../dice';
import { latestStart, startFrom, type DatedWindows, type View } from './windows';

/**
 * Compulsory parts: an activity whose latest start lies before its earliest finish is under way in between in any
 * case. False when they exceed a capacity; otherwise activities that no longer fit beside them are moved.
 * @source Lahrichi, Comptes Rendus de l'Academie des Sciences 294 (1982) 209-211 (compulsory parts).
 */
export function besideCompulsory(windows: DatedWindows, way: 0 | 1): boolean {
  const view = windows.views[way];
  const other = windows.views[way === 0 ? 1 : 0];
  const parts = new CompulsoryParts(view, other);
  if (view.isSettled && parts.areKnown) return true;
  const before = windows.moves;
  const holds = parts.enter() && parts.moveOthers(windows, way);
  if (holds) parts.leave();
  else view.free.set(view.net.template);
  view.isSettled = holds && windows.moves === before;
  return holds;
}

class CompulsoryParts {
  private readonly view: View;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  /** Whether the windows are as they were the last time. */
  readonly areKnown: boolean;

  constructor(view: View, other: View) {
    const { net, times } = view;
    this.view = view;
    this.from = view.partFrom;
    this.to = view.partTo;
    const starts = view.partStarts;
    let areKnown = true;
    for (let i = 0; i < net.count; i++) {
      const holdsNothing = net.uses.first[i] === net.uses.first[i + 1] || (net.fixed[i] ?? NONE) >= 0;
      const from = latestStart(other, i);
      const to = holdsNothing ? 0 : (times.finishes[i] ?? NONE);
      const start = times.starts[i] ?? NONE;
      areKnown &&= from === this.from[i] && to === this.to[i] && start === starts[i];
      this.from[i] = from;
      this.to[i] = to;
      starts[i] = start;
    }
    this.areKnown = areKnown;
  }

  private hold(i: number, sign: number): void {
    const from = this.from[i] ?? NONE;
    const to = this.to[i] ?? NONE;
    if (from < to) holdFor(this.view.net, this.view.free, i, from, to, sign);
  }

  /** Holds every part; false when one finds no room. */
  enter(): boolean {
    const { net, free } = this.view;
    for (let i = 0; i < net.count; i++) {
      const from = this.from[i] ?? NONE;
      const to = this.to[i] ?? NONE;
      if (from >= to) continue;
      this.hold(i, -1);
      for (let use = net.uses.first[i] ?? NONE; use < (net.uses.first[i + 1] ?? NONE); use++) {
        const word = net.uses.word[use] ?? NONE;
        const guard = net.guards[word] ?? NONE;
        for (let slot = word * net.slots + from; slot < word * net.slots + to; slot++) {
          if (((free[slot] ?? NONE) & guard) !== guard) return false;
        }
      }
    }
    return true;
  }

  moveOthers(windows: DatedWindows, way: 0 | 1): boolean {
    const { net, free, times } = this.view;
    const { first } = net.uses;
    for (let i = 0; i < net.count; i++) {
      const now = times.starts[i] ?? NONE;
      if (first[i] === first[i + 1] || (net.fixed[i] ?? NONE) >= 0 || now === this.from[i]) continue;
      this.hold(i, 1);
      const start = earliestFit(net, free, i, now);
      this.hold(i, -1);
      if (!startFrom(windows, way, i, start)) return false;
    }
    return true;
  }

  leave(): void {
    for (let i = 0; i < this.view.net.count; i++) this.hold(i, 1);
  }
}
