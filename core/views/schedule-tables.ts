import { known, lowerFirst } from '../base';
import { aligned, editCell, memberCell, NOT_APPLYING, REMOVE_COLUMN, removeCell, words } from './cells';
import type { EstimateContext } from './context';
import { dateWords } from './schedule-axis';
import type { Column, Row, Shown, TableRows } from './rows';
import { holdingSaid } from './dates-said';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Activity', kind: 'words' },
  { key: 'place', title: 'Place', kind: 'words' },
  { key: 'start', title: 'Start', kind: 'words' },
  { key: 'finish', title: 'Finish', kind: 'words' },
  { key: 'days', title: 'Work days', kind: 'number' },
  { key: 'float', title: 'Total float', unit: 'work days', kind: 'number' },
  { key: 'people', title: 'People', kind: 'number' },
  { key: 'notBefore', title: 'Not before', kind: 'words' },
  { key: 'holds', title: 'What holds its start', kind: 'words', wide: true },
];

/** The schedule as a table: the same as the picture, in order of start. */
export function activityTable({ parts, evaluation }: EstimateContext): TableRows {
  const places = new Map(evaluation.library.places.map(place => [place.id, place.title]));
  const items = new Map(parts.items.map(item => [item.id, item]));
  const adjusted = new Map(evaluation.project.items.map(one => [one.item, one]));
  const ordered = parts.schedule.activities.toSorted(
    (a, b) => a.start.localeCompare(b.start) || a.finish.localeCompare(b.finish),
  );
  const rows = ordered.map((activity): Row => {
    const why = `activity:${activity.id}`;
    const first = activity.heldBy[0];
    const notBefore = adjusted.get(activity.id)?.notBefore ?? '';
    return {
      id: activity.id,
      kind: 'line',
      subject: activity.id,
      cells: {
        title: words(activity.title),
        place: words(known(places, known(items, activity.id).place)),
        start: { text: dateWords(activity.start), why },
        finish: { text: dateWords(activity.finish), why },
        days: { text: String(activity.workDays), why },
        float: activity.critical ? { text: '0', why } : { text: String(activity.totalFloat), why },
        people: activity.crewSize === 0 ? NOT_APPLYING : { text: String(activity.crewSize), why },
        notBefore: {
          text: notBefore === '' ? '–' : dateWords(notBefore),
          edit: {
            at: `/items/${activity.id}/notBefore`,
            kind: 'date',
            value: notBefore,
            label: `Not before, ${lowerFirst(activity.title)}`,
            optional: true,
          },
        },
        holds: words(first === undefined ? '' : holdingSaid(parts.problem, first)),
      },
    };
  });
  return { id: 'activities', caption: 'Activities', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}

const CALENDAR_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Calendar', kind: 'words' },
  { key: 'value', title: 'Value', kind: 'words' },
];

/** Dates and days that the schedule works with. */
export function calendarTable({ evaluation: { project } }: EstimateContext): TableRows {
  const { calendars } = project;
  const date = (field: 'start' | 'deadline', title: string): Row => ({
    id: field,
    kind: 'line',
    cells: {
      title: words(title),
      value: {
        text: calendars[field] === undefined ? '–' : dateWords(calendars[field]),
        edit: {
          at: `/calendars/${field}`,
          kind: 'date',
          value: calendars[field] ?? '',
          label: title,
          ...(field === 'deadline' ? { optional: true as const } : {}),
        },
      },
    },
  });
  const rows: Row[] = [
    date('start', 'Start of the project'),
    date('deadline', 'Last date of the project'),
    {
      id: 'holidays',
      kind: 'line',
      cells: {
        title: words('Federal holidays'),
        value: {
          text: calendars.federalHolidays ? 'not worked' : 'worked',
          edit: {
            at: '/calendars/federalHolidays',
            kind: 'switch',
            value: String(calendars.federalHolidays),
            choices: [
              { id: 'true', title: 'not worked' },
              { id: 'false', title: 'worked' },
            ],
            label: 'Federal holidays',
          },
        },
      },
    },
  ];
  return { id: 'calendar', caption: 'Dates and holidays', columns: CALENDAR_COLUMNS, rows };
}

const CLOSURE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Closure', kind: 'words' },
  { key: 'from', title: 'First day', kind: 'words' },
  { key: 'to', title: 'Last day', kind: 'words' },
  { key: 'yard', title: 'Yard', unit: 'stopped', kind: 'words' },
  { key: 'sea', title: 'Sea', unit: 'stopped', kind: 'words' },
  { key: 'office', title: 'Office', unit: 'stopped', kind: 'words' },
  { key: 'continuous', title: 'Waiting', unit: 'stopped', kind: 'words' },
  REMOVE_COLUMN,
];
const STOPS = ['yard', 'sea', 'office', 'continuous'] as const;
const STOP_WORDS = { yard: 'the yard', sea: 'the sea', office: 'the office', continuous: 'waiting' } as const;
const CALENDARS = STOPS.map(id => ({ id, title: STOP_WORDS[id] }));

/** Days of the project’s own on which work of a kind may not go on. */
export function closureTable({ evaluation: { project } }: EstimateContext): TableRows {
  const rows = project.calendars.closures.map((closure): Row => {
    const at = `/calendars/closures/${closure.id}`;
    const day = (field: 'from' | 'to', label: string): Shown =>
      editCell(
        { at: `${at}/${field}`, kind: 'date', value: closure[field], label: `${closure.title}, ${label}` },
        dateWords(closure[field]),
      );
    return {
      id: closure.id,
      kind: 'line',
      cells: {
        title: editCell({
          at: `${at}/title`,
          kind: 'text',
          value: closure.title,
          label: `Name of ${closure.title}`,
        }),
        from: day('from', 'first day'),
        to: day('to', 'last day'),
        ...Object.fromEntries(
          STOPS.map(id => [
            id,
            memberCell(
              `${at}/calendars/${id}`,
              `${closure.title} stops ${STOP_WORDS[id]}`,
              closure.calendars.includes(id),
            ),
          ]),
        ),
        remove: removeCell(at, `the closure ${closure.title}`),
      },
    };
  });
  return {
    id: 'closures',
    caption: 'Closures of this project',
    columns: CLOSURE_COLUMNS,
    rows,
    add: {
      at: '/calendars/closures',
      what: 'a closure',
      idFrom: 'title',
      entry: { calendars: [''] },
      fields: [
        { path: 'title', kind: 'text', label: 'Name' },
        { path: 'from', kind: 'date', label: 'First day' },
        { path: 'to', kind: 'date', label: 'Last day' },
        { path: 'calendars/0', kind: 'choice', label: 'Stops work of', choices: CALENDARS },
      ],
    },
  };
}
