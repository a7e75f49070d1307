import type { Evaluation } from '../../evaluation';
import { decisionAbout, inAllWords, type Decision } from '../../papers';
import type { Comparison } from '../../scenario';
import { aligned, NOT_APPLYING, words } from '../cells';
import { grantId } from '../funding/names';
import { dollars } from '../number-text';
import { awardWords, inHundred, perCent, simulatedDollars } from '../risk/words';
import { dateWords } from '../schedule-axis';
import { monthWords } from '../../calendar';
import type { Column, Row, Sentence, Shown, TableRows, WhyRow } from '../rows';
import { Derivations, step, type Origin } from '../simulated';
import { roundedDollars } from '../whole-dollars';
import type { DecisionRows } from './rows';
import { choiceTable } from './vote';

/** The decision about a scenario as the window shows it: the same decision that the papers print. */
export function decisionRows(evaluation: Evaluation, comparison: Comparison): DecisionRows {
  const decision = decisionAbout(evaluation, comparison);
  const { recommended } = decision;
  const told = new Derivations('decision');
  const open = (table: TableRows) => told.table(table, originOf(table, decision));
  return {
    whys: told.whys,
    sentence: sentenceOf(decision),
    letter: decision.letter,
    recommended:
      recommended === undefined
        ? undefined
        : {
            scenario: recommended.scenario,
            letter: recommended.letter,
            title: recommended.title,
            isBoardsChoice: recommended.isBoardsChoice,
          },
    reasons: recommended?.reasons ?? [
      'Each scenario leaves a clean-up goal unmet, or has no total. See Review.',
    ],
    besides: recommended?.besides ?? '',
    notThisOne:
      recommended === undefined || recommended.scenario === decision.scenario
        ? ''
        : `The figures on this page are those of scenario ${decision.letter}, not of scenario ${recommended.letter}.`,
    figures: open(figureTable(decision)),
    county: { ...open(countyTable(decision)), note: countyNote(decision, told) },
    troubles: decision.troubles,
    notStudied: decision.notStudied,
    others: open(otherTable(decision)),
    dates: open(dateTable(decision)),
    choice: choiceTable(evaluation, decision),
    caution:
      evaluation.upright === undefined
        ? 'The upright screen was not run.'
        : `The upright screen says “${evaluation.upright.verdict}”: screening, not a naval architect’s study.`,
  };
}

/** What the county bears, with amounts that open. */
function countyNote({ county }: Decision, told: Derivations): Sentence {
  const { peakGap, mostOut, cost } = county;
  const said = [
    COUNTY_NOTES[county.of],
    ...(cost === undefined ? [] : [inAllWords(cost, dollars).join('')]),
    ...(peakGap === undefined
      ? []
      : [
          `At the end of ${monthWords(peakGap.month)} it lends ${dollars(peakGap.amount)} beyond its own share.`,
        ]),
    ...(mostOut === undefined
      ? []
      : [`It has ${dollars(mostOut.amount)} out at most, at the end of ${monthWords(mostOut.month)}.`]),
  ];
  const origin = { path: 'Decision', home: 'funding' };
  const inAll =
    cost && step({ text: 'in all', why: grantId('county', 'total') }, 'its parts and their sources');
  return told.sentence('county-money-note', said.join(' '), origin, COUNTY_RULE, [
    ...(inAll === undefined ? [] : [inAll]),
    ...PLAN,
  ]);
}

const PLAN: readonly WhyRow[] = [
  step({ text: 'the total', why: 'sums/total' }, 'which the budget and its sources follow from'),
  step({ text: 'the finish', why: 'schedule:finish' }, 'the last day of the plan'),
];

const COUNTY_RULE =
  'What the month’s spending leaves to the county when all sources have borne their part, by fiscal year.';
