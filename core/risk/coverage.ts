import type { Finding } from '../base';
import { isCollapsed } from './distributions';
import type { PreparedRun } from './prepared';

/** One thing that moves figures, and why sharing one is not counted twice. */
interface Cover {
  readonly kind: 'range' | 'driver' | 'event';
  readonly title: string;
  readonly note: string | undefined;
  readonly figures: readonly string[];
}

/**
 * The double-counting check: an input multiplied by a driver beside its own range, or a line or activity moved by
 * a register event beside a range or driver, is a finding, unless a note on the driver or event says why.
 */
export function coverageFindings(prepared: PreparedRun): Finding[] {
  const byFigure = new Map<string, Set<Cover>>();
  for (const cover of coversOf(prepared)) {
    for (const figure of cover.figures) byFigure.set(figure, (byFigure.get(figure) ?? new Set()).add(cover));
  }
  const inputs = new Set(prepared.inputs.map(i => i.id));
  return [...byFigure].flatMap(([figure, moving]) =>
    isDoubtful(inputs.has(figure), [...moving]) ? [finding(figure, [...moving])] : [],
  );
}

/** A range and a driver on two different inputs of one line are two doubts, not one counted twice. */
function isDoubtful(isInput: boolean, moving: readonly Cover[]): boolean {
  const kinds = new Set(moving.map(c => c.kind));
  if (kinds.size < 2 || !(isInput || kinds.has('event'))) return false;
  return moving.some(c => (isInput ? c.kind === 'driver' : c.kind === 'event') && c.note === undefined);
}

function coversOf(prepared: PreparedRun): Cover[] {
  const ranged = prepared.inputs.filter(i => !isCollapsed(i.distribution));
  const movedBy = (ids: readonly string[]) =>
    prepared.inputs.filter(i => ids.includes(i.id)).flatMap(i => i.moves);
  return [
    ...ranged.map(i => ({
      kind: 'range' as const,
      title: i.title,
      note: undefined,
      figures: [i.id, ...i.moves],
    })),
    ...prepared.drivers.map(d => ({
      kind: 'driver' as const,
      title: d.title,
      note: d.note,
      figures: [...d.inputs, ...movedBy(d.inputs)],
    })),
    ...prepared.events.map(e => ({
      kind: 'event' as const,
      title: e.title,
      note: e.note,
      figures: [...e.costs.map(c => c.line), ...e.delays.map(d => d.activity)],
    })),
  ];
}

function finding(figure: string, moving: readonly Cover[]): Finding {
  const names = moving.map(c => `${c.kind} "${c.title}"`).join(', ');
  return {
    code: 'risk/counted-twice',
    weight: 'warns',
    place: `/risk/figures/${figure}`,
    message: `${figure} is moved by ${names}.`,
    meaning: 'The same doubt may be counted twice, which makes the estimate look less sure than it is.',
    remedy: 'Narrow one of them, or note on the driver or event why both apply.',
  };
}
