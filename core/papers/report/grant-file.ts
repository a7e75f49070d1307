import { known, sourceWithYear } from '../../base';
import { bookBasis, grantView, lineQuantity, type GrantView } from '../../evaluation';
import { stageTitle } from '../../estimate';
import { UNFUNDED_TITLE, budgetParts, formSections, type FormSection } from '../../funding';
import { fromCents } from '../../money';
import { STAGES } from '../../work';
import { sampleLine } from './decision-sheet';
import { cautionsPart, contingencyWords } from './basis-page';
import { countyCostPart } from './county-cost';
import type { ReportFacts } from './facts';
import { element, heading, paragraph, points, table, type Markup } from './markup';
import { dateWords, dollarsAndCents, numberWords, percentWords } from './words';

type Book = NonNullable<GrantView['book']>;
type Award = Book['awards'][number];
type BookLine = NonNullable<ReturnType<typeof bookBasis>['basis']>['lines'][number];
type EstimateLine = ReportFacts['summary']['lines'][number];

/** The grant file: what is asked of whom, the budget of each award as its form has it, narrative, basis of every line. */
export function grantFilePages(facts: ReportFacts): Markup[] | undefined {
  const view = grantView(facts.evaluation);
  if (view.book === undefined) return undefined;
  const { book } = view;
  return [
    element(
      'section',
      {},
      element('h1', {}, `Grant file: ${facts.project.title}`),
      sampleLine(facts.project.sample),
      paragraph(
        `Scenario ${facts.evaluation.letter}, ${facts.evaluation.scenario.title}. The award is expected on ${dateWords(facts.project.funding?.awardDate)}.`,
      ),
      heading(2, 'Who bears the cost'),
      sharesTable(book),
      unfundedPart(book),
      paragraph(
        `Indirect cost of the grantee: ${dollars(book.indirect)}. Program income: ${dollars(book.programIncome)}. Neither is part of the total of the estimate.`,
      ),
      countyCostPart(facts.evaluation),
      reconciliation(book),
      ...methodPart(facts),
    ),
    ...book.awards.map(awardPage),
    linesPage(facts),
    element('section', { class: 'page' }, heading(2, 'Cautions'), ...cautionsPart(facts)),
  ];
}

function dollars(cents: number): string {
  return dollarsAndCents(fromCents(cents));
}

function sharesTable(book: Book): Markup {
  const ceilings = new Map(book.bySource.map(({ sourceId, leftOfCap }) => [sourceId, leftOfCap]));
  const left = (id: string): string => {
    if (!ceilings.has(id)) return '';
    const amount = ceilings.get(id);
    return amount === undefined ? 'no ceiling' : dollars(amount);
  };
  return table(
    'Sources and what each bears',
    [
      { title: 'Source' },
      { title: 'Amount, USD', figures: true },
      { title: 'Left of its ceiling, USD', figures: true },
    ],
    budgetParts(book).map(({ id, title, amount }) => [title, dollars(amount), left(id)]),
  );
}

/** That a part of the budget has no source yet; nothing where all of it has one. */
function unfundedPart({ unfunded }: Book): Markup | undefined {
  if (unfunded === 0) return undefined;
  return paragraph(
    `${UNFUNDED_TITLE}: no source bears ${dollars(unfunded)} of the budget of the forms. A source must be found for it, or the county bears it.`,
  );
}

function reconciliation({ reconciliation: { from, steps, to } }: Book): Markup {
  return table(
    'From the estimate to the budget of the forms',
    [{ title: 'Step' }, { title: 'USD', figures: true }],
    [from, ...steps].map(({ title, amount }) => [title, dollars(amount)]),
    [to.title, dollars(to.amount)],
  );
}

