import { BASES } from '../../base';
import { dollarsOf, fromCents } from '../../money';
import { stageTitle } from '../../estimate';
import { ELEMENTS, ELEMENT_TITLES } from '../../evaluation';
import { STAGES } from '../../work';
import { barChart } from './charts';
import { countyCostPart } from './county-cost';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, table, type Markup } from './markup';
import { dollarsAndCents, monthName, monthWords } from './words';

/** What it costs: by stage with its picture, by element, by basis. */
export function costPage({ summary }: ReportFacts): Markup {
  const stages = STAGES.map(stage => ({ title: stageTitle(stage), amount: summary.byStage[stage] }));
  const bars = stages.flatMap(({ title, amount }) =>
    amount === undefined ? [] : [{ title, value: dollarsOf(amount), words: dollarsAndCents(amount) }],
  );
  const byBasis = summary.byBasis;
  return element(
    'section',
    { class: 'page' },
    heading(2, 'What it costs'),
    paragraph(
      'The total is the owner’s cost at the month of spending. It includes rising prices. It leaves out contingency, interest and the indirect cost of the grant.',
    ),
    barChart('Total by stage, US dollars', bars),
    table(
      'Total by stage',
      [{ title: 'Stage' }, { title: 'Total, USD', figures: true }],
      stages.map(({ title, amount }) => [title, dollarsAndCents(amount)]),
      ['All stages', dollarsAndCents(summary.total)],
    ),
    element(
      'div',
      { class: 'side' },
      table(
        'Total by element of cost',
        [{ title: 'Element' }, { title: 'Total, USD', figures: true }],
        ELEMENTS.map(key => [ELEMENT_TITLES[key], dollarsAndCents(summary.byElement[key])]),
        ['All elements', dollarsAndCents(summary.total)],
      ),
      byBasis &&
        table(
          'Total by where its figures come from',
          [{ title: 'Basis' }, { title: 'Total, USD', figures: true }],
          BASES.map(basis => [basis, dollarsAndCents(byBasis[basis])]),
          ['All bases', dollarsAndCents(summary.total)],
        ),
    ),
  );
}

/** When it is spent: by fiscal year, with its picture; nothing when a line has no amount or no dates. */
export function cashPart({
  evaluation,
  months,
  fiscalYears,
  fiscalYearStart,
  isFiscalYearGiven,
}: ReportFacts): Markup | undefined {
  if (months === undefined || fiscalYears === undefined) return undefined;
  const busy = [...months].sort((a, b) => b.amount - a.amount)[0];
  const dearest =
    busy &&
    `The dearest month is ${monthWords(busy.month)} with ${dollarsAndCents(fromCents(busy.amount))}. The workbook shows every month.`;
  return element(
    'div',
    {},
    heading(2, 'When it is spent'),
    paragraph(
      'Cost of work by month, before the terms of payment and before any grant is paid back. ',
      `Fiscal years start in ${monthName(fiscalYearStart)}${isFiscalYearGiven ? '' : ', as is usual; the funding section may say otherwise'}. `,
      dearest,
    ),
    countyCostPart(evaluation),
    barChart(
      'Spending by fiscal year, US dollars',
      fiscalYears.map(({ fiscalYear, amount }) => ({
        title: `Fiscal year ${fiscalYear}`,
        words: dollarsAndCents(fromCents(amount)),
        value: dollarsOf(fromCents(amount)),
      })),
    ),
  );
}

/** The table of the spending by fiscal year. */
export function fiscalYearTable({ fiscalYears, summary }: ReportFacts): Markup | undefined {
  return (
    fiscalYears &&
    table(
      'Spending by fiscal year',
      [{ title: 'Fiscal year' }, { title: 'Spending, USD', figures: true }],
      fiscalYears.map(({ fiscalYear, amount }) => [String(fiscalYear), dollarsAndCents(fromCents(amount))]),
      ['All years', dollarsAndCents(summary.total)],
    )
  );
}
