import { fromCents } from '../../money';
import type { Evaluation } from '../../evaluation';
import { summarise } from '../../evaluation';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, points, type Child, type Markup } from './markup';
import { dateWords, dollarsAndCents, percentWords } from './words';

/** The most figures that stand on the decision sheet. */
export const MOST_FIGURES = 14;

/** Figures that are always there, beside fiscal years, alternatives and board dates. */
const FIXED_FIGURES = 7;

function figure(words: string): Markup {
  return element('b', { class: 'figure' }, words);
}

/**
 * Page one, which stands alone: what is asked for, what it costs and when, what goes wrong and who pays, what is not
 * known, and what else there is. At most 14 figures: fewer alternatives are shown before one figure more.
 */
export function decisionSheet(facts: ReportFacts): Markup {
  const { project, summary, evaluation } = facts;
  const { scenario, letter } = evaluation;
  const dates = boardDates(facts).slice(0, 2);
  const years = (facts.fiscalYears ?? []).slice(0, 2);
  const room = MOST_FIGURES - FIXED_FIGURES - dates.length - years.length;
  return element(
    'section',
    { class: 'answers' },
    element('h1', {}, project.title),
    sampleLine(project.sample),
    element(
      'p',
      { class: 'lead' },
      `${project.site.county} is asked to approve scenario ${letter}, ${lowerFirst(scenario.title)}, with a budget of `,
      figure(dollarsAndCents(summary.budget)),
      '.',
    ),
    heading(2, 'What it costs'),
    paragraph(
      'The work costs ',
      figure(dollarsAndCents(summary.total)),
      ' at the month of spending. The budget adds a contingency of ',
      figure(dollarsAndCents(summary.contingency)),
      ' for what an estimate of this kind has missed before.',
    ),
    yearsLine(facts, years),
    heading(2, 'When it is done'),
    paragraph(
      'The ship is sunk by ',
      figure(dateWords(sinkingDate(facts))),
      '. The last activity ends on ',
      figure(dateWords(facts.parts.schedule.finish)),
      '.',
    ),
    heading(2, 'Why this scenario'),
    points(reasons(facts)),
    heading(2, 'If it goes wrong'),
    points([
      'It is late: each month at the berth costs rent, guards and power. The owner pays unless the contract makes the contractor pay.',
      'It costs more: the owner pays what lies above the grant and above the contract price.',
      'The ship lands on its side or breaks up: clearance may be lost, divers may be barred, and raising her is rarely possible. The owner answers to the permit.',
    ]),
    heading(2, 'After the sinking'),
    paragraph(
      'Monitoring and what the permit asks for cost ',
      figure(dollarsAndCents(summary.byStage['after-sinking'])),
      ' in all, and are part of the total.',
    ),
    heading(2, 'How sure this is'),
    sureLine(facts),
    heading(2, 'What was not studied'),
    points(notStudied(evaluation)),
    heading(2, 'Other choices'),
    points(alternatives(facts, room)),
    heading(2, 'Dates on which the board must act'),
    points(dates.map(({ title, date }): Child => [`${title}: by `, figure(dateWords(date))])),
  );
}

/** The last day of the sinking stage's work that waits for a window of weather. */
function sinkingDate({ parts }: ReportFacts): string | undefined {
  const sinking = new Set(
    parts.items.filter(item => item.stage === 'sinking' && item.window !== undefined).map(item => item.id),
  );
  const days = parts.schedule.activities.filter(activity => sinking.has(activity.id));
  return days
    .map(activity => activity.finish)
    .sort()
    .at(-1);
}

/** Says that an example is one. */
export function sampleLine(sample: boolean): Markup | undefined {
  return sample
    ? element('p', { class: 'sample' }, 'Invented example: ship, place, prices and quotes are not real.')
    : undefined;
}

function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

function yearsLine({ fiscalYears }: ReportFacts, shown: NonNullable<ReportFacts['fiscalYears']>): Markup {
  if (fiscalYears === undefined)
    return paragraph('Spending by fiscal year is not known, because a line is absent. See the findings.');
  const words = shown.flatMap((year, i): Child[] => [
    i === 0 ? '' : ', ',
    `fiscal year ${year.fiscalYear} `,
    figure(dollarsAndCents(fromCents(year.amount))),
  ]);
  const rest = fiscalYears.length > shown.length ? ', and the rest in later years' : '';
  return paragraph('The county spends, before any grant is paid back: ', ...words, `${rest}.`);
}

function sureLine({ summary }: ReportFacts): Markup {
  const share = summary.uncheckedShare;
  if (share === undefined)
    return paragraph('The share nobody has checked is not known, because a line is absent.');
  return paragraph(
    figure(percentWords(share)),
    ' of the total rests on figures nobody has checked yet. Surveys and quotes bring it down.',
  );
}

/** Three reasons at most, each from figures of this estimate. */
function reasons(facts: ReportFacts): string[] {
  const { evaluation, comparison } = facts;
  const others = (comparison?.evaluations ?? []).filter(
    other => other.scenario.id !== evaluation.scenario.id,
  );
  const own = facts.summary.total?.cents;
  const totals = others.map(other => totalOf(other)?.cents);
  const finish = facts.parts.schedule.finish ?? '';
  const finishes = others.map(other => other.estimate?.schedule.finish ?? '');
  const said: string[] = [];
  if (evaluation.scenario.note !== undefined) said.push(evaluation.scenario.note);
  if (others.length > 0 && own !== undefined && totals.every(total => total !== undefined && own <= total))
    said.push('It costs least of the scenarios compared.');
  if (others.length > 0 && finish !== '' && finishes.every(other => other >= finish))
    said.push('None of the scenarios compared is done earlier.');
  const verdict = evaluation.upright?.verdict;
  if (verdict !== undefined) said.push(`The roll-over screen says: ${verdict}. It is a screening only.`);
  return said.length > 0 ? said.slice(0, 3) : ['It is the scenario this estimate was made for.'];
}

function totalOf({ estimate }: Evaluation) {
  return estimate?.money && summarise({ ...estimate, money: estimate.money }).total;
}

function notStudied(evaluation: Evaluation): string[] {
  const upright =
    evaluation.upright === undefined
      ? 'Whether the ship stays upright while sinking.'
      : 'Stability and flooding beyond a screening: it is not a naval architect’s study.';
  return [
    upright,
    'Benefits to fishing, diving and the coast: this paper counts cost and time only.',
    'The chance of overrunning: the budget here is a percentage, not a simulation.',
  ];
}

function alternatives({ comparison, evaluation }: ReportFacts, room: number): Child[] {
  const others = (comparison?.evaluations ?? []).filter(
    other => other.scenario.id !== evaluation.scenario.id,
  );
  const shown = others.slice(0, Math.max(0, room));
  const rest =
    others.length > shown.length ? ['Further scenarios stand in the comparison of this report.'] : [];
  return [
    ...shown.map((other): Child => [
      `Scenario ${other.letter}, ${lowerFirst(other.scenario.title)}: total `,
      figure(dollarsAndCents(totalOf(other))),
      '.',
    ]),
    ...rest,
    'Doing nothing: no cost of this project, no reef. The hull stays with its present owner.',
  ];
}

/** Decisions of the board in the schedule: acceptance of the grant, award, and the like, soonest first. */
export function boardDates({ parts }: ReportFacts): { title: string; date: string }[] {
  const boards = parts.schedule.activities.filter(activity => /\bboard\b/i.test(activity.title));
  return boards
    .map(({ title, finish }) => ({ title, date: finish }))
    .sort((a, b) => (a.date < b.date ? -1 : 1));
}