const RULES: Readonly<Record<string, string>> = {
  p80: 'All runs are put in order of cost. 80 in 100 of them cost this much or less. Risk tells the runs and what drives them.',
  award:
    'The runs that cost no more than this are counted; here they are of 100. A contingency that is not allowable is borne by the county.',
  'finish-p80':
    'All runs are put in order of their last day. 80 in 100 of them end by this one. Risk tells the runs and what drives them.',
  sunk: 'The last day of the sinking in the plan.',
  'last-date': 'Given for the project, in Schedule under Calendars.',
  kept: 'The runs that end by that date are counted; here they are of 100.',
  season:
    'The runs in which the tow or the sinking starts in a later season than in the plan are counted; here they are of 100.',
  after:
    'The lines of the stage after the sinking, those that come once among them, at the prices of their years. By year it is their sum over the years they last.',
  'after-year':
    'The lines of the stage after the sinking, those that come once among them, at the prices of their years. By year it is their sum over the years they last.',
  beside:
    'What the ship binds the owner to after the sinking and no line of the estimate holds, by the year; under Life and benefits.',
  'county-money': COUNTY_RULE,
  'other-choices':
    'The total of that scenario, or a figure on record for many ships that is brought to today.',
  'board-dates': 'The start of the activity in the plan that waits for the board.',
};

/** How a figure of the page came about: by the rule of its row or of its table. */
function originOf(table: TableRows, { risk, sunkOn }: Decision): Origin {
  const sinking =
    sunkOn === undefined
      ? PLAN
      : [
          step(
            { text: dateWords(sunkOn.date), why: `activity:${sunkOn.id}` },
            `when this ends: ${sunkOn.title}`,
          ),
          ...PLAN,
        ];
  return {
    path: 'Decision',
    home: risk === undefined ? 'decision' : 'risk',
    words: (_, row) => RULES[row.id] ?? RULES[table.id],
    steps: (_, row) =>
      table.id === 'board-dates'
        ? [step({ text: 'the activity', why: `activity:${row.id}` }, row.cells['what']?.text ?? '')]
        : row.id === 'sunk'
          ? sinking
          : PLAN,
  };
}

/** The request to the board with its amount; where another is recommended or none, the amount is left out. */
function sentenceOf({ request, isPermittable, recommended, scenario, budget, total }: Decision): Sentence {
  const amount = budget ?? total;
  if (!isPermittable || recommended?.scenario !== scenario || amount === undefined) return [`${request}.`];
  const why = budget === undefined ? 'sums/total' : 'sums/budget';
  return [`${request}, with a budget of `, { text: dollars(amount.cents), why }, '.'];
}

const FIGURES: readonly Column[] = [
  { key: 'what', title: 'Cost and time', kind: 'words' },
  { key: 'value', title: 'Figure', kind: 'number' },
];

function figureTable(decision: Decision): TableRows {
  const { total, budget, risk, sunkOn, finish, lastDate, afterSinking, uncheckedShare } = decision;
  const row = (id: string, what: string, value: Shown | undefined): Row[] =>
    value === undefined ? [] : [{ id, kind: 'line', cells: { what: words(what), value } }];
  const money = (amount: { readonly cents: number } | undefined, why: string): Shown | undefined =>
    amount === undefined ? undefined : { text: dollars(amount.cents), why };
  const rows = [
    ...row('total', 'The work costs', money(total, 'sums/total') ?? { text: 'not known', absent: true }),
    ...row('contingency', 'Set aside for what is not known', money(besideTotal(decision), 'sums/budget')),
    ...row('budget', 'Budget', money(budget, 'sums/budget')),
    ...row('p80', '80 in 100 runs cost no more than', risk && words(simulatedDollars(risk.p80))),
    ...row(
      'award',
      risk?.award === undefined ? '' : awardWords(risk.award),
      risk?.award && words(`${inHundred(risk.award.chance)} in 100 runs`),
    ),
    ...row(
      'sunk',
      'By the plan the ship is sunk by',
      sunkOn === undefined ? undefined : words(dateWords(sunkOn.date)),
    ),
    ...row(
      'finish',
      'By the plan all is done by',
      finish === undefined ? undefined : { text: dateWords(finish), why: 'schedule:finish' },
    ),
    ...row(
      'last-date',
      'Last date of the project',
      lastDate === undefined ? undefined : words(dateWords(lastDate)),
    ),
    ...row(
      'kept',
      'All is done by that date in',
      risk?.chanceOfDeadline === undefined
        ? undefined
        : words(`${inHundred(risk.chanceOfDeadline)} in 100 runs`),
    ),
    ...row(
      'season',
      'Another season is needed for the tow or the sinking in',
      risk?.anotherSeason === undefined ? undefined : words(`${inHundred(risk.anotherSeason)} in 100 runs`),
    ),
    ...row('finish-p80', '80 in 100 runs end by', risk && words(dateWords(risk.finishP80))),
    ...row(
      'after',
      `What comes after the sinking costs, ${afterSinking.years === 1 ? 'in one year' : `over ${afterSinking.years} years`}`,
      afterSinking.inTotal === undefined ? undefined : words(dollars(afterSinking.inTotal)),
    ),
    ...row(
      'after-year',
      'Spread over those years, what comes once among it, a year',
      afterSinking.perYear === undefined ? undefined : words(dollars(afterSinking.perYear)),
    ),
    ...row(
      'beside',
      'Beside it, in no total: kept up each year',
      afterSinking.besidePerYear === 0 ? undefined : words(dollars(afterSinking.besidePerYear)),
    ),
    ...row(
      'unchecked',
      'Rests on figures nobody has checked yet',
      uncheckedShare === undefined
        ? undefined
        : { text: `${perCent(uncheckedShare)} %`, why: 'basis:unchecked' },
    ),
  ];
  const caption = `Cost and time of scenario ${decision.letter}`;
  return { id: 'decision-figures', caption, columns: FIGURES, rows };
}

