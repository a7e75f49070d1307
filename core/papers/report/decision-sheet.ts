import { upperFirst } from '../../base';
import { fromCents, roundToCents } from '../../money';
import { inAllWords, type Decision } from '../decision';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, points, type Child, type Markup } from './markup';
import { dateWords, dollarsAndCents, monthName, monthWords, percentWords, wholeDollars } from './words';

/** The most figures that stand on the decision sheet. */
export const MOST_FIGURES = 14;
/** How many fiscal years and dates of the board are shown; the rest stands on later pages. */
const YEARS = 3;
const DATES = 2;
/** The share of runs whose cost is told. */
const TOLD_SHARE = 0.8;
/** How many things not studied are named. */
const NOT_STUDIED = 3;

function figure(words: string): Markup {
  return element('b', { class: 'figure' }, words);
}

/**
 * Page one, which stands alone: what is asked for, what it costs and when, what goes wrong and who pays, what is not
 * known, and what else there is. At most 14 figures: fewer alternatives are shown before one figure more.
 */
export function decisionSheet(facts: ReportFacts): Markup {
  const { project, decision } = facts;
  const parts = [...asked(decision), ...cost(decision), ...time(decision), ...trouble(decision)];
  const dates = decision.boardDates.slice(0, DATES);
  const used = inside(parts).split('<b class="figure">').length - 1 + dates.length;
  return element(
    'section',
    { class: 'answers' },
    element('h1', {}, project.title),
    sampleLine(project.sample),
    ...parts,
    heading(2, 'What was not studied'),
    points(decision.notStudied.slice(0, NOT_STUDIED)),
    heading(2, 'Other choices'),
    points(otherChoices(decision, MOST_FIGURES - used)),
    heading(2, 'Dates on which the board must act'),
    dates.length === 0
      ? paragraph('The schedule has no activity of the board.')
      : points(dates.map(({ title, date }): Child => [`${title}: by `, figure(dateWords(date)), '.'])),
  );
}

function inside(parts: readonly Markup[]): string {
  return parts.map(({ markup }) => markup).join('');
}

/** The request in one sentence, and why in three. */
function asked({ request, budget, recommended, letter, scenario }: Decision): Markup[] {
  const isOwn = recommended?.scenario === scenario;
  const amount: Child[] =
    isOwn && budget !== undefined ? [', with a budget of ', figure(dollarsAndCents(budget))] : [];
  const title =
    recommended === undefined ? 'No scenario is recommended' : `Why scenario ${recommended.letter}`;
  const reasons = recommended?.reasons ?? [
    'Each scenario leaves a clean-up goal unmet, or has no total. See the findings.',
  ];
  return [
    element('p', { class: 'lead' }, request, ...amount, '.'),
    ...(isOwn || recommended === undefined
      ? []
      : [
          paragraph(
            `The figures on this page are those of scenario ${letter}, not of scenario ${recommended.letter}.`,
          ),
        ]),
    heading(2, title),
    points(reasons),
    ...(recommended?.besides === undefined ? [] : [paragraph(recommended.besides)]),
  ];
}

function cost(decision: Decision): Markup[] {
  const { letter, total, contingency, budget, budgetCovers, county } = decision;
  return [
    heading(2, `Cost and time of scenario ${letter}`),
    paragraph(
      'The work costs ',
      figure(dollarsAndCents(total)),
      ' at the month of spending. The budget is ',
      figure(dollarsAndCents(budget)),
      contingency === undefined
        ? '.'
        : budgetCovers === undefined
          ? ', with a contingency for what an estimate of this kind has missed before.'
          : ', with a contingency set by the simulated runs.',
    ),
    riskLine(decision),
    ...(county.cost === undefined
      ? []
      : [paragraph(...inAllWords(county.cost, cents => figure(dollarsAndCents(fromCents(cents)))))]),
    countyLine(county),
    ...(county.peakGap === undefined
      ? []
      : [
          paragraph(
            'It lends at most ',
            figure(dollarsAndCents(fromCents(county.peakGap.amount))),
            ` beyond its own share, at the end of ${monthWords(county.peakGap.month)}, until the grant is paid back.`,
          ),
        ]),
  ];
}

