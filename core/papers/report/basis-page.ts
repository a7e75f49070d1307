import type { ReportFacts } from './facts';
import { element, heading, paragraph, points, table, type Child, type Markup } from './markup';
import { dateWords, dollarsAndCents, percentWords } from './words';

/** How many lines are listed by size. */
const LARGEST_LINES = 5;
/** How many findings are printed; the workbook has all. */
const FINDINGS_SHOWN = 3;

/** What is published of other things done with old ships. */
function elsewherePart({ decision }: ReportFacts): Markup[] {
  const published = decision.otherChoices.filter(({ kind }) => kind === 'published');
  if (published.length === 0) return [];
  return [paragraph(published.map(({ title, note }) => `${title}: ${note}.`).join(' '))];
}

/** What the estimate rests on: scope, method, the dearest lines with their basis, findings, cautions. */
export function basisPage(facts: ReportFacts): Markup {
  const { project, summary } = facts;
  const { vessel, site, rates } = project;
  const largest = summary.lines
    .flatMap(({ title, total, bases }) => (total === undefined ? [] : [{ title, total, bases }]))
    .sort((a, b) => b.total.cents - a.total.cents)
    .slice(0, LARGEST_LINES);
  return element(
    'section',
    {},
    heading(2, 'Basis of the estimate'),
    paragraph(
      `The ship is ${vessel.name}, built ${vessel.built}, ${vessel.length.value} ${vessel.length.unit} long. She is prepared at ${site.port}, towed ${site.towDistance.value} ${site.towDistance.unit} and sunk at ${site.name} in ${site.waterDepth.value} ${site.waterDepth.unit} of water.`,
    ),
    paragraph(
      `Prices are those of ${dateWords(rates.priceDate)}, brought to the month of spending. The estimate has ${summary.lines.length} lines. Quantities come from the ship’s particulars and the survey; hours from production rates; dates from a schedule that keeps crews within limits. The workbook holds every figure with its basis and a live formula.`,
    ),
    paragraph(contingencyWords(facts)),
    table(
      'The dearest lines and the weakest basis of each',
      [{ title: 'Line' }, { title: 'Total, USD', figures: true }, { title: 'Weakest basis' }],
      largest.map((line): Child[] => [
        line.title,
        dollarsAndCents(line.total),
        [...new Set(Object.values(line.bases))].join(', '),
      ]),
    ),
    ...elsewherePart(facts),
    heading(2, 'Cautions'),
    ...cautionsPart(facts),
  );
}

/** How the contingency was set, and what it comes to. */
export function contingencyWords({ project, summary }: ReportFacts): string {
  const { share, policy, confidence } = project.contingency;
  if (policy === 'confidence')
    return confidence === undefined
      ? 'The contingency is to be set by simulated runs; how many of them it is to cover is not given.'
      : `Contingency is ${dollarsAndCents(summary.contingency)}: with it the budget covers the cost of ${Math.round(Number(confidence) * 100)} of 100 simulated runs.`;
  if (share === undefined) return 'No contingency is chosen yet.';
  return `Contingency is ${percentWords(Number(share.value))} of the total, ${dollarsAndCents(summary.contingency)}. Basis: ${share.basis}: ${share.source}.`;
}

/** The weightiest findings; the workbook has all. */
export function findingsPart({ evaluation: { findings } }: ReportFacts): Markup {
  if (findings.length === 0) return element('section', {}, heading(2, 'Findings'), paragraph('None.'));
  const order = { blocks: 0, warns: 1, notes: 2 };
  const sorted = [...findings].sort((a, b) => order[a.weight] - order[b.weight]);
  const rest = sorted.length - FINDINGS_SHOWN;
  return element(
    'section',
    {},
    heading(2, 'Findings'),
    points(sorted.slice(0, FINDINGS_SHOWN).map(finding => `${finding.message} To do: ${finding.remedy}`)),
    rest > 0 ? paragraph(`${rest} more stand in the workbook.`) : undefined,
  );
}

/** Cautions about what the program works out, and not about work that is done. */
const ABOUT_RESULTS: readonly string[] = ['stability', 'costs-and-dates'];

/** The cautions of the work of this scenario and of what the report tells of it, with who decides. */
export function cautionsPart(facts: ReportFacts): Markup[] {
  const { items } = facts.parts;
  const named = [...items.flatMap(item => item.cautions), ...ABOUT_RESULTS];
  return [cautionBoxes(facts, named), paragraph(facts.evaluation.library.cautionClosing)];
}

/** The cautions of the work bid alone: a bid holds no results of the program that a caution could be about. */
export function bidCautionsPart(facts: ReportFacts): Markup[] {
  const bid = new Set(facts.summary.lines.filter(line => line.contract).map(line => line.id));
  const items = facts.parts.items.filter(item => bid.has(item.id));
  const named = items.flatMap(item => item.cautions).filter(id => !ABOUT_RESULTS.includes(id));
  return named.length === 0 ? [] : [heading(2, 'Cautions of the work'), cautionBoxes(facts, named)];
}

function cautionBoxes({ evaluation }: ReportFacts, named: readonly string[]): Markup {
  const dangers = evaluation.library.cautions.filter(({ id }) => named.includes(id));
  return element(
    'div',
    { class: 'cautions two' },
    ...dangers.map(({ work, danger, care, decides }) =>
      element('p', { class: 'caution' }, `${work}: ${danger} ${care} Decides: ${decides}.`),
    ),
  );
}