/** The contingency in whole dollars, so that it makes up the budget shown with the total shown. */
function besideTotal({ total, contingency, budget }: Decision): { readonly cents: number } | undefined {
  if (contingency === undefined || total === undefined || budget === undefined) return contingency;
  return { cents: (roundedDollars(budget.cents) - roundedDollars(total.cents)) * 100 };
}

const COUNTY: readonly Column[] = [
  { key: 'year', title: 'Fiscal year', kind: 'words' },
  { key: 'amount', title: 'The county pays', unit: '$', kind: 'number' },
];

const COUNTY_NOTES: Readonly<Record<Decision['county']['of'], string>> = {
  'own share': 'What no grant and no partner bears.',
  spending: 'No source of funding is named: this is the cost of the work.',
  'not known': 'Not known, because a line is absent.',
};

function countyTable({ county, letter }: Decision): TableRows {
  const rows = county.fiscalYears.map(({ fiscalYear, amount }): Row => ({
    id: String(fiscalYear),
    kind: 'line',
    cells: { year: words(String(fiscalYear)), amount: words(dollars(amount).replace('$', '')) },
  }));
  return {
    id: 'county-money',
    caption: `What the county pays in scenario ${letter}, and when`,
    columns: COUNTY,
    rows: aligned(COUNTY, rows),
  };
}

const OTHERS: readonly Column[] = [
  { key: 'what', title: 'Other choice', kind: 'words' },
  { key: 'amount', title: 'Cost', unit: '$', kind: 'number' },
  { key: 'note', title: 'To know', kind: 'words' },
];

function otherTable({ otherChoices }: Decision): TableRows {
  const rows = otherChoices.map(({ kind, title, amount, note }, at): Row => ({
    id: `${kind}-${at}`,
    kind: 'line',
    cells: {
      what: words(title),
      amount: amount === undefined ? NOT_APPLYING : words(dollars(amount).replace('$', '')),
      note: words(note),
    },
  }));
  return { id: 'other-choices', caption: 'Other choices', columns: OTHERS, rows: aligned(OTHERS, rows) };
}

const DATES: readonly Column[] = [
  { key: 'what', title: 'The board must act', kind: 'words' },
  { key: 'date', title: 'By', kind: 'number' },
];

function dateTable({ boardDates }: Decision): TableRows {
  const rows = boardDates.map(({ id, title, date }): Row => ({
    id,
    kind: 'line',
    subject: id,
    cells: { what: words(title), date: words(dateWords(date)) },
  }));
  return { id: 'board-dates', caption: 'Dates of the board', columns: DATES, rows };
}