function riskLine({ risk, budget, budgetCovers }: Decision): Markup {
  if (risk === undefined) return paragraph('How likely it is to stay inside the budget was not simulated.');
  return paragraph(
    'In 80 of 100 simulated runs the work costs no more than ',
    figure(wholeDollars(risk.p80)),
    budget === undefined
      ? '. There is no budget yet to cover that.'
      : budgetCovers === TOLD_SHARE
        ? '. The budget was set so.'
        : budget.cents >= roundToCents(risk.p80).cents
          ? '. The budget covers that.'
          : '. The budget does not cover that.',
  );
}

const COUNTY_LEAD: Readonly<Record<Decision['county']['of'], string>> = {
  'own share': 'By year that is: ',
  spending: 'No source of funding is named. The county spends: ',
  'not known': '',
};

function countyLine({ of, fiscalYears, fiscalYearStart }: Decision['county']): Markup {
  if (of === 'not known')
    return paragraph('Spending by fiscal year is not known, because a line is absent. See the findings.');
  const shown = fiscalYears.slice(0, YEARS);
  const words = shown.flatMap((year, i): Child[] => [
    i === 0 ? '' : ', ',
    `fiscal year ${year.fiscalYear} `,
    figure(dollarsAndCents(fromCents(year.amount))),
  ]);
  const rest = fiscalYears.length > shown.length ? ', and the rest in later years' : '';
  return paragraph(
    COUNTY_LEAD[of],
    ...words,
    `${rest}. The fiscal year starts in ${monthName(fiscalYearStart)}.`,
  );
}

/** The date of the plan; where another scenario is recommended, what the trials of this one say against it. */
function time({ sunkOn, finish, againstPlan, recommended, scenario }: Decision): Markup[] {
  const said = recommended?.scenario === scenario ? recommended.besides : undefined;
  const against = againstPlan === undefined || againstPlan === said ? '.' : `. ${againstPlan}`;
  return [
    sunkOn === undefined
      ? paragraph(
          'No day of sinking is known. By the plan the last activity ends on ',
          figure(dateWords(finish)),
          against,
        )
      : paragraph('By the plan the ship is sunk by ', figure(dateWords(sunkOn.date)), against),
  ];
}

function trouble({ troubles, afterSinking, uncheckedShare }: Decision): Markup[] {
  const { inTotal, perYear, years } = afterSinking;
  return [
    heading(2, 'If it goes wrong'),
    points(troubles.map(({ title, happens, pays }) => `${title}. ${happens} ${pays}`)),
    heading(2, 'Afterwards, and how sure this is'),
    inTotal === undefined || perYear === undefined
      ? paragraph('What the reef costs after the sinking is not known.')
      : paragraph(
          'What comes after the sinking costs ',
          figure(dollarsAndCents(fromCents(inTotal))),
          ...(years === 1
            ? [' in one year']
            : [
                ` over ${years} years; spread evenly, `,
                figure(dollarsAndCents(fromCents(perYear))),
                ' a year',
              ]),
          '. This is part of the total.',
        ),
    uncheckedShare === undefined
      ? paragraph('The share nobody has checked is not known, because a line is absent.')
      : paragraph(
          figure(percentWords(uncheckedShare)),
          ' of the total rests on figures nobody has checked yet. Surveys and quotes bring it down.',
        ),
  ];
}

/** Says that an example is one. */
export function sampleLine(sample: boolean): Markup | undefined {
  return sample
    ? element('p', { class: 'sample' }, 'Invented example: ship, place, prices and quotes are not real.')
    : undefined;
}

/** The other choices: with their amounts as long as there is room, doing nothing always. */
function otherChoices({ otherChoices: all }: Decision, room: number): Child[] {
  const priced = all.filter(({ kind, amount }) => kind !== 'nothing' && amount !== undefined);
  const shown = priced.slice(0, Math.max(0, room));
  const hidden = priced.slice(shown.length);
  const rest = [
    ...(hidden.some(({ kind }) => kind === 'scenario')
      ? ['More scenarios stand in the comparison of this report.']
      : []),
    ...all
      .filter(({ kind, amount }) => kind === 'published' && amount === undefined)
      .map(
        ({ title }) =>
          `${upperFirst(title)}: no amount for this ship; the basis of the estimate says what is published.`,
      ),
  ];
  const nothing = all.filter(({ kind }) => kind === 'nothing');
  return [
    ...shown.map(({ title, amount, note }): Child => [
      `${upperFirst(title)}: `,
      figure(dollarsAndCents(amount === undefined ? undefined : fromCents(amount))),
      `, ${note}.`,
    ]),
    ...rest,
    ...nothing.map(({ title, note }) => `${title}: ${note}.`),
  ];
}
