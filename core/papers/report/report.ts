import type { Evaluation } from '../../evaluation';
import type { Comparison } from '../../scenario';
import { basisPage, findingsPart } from './basis-page';
import { bidFilePages } from './bid-file';
import { comparisonPage } from './comparison-page';
import { costPage } from './cost-page';
import { weighingPage } from './decision-page';
import { decisionSheet } from './decision-sheet';
import { reportFacts, type ReportFacts } from './facts';
import { grantFilePages } from './grant-file';
import { escaped, inside, type Markup } from './markup';
import { pageStyle } from './style';
import { timePage } from './time-page';

/** Who a report is for. */
export const REPORT_READERS = ['board', 'grant', 'bid'] as const;
export type ReportReader = (typeof REPORT_READERS)[number];

/** What each report is called in its title and at the head of its pages. */
const NAMES: Readonly<Record<ReportReader, string>> = {
  board: 'Report to the board',
  grant: 'Grant file',
  bid: 'Bid',
};

const PAGES: Readonly<
  Record<ReportReader, (facts: ReportFacts) => readonly (Markup | undefined)[] | undefined>
> = {
  board: facts => [
    decisionSheet(facts),
    costPage(facts),
    timePage(facts),
    comparisonPage(facts),
    weighingPage(facts),
    findingsPart(facts),
    basisPage(facts),
  ],
  grant: grantFilePages,
  bid: bidFilePages,
};

/**
 * A report as one page of HTML that needs nothing from elsewhere; printed by a browser it is a tagged PDF. For the
 * board: a decision sheet that stands alone, then cost, time, comparison and basis. For the grant file: forms,
 * narrative and the basis of every line. For the bid file: what a bidder shows and nothing of what it is made of.
 * @param comparison all scenarios side by side; without it alternatives are left out.
 * @returns nothing without an estimate, or without what the reader’s report is about: findings say why.
 */
export function reportHtml(
  evaluation: Evaluation,
  comparison?: Comparison,
  reader: ReportReader = 'board',
): string | undefined {
  const facts = reportFacts(evaluation, comparison);
  const body = facts && PAGES[reader](facts);
  if (facts === undefined || body === undefined) return undefined;
  const { project, today, letter, scenario } = evaluation;
  const sample = project.sample ? 'Invented example. ' : '';
  // A bid is an offer: its readers have no use for the letter of a scenario, nor is it an estimate to them.
  const isOffer = reader === 'bid';
  const head = `${NAMES[reader]}, ${isOffer ? scenario.title : `scenario ${letter}`}`;
  const foot = `${sample}${isOffer ? 'Bid' : 'Estimate'} of ${today}. Document ${facts.documentHash}. Format ${project.version}.`;
  const title = isOffer ? `${project.title}: ${head}` : `${project.title}: ${head}, ${scenario.title}`;
  return [
    '<!doctype html>',
    '<html lang="en-US"><head><meta charset="utf-8">',
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'">',
    `<title>${escaped(title)}</title>`,
    `<style>${pageStyle(foot, head)}</style></head>`,
    `<body>${body.map(inside).join('\n')}</body></html>`,
    '',
  ].join('\n');
}
