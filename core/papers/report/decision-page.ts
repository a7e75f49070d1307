import {
  criterionTitle,
  differenceTable,
  dominanceWords,
  notComparedWords,
  pairedRisks,
  scoreIn,
  type ComparedValue,
  type Comparison,
  type RiskFacts,
} from '../../scenario';
import { converted, inHundred, measuresOf, roundText, unitFor, type Measures } from '../../units';
import { letterOfScenario } from '../letter-of-scenario';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, table, type Markup } from './markup';
import { dateWords, dollarsAndCents, numberWords, percentWords, wholeDollars } from './words';

/** How the scenarios compare by what counts, and only where they differ. */
export function weighingPage(facts: ReportFacts): Markup | undefined {
  const { comparison } = facts;
  if (comparison === undefined || comparison.evaluations.length < 2) return undefined;
  return element(
    'section',
    {},
    heading(2, 'Weighing the scenarios'),
    ...weightParts(facts),
    ...riskParts(facts),
    heading(2, 'Where they differ'),
    differences(facts, comparison),
    paragraph('Stage by stage the scenarios stand side by side in the workbook.'),
  );
}

function weightParts({ decision }: ReportFacts): Markup[] {
  const { isBoardsOwn, ranked, sensitivity, leftOut, alike, reading } = decision.table;
  const said = [...notComparedWords(decision.table), ...dominanceWords(decision.table)];
  const whose = isBoardsOwn
    ? 'The board set these weights.'
    : 'The board has set no weights yet; these are usual ones, by judgement.';
  return [
    paragraph(
      `Each scenario gets a score for what counts, from 0 for the worst of those compared to 1 for the best. ${whose}`,
    ),
    table(
      'Scores by what counts',
      [
        { title: 'What counts' },
        { title: 'Weight', figures: true },
        ...ranked.map(({ letter }) => ({ title: letter, figures: true })),
        { title: 'The order holds for weights', figures: true },
      ],
      [
        ...sensitivity.map(({ criterion, weight, from, to }) => [
          criterionTitle(criterion, reading),
          percentWords(weight),
          ...ranked.map(one => scoreIn(one, criterion).toFixed(2)),
          `${percentWords(from)} to ${percentWords(to)}`,
        ]),
        ...alike.map(criterion => [
          criterionTitle(criterion, reading),
          '\u2013',
          ...ranked.map(() => '\u2013'),
          'no difference',
        ]),
      ],
      ['Weighted score', '', ...ranked.map(({ score }) => score.toFixed(2)), ''],
    ),
    ...leftOut.map(({ letter, reason }) => paragraph(`Scenario ${letter} is not ranked: it ${reason}.`)),
    ...(said.length === 0 ? [] : [paragraph(said.join(' '))]),
  ];
}

/** How often the runs break a date, where there is such a date. */
const CHANCES: readonly { readonly title: string; readonly of: (risk: RiskFacts) => number | undefined }[] = [
  {
    title: 'End after the last date, of 100',
    of: ({ chanceOfDeadline }) => (chanceOfDeadline === undefined ? undefined : 1 - chanceOfDeadline),
  },
  { title: 'End after the grant, of 100', of: ({ missesGrant }) => missesGrant },
];

const chanceWords = (share: number | undefined) => (share === undefined ? '\u2013' : inHundred(share));

function riskParts({ comparison }: ReportFacts): Markup[] {
  if (comparison === undefined || comparison.risks.length === 0) return [];
  const letterOf = (id: string) => letterOfScenario(comparison.evaluations, id);
  const chances = CHANCES.filter(({ of }) => comparison.risks.some(risk => of(risk) !== undefined));
  return [
    heading(2, 'How sure each is'),
    table(
      'Simulated cost and finish of each scenario',
      [
        { title: 'Scenario' },
        { title: 'Middle of the runs, USD', figures: true },
        { title: '80 of 100 runs, USD', figures: true },
        { title: 'Finish in 80 of 100', figures: true },
        ...chances.map(({ title }) => ({ title, figures: true })),
      ],
      comparison.risks.map(risk => [
        letterOf(risk.scenario),
        wholeDollars(risk.p50),
        wholeDollars(risk.p80),
        dateWords(risk.finishP80),
        ...chances.map(({ of }) => chanceWords(of(risk))),
      ]),
    ),
    paragraph(
      pairedRisks(comparison)
        .map(
          ({ from, to, firstCheaper }) =>
            `With the same luck for both, ${letterOf(from)} costs less than ${letterOf(to)} in ${Math.round(firstCheaper * 100)} of 100 runs.`,
        )
        .join(' '),
    ),
  ];
}

function differences({ project }: ReportFacts, { evaluations }: Comparison): Markup {
  return table(
    'What was chosen and what follows, only where the scenarios differ',
    [{ title: 'What' }, ...evaluations.map(({ letter }) => ({ title: letter, figures: true }))],
    differenceTable(evaluations)
      .filter(({ key }) => !key.startsWith('stage-'))
      .map(({ title, values }) => [
        title,
        ...values.map(value => said(value, measuresOf(project.vessel.length.unit))),
      ]),
    undefined,
    'compared',
  );
}

/** A compared value as a reader of these measures sees it. */
export function said(value: ComparedValue, measures: Measures): string {
  switch (value.kind) {
    case 'money':
      return dollarsAndCents(value.amount);
    case 'number': {
      const shown = converted(String(value.value), value.unit, unitFor(value.unit, measures));
      const number = shown.unit === value.unit ? value.value : Number(roundText(shown.value, 2));
      return `${numberWords(number)} ${shown.unit}`.trim();
    }
    case 'share':
      return percentWords(value.value);
    case 'date':
      return dateWords(value.iso);
    case 'words':
      return value.words;
    case 'absent':
      return 'absent, see Findings';
  }
}
