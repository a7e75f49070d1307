import { intAt } from '../../../../base';
import { earliestFit } from '../../dated-fit';
import { holdFor } from '../../dated-pass';
import { latestStart, startFrom, type DatedWindows, type View } from './windows';

/** Stretches that are remembered one by one; with more, every activity is looked at. */
const MOST_STRETCHES = 16;

/**
 * Compulsory parts: an activity whose latest start lies before its earliest finish is under way in between in any
 * case. False when they exceed a capacity; otherwise activities that no longer fit beside them are moved. Only what
 * has changed since the last time is looked at.
 * @source Lahrichi, Comptes Rendus de l'Academie des Sciences 294 (1982) 209-211 (compulsory parts).
 */
export function besideCompulsory(windows: DatedWindows, way: 0 | 1): boolean {
  const view = windows.views[way];
  const isOpenedAnew = view.inLineAt < 0;
  const isInLine = view.inLineAt === windows.moves;
  if (isInLine && !view.hasMoved) return true;
  const changed = isInLine ? [] : renewed(view, windows.views[way === 0 ? 1 : 0]);
  view.inLineAt = windows.moves;
  const stretches: number[] = [];
  let holds = true;
  for (const [i, from, to] of changed) {
    const isGrown = take(view, i) && (intAt(view.parts.from, i) < from || intAt(view.parts.to, i) > to);
    if (!isGrown) continue;
    holds &&= hasRoom(view, i);
    stretches.push(i);
  }
  // What is held as it was before the windows were opened may have been too much then already.
  if (isOpenedAnew) holds &&= view.parts.holders.every(i => hasRoom(view, i));
  return holds && moveOthers(windows, way, stretches);
}

/** Brings what is held in line with the windows after they were put back. */
export function bringInLine({ views: [forward, backward], moves }: DatedWindows): void {
  for (const [i] of renewed(forward, backward)) take(forward, i);
  for (const [i] of renewed(backward, forward)) take(backward, i);
  forward.inLineAt = moves;
  backward.inLineAt = moves;
}

/** Gives back the parts that have changed and enters the new ones in the tables; each with what it was. */
function renewed(view: View, other: View): (readonly [number, number, number])[] {
  const { holders, from, to } = view.parts;
  const changed: (readonly [number, number, number])[] = [];
  for (const i of holders) {
    const start = latestStart(other, i);
    const finish = intAt(view.times.finishes, i);
    const isHeld = start < finish;
    const [before, after] = [intAt(from, i), intAt(to, i)];
    if (isHeld ? start === before && finish === after : after === 0) continue;
    if (after > 0) holdFor(view.net, view.parts.free, i, before, after, 1);
    changed.push(after > 0 ? [i, before, after] : [i, Infinity, 0]);
    from[i] = isHeld ? start : 0;
    to[i] = isHeld ? finish : 0;
  }
  return changed;
}

/** Takes the part off the capacities; whether there is one. */
function take({ net, parts }: View, i: number): boolean {
  const to = intAt(parts.to, i);
  if (to > 0) holdFor(net, parts.free, i, intAt(parts.from, i), to, -1);
  return to > 0;
}

/** Whether the capacities are kept where an activity is under way in any case. */
function hasRoom({ net, parts }: View, i: number): boolean {
  const from = intAt(parts.from, i);
  const to = intAt(parts.to, i);
  for (let use = intAt(net.uses.first, i); use < intAt(net.uses.first, i + 1); use++) {
    const word = intAt(net.uses.word, use);
    const guard = intAt(net.guards, word);
    for (let slot = word * net.slots + from; slot < word * net.slots + to; slot++) {
      if ((intAt(parts.free, slot) & guard) !== guard) return false;
    }
  }
  return true;
}

/** @param stretches activities whose parts have grown. */
function moveOthers(windows: DatedWindows, way: 0 | 1, stretches: readonly number[]): boolean {
  const view = windows.views[way];
  const { net, parts, times, isMoved } = view;
  const area = stretches.length > MOST_STRETCHES ? null : areaOf(view, stretches);
  for (const i of parts.holders) {
    if (isMoved[i] === 0 && area !== null && !meets(view, i, area, stretches)) continue;
    isMoved[i] = 0;
    const now = intAt(times.starts, i);
    const from = intAt(parts.from, i);
    const to = intAt(parts.to, i);
    if (to > 0 && now === from) continue;
    if (to > 0) holdFor(net, parts.free, i, from, to, 1);
    const start = earliestFit(net, parts.free, i, now);
    if (to > 0) holdFor(net, parts.free, i, from, to, -1);
    if (!startFrom(windows, way, i, start)) return false;
    isMoved[i] = 0;
  }
  view.hasMoved = false;
  return true;
}

/** All that some stretches hold: from when, until when, on which words. */
interface Area {
  readonly from: number;
  readonly to: number;
  readonly words: number;
}

function areaOf({ parts }: View, stretches: readonly number[]): Area {
  let from = Infinity;
  let to = 0;
  let words = 0;
  for (const j of stretches) {
    from = Math.min(from, intAt(parts.from, j));
    to = Math.max(to, intAt(parts.to, j));
    words |= intAt(parts.wordsOf, j);
  }
  return { from, to, words };
}

/** Whether an activity at its earliest lies on one of the stretches, on a word that is held there. */
function meets({ parts, times }: View, i: number, area: Area, stretches: readonly number[]): boolean {
  const start = intAt(times.starts, i);
  const finish = intAt(times.finishes, i);
  const words = intAt(parts.wordsOf, i);
  if ((words & area.words) === 0 || finish <= area.from || start >= area.to) return false;
  for (const j of stretches) {
    if (
      j !== i &&
      intAt(parts.from, j) < finish &&
      intAt(parts.to, j) > start &&
      (words & intAt(parts.wordsOf, j)) !== 0
    ) {
      return true;
    }
  }
  return false;
}
