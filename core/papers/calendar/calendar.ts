import { hashText } from '../../base';
import { dayOf, isoOf } from '../../calendar';
import { stageTitle } from '../../estimate';
import type { Evaluation } from '../../evaluation';
import type { ScheduledActivity } from '../../scheduling';
import type { StageKey, WorkItem } from '../../work';
import { escapedText, folded } from './content-line';

/** Stages whose every activity is a date that people outside the yard wait for. */
const STAGES_TOLD: readonly StageKey[] = ['permits', 'acceptance', 'tow', 'sinking'];

/** What a reader of the calendar must know of its dates. */
const TENTATIVE = 'Date of an estimate, not of a commitment. It moves when the estimate is worked out again.';

/**
 * The calendar file of a scenario: permits and notices, inspections, acceptance, tow and sinking windows, and every
 * hold point, as whole-day events. The same activity keeps its UID, so that a second import replaces the first.
 * @returns nothing when there is no schedule: nothing has a date.
 * @source RFC 5545: 3.6.1 (VEVENT), 3.8.2.2 (DTEND of a date is the day after the last), 3.8.4.7 (UID).
 */
export function calendarFile(evaluation: Evaluation): string | undefined {
  const { estimate, project, scenario } = evaluation;
  if (estimate === undefined || estimate.schedule.activities.length === 0) return undefined;
  const items = new Map(estimate.items.map(item => [item.id, item]));
  const told = estimate.schedule.activities.flatMap(activity => {
    const item = items.get(activity.id);
    return item !== undefined && isTold(item) ? [event(evaluation, activity, item)] : [];
  });
  const sample = project.sample ? 'Invented example. ' : '';
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Reefwright//Reefwright 1//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    `X-WR-CALNAME:${escapedText(`${sample}${project.title}: ${scenario.title}`)}`,
    ...told.flat(),
    'END:VCALENDAR',
  ];
  return lines.map(folded).join('');
}

function isTold(item: WorkItem): boolean {
  return STAGES_TOLD.includes(item.stage) || item.holdPoint || item.window !== undefined;
}

function event(evaluation: Evaluation, activity: ScheduledActivity, item: WorkItem): string[] {
  const { project, scenario, today } = evaluation;
  const sample = project.sample ? 'Invented example. ' : '';
  const ship = hashText(`${project.vessel.name}\n${project.site.name}`, 0).toString(16).padStart(8, '0');
  return [
    'BEGIN:VEVENT',
    `UID:${activity.id}.${scenario.id}.${ship}@reefwright.example`,
    `DTSTAMP:${basic(today)}T000000Z`,
    `DTSTART;VALUE=DATE:${basic(activity.start)}`,
    `DTEND;VALUE=DATE:${basic(isoOf(dayOf(activity.finish) + 1))}`,
    `SUMMARY:${escapedText(`${project.vessel.name}: ${activity.title}`)}`,
    `DESCRIPTION:${escapedText(`${sample}${item.does}\n${TENTATIVE}`)}`,
    `CATEGORIES:${escapedText(stageTitle(item.stage))}`,
    'STATUS:TENTATIVE',
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** A date without hyphens. @source RFC 5545, section 3.3.4. */
function basic(iso: string): string {
  return iso.replaceAll('-', '');
}
