import { dayOf, isoOf } from '../../../core/calendar';
import type { PracticeId, ReviewActivity, ReviewInput, ReviewLine } from '../../../core/review';
import { derive, type Draft } from './clean-project';

/** Plants one fault alone in a clean draft; `pick` chooses among its kinds and places. */
export type Plant = (draft: Draft, pick: number) => ReviewInput;

/** For each check the generator of its fault. */
export const PLANTS: Readonly<Record<PracticeId, Plant>> = {
  'whole-life': (draft, pick) => {
    const stage = draft.lines[2 + (pick % 20)]?.stage;
    return derive({ ...draft, lines: draft.lines.filter(line => line.stage !== stage) });
  },
  'baseline-defined': (draft, pick) =>
    derive({
      ...draft,
      definition: draft.definition.map((item, i) => ({ ...item, isKnown: i !== pick % 4 })),
    }),
  structure: (draft, pick) => {
    const copied = draft.lines[1 + (pick % 20)] ?? fail();
    const schedule = withActivity(draft, 'B3', one => ({ ...one, lineIds: [...one.lineIds, 'copy'] }));
    return derive({ ...draft, schedule, lines: [...draft.lines, { ...copied, id: 'copy' }] });
  },
  assumptions: draft => derive(withLine(draft, 23, line => without(line, 'assumption'))),
  sources: (draft, pick) => derive(withLine(draft, pick % 24, line => ({ ...line, source: ' ' }))),
  repeatable: (draft, pick) => derive(withLine(draft, 1 + 3 * (pick % 7), line => without(line, 'workings'))),
  'baseline-agrees': (draft, pick) =>
    derive(
      withLine(draft, pick % 24, line =>
        pick % 2 ? { ...line, firstMonth: '2026-12' } : { ...line, lastMonth: '2033-01' },
      ),
    ),
  approval: draft => derive(without(draft, 'approval')),
  'best-method': draft =>
    derive(
      withLine(draft, 0, line => ({
        ...line,
        basis: 'from memory',
        workings: '3 at 5',
        assumption: 'like the last',
      })),
    ),
  inflation: (draft, pick) =>
    pick % 2
      ? derive({ ...draft, isEscalated: false })
      : derive(withLine(draft, 2 * (pick % 12), line => ({ ...line, isNormalised: false }))),
  arithmetic: (draft, pick) =>
    pick % 2
      ? derive({ ...draft, totalOffset: 1 })
      : derive(withLine(draft, pick % 24, line => ({ ...line, elementSum: line.elementSum - 1 }))),
  refreshed: draft => derive({ ...draft, madeOn: '2025-01-15' }),
  variances: (draft, pick) => {
    const input = derive(draft);
    if (input.earlier === undefined || input.earlier === 'first') return fail();
    const steps = input.earlier.steps.filter((_, index) => index !== pick % 2);
    return { ...input, earlier: { ...input.earlier, steps } };
  },
  lessons: draft => derive({ ...draft, lessons: [] }),
  history: draft => derive({ ...draft, hull: { hullClass: 'coastal freighter', lengthFeet: 271 } }),
  sensitivity: (draft, pick) => derive(pick % 2 ? without(draft, 'drivers') : { ...draft, drivers: ['tow'] }),
  uncertainty: (draft, pick) =>
    derive(
      pick % 2
        ? without(draft, 'planPercentile')
        : withLine(draft, pick % 24, line => ({ ...line, isRanged: false })),
    ),
  'cross-checks': draft => derive(withLine(draft, 0, line => ({ ...line, isCrossChecked: false }))),
  independent: (draft, pick) => {
    const input = derive(draft);
    return pick % 2
      ? without(input, 'independent')
      : { ...input, independent: { total: Math.round(input.total * 1.3) } };
  },
  activities: (draft, pick) =>
    derive({ ...draft, schedule: withActivity(draft, `A${pick % 12}`, one => ({ ...one, lineIds: [] })) }),
  sequence: plantSequence,
  resources: (draft, pick) =>
    derive({ ...draft, schedule: withActivity(draft, `B${pick % 12}`, one => without(one, 'crew')) }),
  durations: (draft, pick) =>
    derive({
      ...draft,
      schedule: withActivity(draft, `A${pick % 12}`, one => ({ ...one, workDays: 45 + (pick % 60) })),
    }),
  traceable: (draft, pick) => {
    const input = derive(draft);
    const { schedule } = input;
    if (!schedule) return fail();
    if (pick % 2) {
      const broken = { from: `A${5 + (pick % 6)}`, to: `B${pick % 4}`, kind: 'FS' as const, lag: 0 };
      return { ...input, schedule: { ...schedule, relationships: [...schedule.relationships, broken] } };
    }
    const stageDates = schedule.stageDates.map((row, i) =>
      i === pick % 12 ? { ...row, finish: isoOf(dayOf(row.finish) + 1) } : row,
    );
    return { ...input, schedule: { ...schedule, stageDates } };
  },
  'critical-path': (draft, pick) =>
    derive({
      ...draft,
      schedule: withActivity(draft, `A${1 + (pick % 10)}`, one => ({
        ...one,
        isCritical: false,
        totalFloat: 3,
      })),
    }),
  float: (draft, pick) =>
    derive({
      ...draft,
      schedule: withActivity(draft, `B${pick % 12}`, one => ({ ...one, totalFloat: pick % 2 ? -3 : 90 })),
    }),
  'schedule-risk': draft => derive(without(draft, 'chanceOfFinish')),
  progress: (draft, pick) =>
    derive({
      ...draft,
      schedule: withActivity(draft, pick % 2 ? 'A0' : 'B0', one => without(one, 'actualStart')),
    }),
  baseline: draft => derive({ ...draft, schedule: without(draft.schedule, 'baseline') }),
  'contingency-level': (draft, pick) => derive({ ...draft, budgetPercentile: pick % 70 }),
  'contingency-growth': (draft, pick) => derive({ ...draft, contingencyShare: (pick % 32) / 100 }),
};

function plantSequence(draft: Draft, pick: number): ReviewInput {
  const { schedule } = draft;
  const side = `B${pick % 11}`;
  const kinds = [
    () => withActivity(draft, side, one => ({ ...one, fixedDate: one.start })),
    () => ({
      ...schedule,
      relationships: schedule.relationships.map(r => (r.to === side ? { ...r, lag: 2 } : r)),
    }),
    () => ({
      ...schedule,
      relationships: schedule.relationships.map(r => (r.to === side ? { ...r, lag: -2 } : r)),
    }),
    () => ({ ...schedule, relationships: schedule.relationships.filter(r => r.from !== side) }),
    () => ({
      ...schedule,
      relationships: schedule.relationships.filter(r => r.to !== `B${1 + (pick % 10)}`),
    }),
  ];
  return derive({ ...draft, schedule: (kinds[pick % kinds.length] ?? fail)() });
}

function withLine(draft: Draft, index: number, change: (line: ReviewLine) => ReviewLine): Draft {
  return { ...draft, lines: draft.lines.map((line, i) => (i === index ? change(line) : line)) };
}

function withActivity(
  draft: Draft,
  id: string,
  change: (one: ReviewActivity) => ReviewActivity,
): Draft['schedule'] {
  return {
    ...draft.schedule,
    activities: draft.schedule.activities.map(one => (one.id === id ? change(one) : one)),
  };
}

function without<T extends object>(from: T, key: keyof T & string): T {
  const { [key]: _gone, ...rest } = from;
  return rest as T;
}

function fail(): never {
  throw new Error('the clean project has what a fault needs');
}
