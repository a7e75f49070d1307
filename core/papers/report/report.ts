import type { Evaluation } from '../../evaluation';
import type { Comparison } from '../../scenario';
import { basisPage } from './basis-page';
import { comparisonPage } from './comparison-page';
import { costPage } from './cost-page';
import { decisionSheet } from './decision-sheet';
import { reportFacts } from './facts';
import { escaped, inside } from './markup';
import { pageStyle } from './style';
import { timePage } from './time-page';

/**
 * The report for the board as one page of HTML that needs nothing from elsewhere: a decision sheet that stands alone,
 * then cost, time, comparison and basis. Printed by a browser it is a tagged PDF of a few pages.
 * @param comparison all scenarios side by side; without it alternatives are left out.
 * @returns nothing without an estimate: its findings say why.
 */
export function reportHtml(evaluation: Evaluation, comparison?: Comparison): string | undefined {
  const facts = reportFacts(evaluation, comparison);
  if (facts === undefined) return undefined;
  const { project, today } = evaluation;
  const title = `${project.title}: scenario ${evaluation.letter}, ${evaluation.scenario.title}`;
  const sample = project.sample ? 'Invented example. ' : '';
  const foot = `${sample}Estimate of ${today}. Document ${facts.documentHash}. Format ${project.version}.`;
  const body = [
    decisionSheet(facts),
    costPage(facts),
    timePage(facts),
    comparisonPage(facts),
    basisPage(facts),
  ];
  return [
    '<!doctype html>',
    '<html lang="en-US"><head><meta charset="utf-8">',
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'">',
    `<title>${escaped(title)}</title>`,
    `<style>${pageStyle(foot, `Scenario ${evaluation.letter}`)}</style></head>`,
    `<body>${body.map(inside).join('\n')}</body></html>`,
    '',
  ].join('\n');
}
