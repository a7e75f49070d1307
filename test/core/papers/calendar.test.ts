import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { calendarFile } from '../../../core/papers';
import { demoProject, estimated, evaluated } from '../evaluation/demo';
import { HOSTILE } from './hostile';

interface ReadEvent {
  readonly uid: string;
  readonly summary: string;
  readonly start: string;
  readonly end: string;
  readonly isDate: boolean;
}

/** The events as another library reads them. */
function events(text: string): ReadEvent[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  return calendar.getAllSubcomponents('vevent').map(component => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      summary: event.summary,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      isDate: event.startDate.isDate && event.endDate.isDate,
    };
  });
}

function written(change?: (project: ReturnType<typeof demoProject>) => void) {
  const project = demoProject();
  change?.(project);
  const evaluation = evaluated(project);
  const text = calendarFile(evaluation);
  if (text === undefined) throw new Error('the example has a schedule');
  return { text, evaluation };
}

/** The day after. */
function next(iso: string): string {
  return new Date(Date.parse(`${iso}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}

describe('the calendar file', () => {
  test('ical.js reads back the dates of the schedule, whole days with an end that is not counted', () => {
    const { text, evaluation } = written();
    const activities = new Map(estimated(evaluation).schedule.activities.map(row => [row.id, row]));
    const read = events(text);
    expect(read.length).toBeGreaterThan(30);
    for (const event of read) {
      const activity = activities.get(event.uid.split('.')[0] ?? '');
      expect([event.start, event.end, event.isDate]).toEqual([
        activity?.start,
        next(activity?.finish ?? '1970-01-01'),
        true,
      ]);
    }
    const ids = read.map(event => event.uid.split('.')[0]);
    for (const { id, stage } of estimated(evaluation).items)
      if (['permits', 'acceptance', 'tow', 'sinking'].includes(stage) && activities.has(id))
        expect(ids).toContain(id);
  });

  test('no line is longer than 75 octets and no character is split, with accents and emoji', () => {
    const { text } = written(project => {
      project.vessel.name = 'Éléonore Øresund 🚢🐠 '.repeat(8).trim();
    });
    const lines = text.split('\r\n');
    expect(lines.filter(line => Buffer.byteLength(line, 'utf8') > 75)).toEqual([]);
    expect(lines.some(line => Buffer.byteLength(line, 'utf8') > 70)).toBe(true);
    expect(text).not.toContain('\ufffd');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(events(text)[0]?.summary).toContain('Éléonore Øresund 🚢🐠');
  });

  test('a second import replaces: each UID once, and the same after the dates have moved', () => {
    const uids = events(written().text).map(event => event.uid);
    expect(new Set(uids).size).toBe(uids.length);
    const later = events(
      written(project => {
        project.calendars.start = '2027-03-01';
      }).text,
    ).map(event => event.uid);
    expect(later).toEqual(uids);
  });

  test('the same project gives the same bytes', () => {
    expect(written().text).toBe(written().text);
  });

  test.each(HOSTILE)('a ship named %j plants no event and reads back as text', name => {
    const { evaluation } = CALM;
    const project = { ...evaluation.project, vessel: { ...evaluation.project.vessel, name } };
    const text = calendarFile({ ...evaluation, project }) ?? '';
    const read = events(text);
    expect(read.length).toBe(events(CALM.text).length);
    const plain = name.replace(/\r\n|\r/g, '\n').replace(/[^\P{Cc}\t\n]/gu, '');
    expect(read[0]?.summary.startsWith(plain)).toBe(true);
  });
});

const CALM = written();