function methodPart(facts: ReportFacts): Markup[] {
  const { project, summary, decision } = facts;
  return [
    heading(2, 'How the estimate was made'),
    points([
      `Prices are those of ${dateWords(project.rates.priceDate)}, brought to the month of spending by a published index.`,
      'Quantities come from the ship’s particulars by relationships, replaced by measured quantities where there are any.',
      'Hours are quantity times hours for one, times a factor of the conditions of work.',
      'A quantity in “times” is the size of the project against that of a ship of usual size.',
      'Dates come from a schedule that keeps crews, closures and weather windows.',
      'Money is rounded once, at each element of a line; every total is a sum of rounded amounts.',
      contingencyWords(facts),
      summary.uncheckedShare === undefined
        ? 'The share nobody has checked is not known.'
        : `${percentWords(summary.uncheckedShare)} of the total rests on figures nobody has checked yet.`,
    ]),
    heading(2, 'What was not studied'),
    points(decision.notStudied),
  ];
}

function awardPage({ source, form, narrative, tieOut }: Award): Markup {
  return element(
    'section',
    { class: 'page' },
    heading(2, source.title),
    paragraph(
      `Budget as on ${form.kind}. The form, the narrative and the estimate agree line by line. The basis at the end of a sentence of the narrative is the weakest of its line.`,
    ),
    table(
      'Lines of the form against the estimate',
      [
        { title: 'Line of the form' },
        { title: 'Estimate, USD', figures: true },
        { title: 'Form, USD', figures: true },
        { title: 'Difference, USD', figures: true },
      ],
      tieOut.map(row => [row.title, dollars(row.estimate), dollars(row.form), dollars(row.formDifference)]),
    ),
    ...formSections(form).map(section => sectionTable(section)),
    ...(form.kind === 'SF-424C' ? [lineSeventeen(form.line17)] : []),
    ...tieOut.flatMap(row => narrativePart(row, narrative)),
  );
}

/** A section of the form, to the cent. */
function sectionTable({ title, columns, lines }: FormSection): Markup {
  return table(
    title,
    [{ title: 'Line' }, ...columns.map(column => ({ title: `${column}, USD`, figures: true }))],
    lines.map(line => [line.title, ...line.cents.map(dollars)]),
  );
}

function lineSeventeen({ share, federal }: Extract<Award['form'], { kind: 'SF-424C' }>['line17']): Markup {
  return paragraph(
    `17. Federal assistance requested: ${percentWords(share)} of line 16, ${dollars(federal)}.`,
  );
}

/** The sentences of one line of the form, so that a reviewer can go through it line by line. */
function narrativePart(
  { classId, title, form }: Award['tieOut'][number],
  narrative: Award['narrative'],
): Markup[] {
  const own = narrative.filter(sentence => sentence.classId === classId);
  if (own.length === 0) return [];
  return [
    heading(3, `Budget narrative: ${title}, ${dollars(form)}`),
    ...own.map(({ text }) => element('p', { class: 'note' }, text)),
  ];
}

/** Every line with its workings, its basis and its source, a table for each stage. */
function linesPage({ evaluation, summary }: ReportFacts): Markup {
  const lines = bookBasis(evaluation).basis?.lines ?? [];
  const own = new Map(summary.lines.map(line => [line.id, line]));
  const stages = STAGES.filter(stage => lines.some(line => line.stage === stage));
  return element(
    'section',
    { class: 'page' },
    heading(2, 'Basis of the estimate, line by line'),
    paragraph(
      `The estimate has ${lines.length} lines. Together they come to ${dollarsAndCents(summary.total)}. The basis is the weakest of a line’s figures.`,
    ),
    ...stages.map(stage =>
      table(
        stageTitle(stage),
        [
          { title: 'Line' },
          { title: 'Quantity', figures: true },
          { title: 'Hours', figures: true },
          { title: 'Total, USD', figures: true },
          { title: 'Weakest basis and its source' },
        ],
        lines.filter(line => line.stage === stage).map(line => lineRow(line, known(own, line.id))),
        ['All of this stage', '', '', dollarsAndCents(summary.byStage[stage]), ''],
        'lines',
      ),
    ),
  );
}

function lineRow(line: BookLine, own: EstimateLine): string[] {
  return [
    line.title,
    own.quantity === undefined ? numberWords(undefined) : lineQuantity(own.quantity, own.unit),
    own.hours === 0 ? '' : numberWords(own.hours),
    dollars(line.total),
    `${line.basis}: ${sourceWithYear(line)}`,
  ];
}
