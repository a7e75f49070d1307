import { cashPart, fiscalYearTable } from './cost-page';
import type { ScheduledActivity } from '../../scheduling';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, table, type Markup } from './markup';
import { stageSpans, timeChart, type StageSpan } from './time-chart';
import { numberWords } from './words';

/** How many activities of the chain that leads to the finish are listed. */
const LISTED = 3;

/** When it is spent and when it happens: stages over time, and the chain of activities that leads to the finish. */
export function timePage(facts: ReportFacts): Markup {
  const { parts } = facts;
  const { schedule } = parts;
  const spans = stageSpans(parts);
  const byId = new Map(schedule.activities.map(activity => [activity.id, activity]));
  const chain = schedule.criticalChain.flatMap(id => byId.get(id) ?? []);
  const longest = [...chain]
    .sort((a, b) => b.workDays - a.workDays)
    .slice(0, LISTED)
    .sort((a, b) => (a.start < b.start ? -1 : 1));
  return element(
    'section',
    { class: 'page' },
    cashPart(facts),
    heading(2, 'When it happens'),
    paragraph(
      `The schedule has ${schedule.activities.length} activities and work on ${numberWords(schedule.workDays)} days. At most ${numberWords(schedule.peakCrew)} people work on one day.`,
    ),
    spans.length > 0 ? timeChart(spans) : undefined,
    element(
      'div',
      { class: 'side' },
      stageTable(spans),
      element('div', {}, fiscalYearTable(facts), chainTable(longest)),
    ),
  );
}

function stageTable(spans: readonly StageSpan[]): Markup {
  return table(
    'Stages from first start to last finish',
    [{ title: 'Stage' }, { title: 'Start', figures: true }, { title: 'Finish', figures: true }],
    spans.map(span => [span.title, span.start, span.finish]),
  );
}

function chainTable(longest: readonly ScheduledActivity[]): Markup {
  return table(
    'Longest activities of the chain that leads to the finish',
    [{ title: 'Activity' }, { title: 'Finish', figures: true }, { title: 'Work days', figures: true }],
    longest.map(({ title, finish, workDays }) => [title, finish, numberWords(workDays)]),
  );
}
