import { upperFirst } from '../base';
import { stageTitle } from '../estimate';
import type { Evaluation } from '../evaluation';
import type { Money } from '../money';
import { STAGES } from '../work';
import { summaryOf } from './totals';

/** A value of the difference table; `absent` is a figure that a finding withholds. */
export type ComparedValue =
  | { readonly kind: 'money'; readonly amount: Money }
  | { readonly kind: 'number'; readonly value: number; readonly unit: string }
  | { readonly kind: 'share'; readonly value: number }
  | { readonly kind: 'date'; readonly iso: string }
  | { readonly kind: 'words'; readonly words: string }
  | { readonly kind: 'absent' };

/** A row in which at least two scenarios differ, with a value for each in their order. */
export interface DifferenceRow {
  readonly key: string;
  readonly group: 'input' | 'result';
  readonly title: string;
  readonly values: readonly ComparedValue[];
}

const ABSENT: ComparedValue = { kind: 'absent' };

/** What differs between scenarios, and nothing else: what was put in, and what came out. */
export function differenceTable(evaluations: readonly Evaluation[]): DifferenceRow[] {
  return [...inputRows(evaluations), ...resultRows(evaluations)].filter(({ values }) => {
    const [first, ...others] = values.map(value => JSON.stringify(value));
    return others.some(other => other !== first);
  });
}

function inputRows(evaluations: readonly Evaluation[]): DifferenceRow[] {
  const places = [...new Set(evaluations.flatMap(({ scenario }) => scenario.changes.map(({ at }) => at)))];
  return places.sort().map(place => ({
    key: place,
    group: 'input',
    title: titleOf(place, evaluations),
    values: evaluations.map(evaluation => inputValue(place, evaluation)),
  }));
}

function titleOf(place: string, [first]: readonly Evaluation[]): string {
  const [, section, id] = place.split('/');
  if (section === 'options' && id !== undefined)
    return first?.library.options.find(option => option.id === id)?.title ?? spoken(id);
  if (section === 'items' && id !== undefined)
    return first?.library.items.find(item => item.id === id)?.title ?? spoken(id);
  return spoken(place.slice(1).replaceAll('/', ', '));
}

/** A key in words. */
function spoken(key: string): string {
  const words = key
    .replaceAll('-', ' ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return upperFirst(words);
}

function inputValue(place: string, { project, library }: Evaluation): ComparedValue {
  const [, section, id] = place.split('/');
  if (section === 'options' && id !== undefined) {
    const option = library.options.find(one => one.id === id);
    const chosen = project.options[id] ?? option?.default ?? '';
    return { kind: 'words', words: option?.values.find(value => value.id === chosen)?.title ?? chosen };
  }
  const found = reached(project, place.split('/').slice(1));
  return found === undefined
    ? { kind: 'words', words: 'as in the library' }
    : { kind: 'words', words: said(found) };
}

/** The value at a path; entries of lists are named by their key. */
function reached(value: unknown, steps: readonly string[]): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return value;
  if (Array.isArray(value)) {
    const entries: unknown[] = value;
    const named = entries.find(entry =>
      ['id', 'item', 'driver', 'at'].some(field => fieldOf(entry, field) === step),
    );
    return reached(named ?? entries[Number(step)], rest);
  }
  return reached(fieldOf(value, step), rest);
}

function fieldOf(value: unknown, field: string): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, field)) return undefined;
  return Object.entries(value).find(([key]) => key === field)?.[1];
}

/** A value of the document in words: a figure with its unit, an entry by its fields. */
function said(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  const [amount, unit] = [fieldOf(value, 'value'), fieldOf(value, 'unit')];
  if (typeof amount === 'string' && typeof unit === 'string')
    return unit === '1' || unit === 'each' ? amount : `${amount} ${unit}`;
  return Object.entries(value)
    .filter(([key]) => !['id', 'item', 'note', 'source', 'basis', 'year'].includes(key))
    .map(([key, part]) => `${spoken(key).toLowerCase()}: ${said(part)}`)
    .join(', ');
}

function resultRows(evaluations: readonly Evaluation[]): DifferenceRow[] {
  const row = (
    key: string,
    title: string,
    read: (evaluation: Evaluation) => ComparedValue,
  ): DifferenceRow => ({
    key,
    group: 'result',
    title,
    values: evaluations.map(read),
  });
  const money = (amount: Money | undefined): ComparedValue =>
    amount === undefined ? ABSENT : { kind: 'money', amount };
  return [
    row('total', 'Total', one => money(summaryOf(one)?.total)),
    row('budget', 'Budget', one => money(summaryOf(one)?.budget)),
    ...STAGES.map(stage =>
      row(`stage-${stage}`, `${stageTitle(stage)}, total`, one => money(summaryOf(one)?.byStage[stage])),
    ),
    row('unchecked', 'Share not yet checked', one => shareOf(summaryOf(one)?.uncheckedShare)),
    ...SCHEDULE_ROWS.map(({ key, title, read }) => row(key, title, read)),
    row('permittable', 'Meets every clean-up goal', ({ estimate }) =>
      estimate === undefined
        ? ABSENT
        : {
            kind: 'words',
            words:
              estimate.unmetGoals.length === 0
                ? 'yes'
                : `no: ${estimate.unmetGoals.map(({ title }) => title).join('; ')}`,
          },
    ),
    ...UPRIGHT_ROWS.map(({ key, title, read }) => row(key, title, read)),
  ];
}

interface ReadRow {
  readonly key: string;
  readonly title: string;
  readonly read: (evaluation: Evaluation) => ComparedValue;
}

const SCHEDULE_ROWS: readonly ReadRow[] = [
  { key: 'start', title: 'Start', read: ({ estimate }) => dateOf(estimate?.schedule.start) },
  { key: 'finish', title: 'Finish', read: ({ estimate }) => dateOf(estimate?.schedule.finish) },
  { key: 'work-days', title: 'Work days', read: ({ estimate }) => numberOf(estimate?.schedule.workDays, '') },
  {
    key: 'peak-crew',
    title: 'Most people at once',
    read: ({ estimate }) => numberOf(estimate?.schedule.peakCrew, ''),
  },
];

const UPRIGHT_ROWS: readonly ReadRow[] = [
  {
    key: 'upright',
    title: 'Upright screen',
    read: ({ upright }) => ({ kind: 'words', words: upright?.verdict ?? 'not run' }),
  },
  {
    key: 'heel',
    title: 'Greatest heel while judged (later stages are not)',
    read: ({ upright }) => numberOf(upright?.greatestHeelDegrees, 'degrees', 1),
  },
  {
    key: 'gm',
    title: 'Lowest metacentric height',
    read: ({ upright }) => numberOf(upright?.lowestGmMetres, 'm', 3),
  },
];

function shareOf(value: number | undefined): ComparedValue {
  return value === undefined ? ABSENT : { kind: 'share', value };
}

function dateOf(iso: string | undefined): ComparedValue {
  return iso === undefined ? ABSENT : { kind: 'date', iso };
}

function numberOf(value: number | undefined, unit: string, decimals = 2): ComparedValue {
  return value === undefined ? ABSENT : { kind: 'number', value: Number(value.toFixed(decimals)), unit };
}
