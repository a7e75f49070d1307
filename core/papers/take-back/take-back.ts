import type { Finding } from '../../base';
import { evaluate, type Evaluation } from '../../evaluation';
import type { Money } from '../../money';
import { checkProject, type Project, type Quote } from '../../project';
import { NOT_NAMED, withEdits, type ProposedEdit } from './edits';
import { totalAtDates } from './held-total';
import type { WholeEvaluation } from './input-cells';
import { proposeEdits, type PaperOrigin } from './propose';
import type { TypedRow } from './typed-values';

/** What a paper would change in the project: a preview; nothing is changed until the user takes it. */
export interface TakenBack {
  readonly edits: readonly ProposedEdit[];
  /** The project with the changes made; the project itself when there is none. */
  readonly project: Project;
  readonly findings: readonly Finding[];
  readonly totals: {
    readonly before: Money | undefined;
    /** With the new figures at the dates of the paper: what the workbook itself shows. */
    readonly atSameDates: Money | undefined;
    /** With the new figures, scheduled anew. */
    readonly after: Money | undefined;
  };
  readonly finish: { readonly before: string | undefined; readonly after: string | undefined };
}

/** How the new project is evaluated, and what the paper says of itself. */
export interface TakeBackOptions {
  /** The project as the document holds it, without any scenario laid over it. */
  readonly document: Project;
  readonly origin: PaperOrigin;
  readonly seed: number;
  readonly schedules?: number;
  /** The total that the workbook showed when it was last reckoned; a difference to ours is a finding. */
  readonly totalOfPaper?: number;
}

/**
 * Takes the changes of a workbook or CSV file back: typed rows become changes of the document, each with what it was,
 * and everything that cannot be taken is a finding with its cell. A change holds in all scenarios of the project.
 */
export function takeBack(
  evaluation: WholeEvaluation,
  rows: readonly TypedRow[],
  options: TakeBackOptions,
): TakenBack {
  const proposal = proposeEdits(evaluation, rows, options.origin);
  const checked = checkedEdits(evaluation, proposal.edits, options.document);
  const project = withEdits(options.document, checked.edits);
  const after = checked.edits.length === 0 ? evaluation : evaluatedAnew(evaluation, project, options);
  const before = evaluation.estimate;
  const quotes = new Set(checked.edits.flatMap(edit => quotedItem(edit)));
  const held =
    after === evaluation || after.estimate === undefined
      ? totalOf(after)
      : totalAtDates(before, after.estimate, quotes);
  const result = {
    edits: checked.edits,
    project,
    totals: { before: totalOf(evaluation), atSameDates: held, after: totalOf(after) },
    finish: { before: before.schedule.finish, after: after.estimate?.schedule.finish },
  };
  const notes = [
    ...unnamedQuotes(checked.edits, project.quotes),
    ...totalFindings(result, options.totalOfPaper),
  ];
  return { ...result, findings: [...proposal.findings, ...checked.findings, ...notes] };
}

function evaluatedAnew(evaluation: Evaluation, project: Project, options: TakeBackOptions): Evaluation {
  const { today, scenario, library, upright } = evaluation;
  return evaluate(project, {
    today,
    library,
    seed: options.seed,
    scenario: scenario.id,
    upright: upright !== undefined,
    ...(options.schedules !== undefined && { schedules: options.schedules }),
  });
}

function totalOf({ estimate }: Evaluation): Money | undefined {
  return estimate?.money?.result.money(estimate.money.sums.total);
}

/** Changes that would make a faulty document are left out, each with the finding that says why, at its cell. */
function checkedEdits(
  { library }: Evaluation,
  edits: readonly ProposedEdit[],
  document: Project,
): { edits: ProposedEdit[]; findings: Finding[] } {
  const keyOf = (finding: Finding) => `${finding.code} ${finding.place} ${finding.message}`;
  const known = new Set(checkProject(document, library).map(keyOf));
  const faultsOf = (some: readonly ProposedEdit[]) =>
    checkProject(withEdits(document, some), library).filter(
      finding => finding.weight === 'blocks' && !known.has(keyOf(finding)),
    );
  if (faultsOf(edits).length === 0) return { edits: [...edits], findings: [] };
  const judged = edits.map(edit => ({ edit, faults: faultsOf([edit]) }));
  return {
    edits: judged.filter(({ faults }) => faults.length === 0).map(({ edit }) => edit),
    findings: judged.flatMap(({ edit, faults }) =>
      faults.map(fault => ({ ...fault, weight: 'warns' as const, place: edit.address, meaning: NOT_TAKEN })),
    ),
  };
}

const NOT_TAKEN = 'Nothing was taken from this cell; the figure of the project stays.';

function quotedItem({ cell }: ProposedEdit): string[] {
  const [, root, item] = cell.key.split('/');
  return root === 'quotes' && item !== undefined ? [item] : [];
}

/** Quotes that a paper adds have no vendor yet, whatever basis was typed beside them: each is told once. */
function unnamedQuotes(edits: readonly ProposedEdit[], quotes: readonly Quote[]): Finding[] {
  const unnamed = new Set(
    quotes
      .filter(({ vendor }) => vendor === NOT_NAMED)
      .flatMap(({ covers }) => covers.map(({ item }) => item)),
  );
  const first = new Map(edits.flatMap(edit => quotedItem(edit).map(item => [item, edit] as const)).reverse());
  return [...first]
    .filter(([item]) => unnamed.has(item))
    .reverse()
    .map(([, edit]) => edit)
    .map(({ cell, address }) => ({
      code: 'take-back/quote-without-vendor',
      weight: 'warns' as const,
      place: address,
      message: `${cell.title}: the quote has no vendor and no date of its own.`,
      meaning: `It stands as "${NOT_NAMED}", good until the day of the paper.`,
      remedy: 'Fill in who gave it and until when it stands.',
    }));
}

const NO_TOTAL: Finding = {
  code: 'take-back/no-total',
  weight: 'warns',
  place: 'Cover!B7',
  message: 'With these changes the total cannot be worked out.',
  meaning: 'A figure was given that leaves another without an answer, such as mark-ups of the whole price.',
  remedy: 'Look at the last changes of shares and mark-ups, and take the others alone.',
};

/** The workbook’s own total against ours, and what re-scheduling does to it. */
function totalFindings(
  { totals, finish, edits }: Pick<TakenBack, 'totals' | 'finish' | 'edits'>,
  ofPaper: number | undefined,
): Finding[] {
  const { atSameDates, after } = totals;
  const findings: Finding[] = totals.before !== undefined && after === undefined ? [NO_TOTAL] : [];
  if (ofPaper !== undefined && atSameDates !== undefined && Math.round(ofPaper * 100) !== atSameDates.cents)
    findings.push({
      code: 'take-back/total-differs',
      weight: 'warns',
      place: 'Cover!B7',
      message: `The workbook shows a total of ${ofPaper.toFixed(2)}; with what was taken it is ${(atSameDates.cents / 100).toFixed(2)}.`,
      meaning:
        'Something was changed beside the input cells, was not taken, or the workbook was not recalculated.',
      remedy: 'Look at the findings of single cells; the figures of the program hold.',
    });
  if (
    edits.length > 0 &&
    after !== undefined &&
    atSameDates !== undefined &&
    after.cents !== atSameDates.cents
  )
    findings.push({
      code: 'take-back/dates-moved',
      weight: 'notes',
      place: 'Cover!B7',
      message: `Scheduled anew the total is ${(after.cents / 100).toFixed(2)} instead of ${(atSameDates.cents / 100).toFixed(2)}; the finish goes from ${finish.before ?? 'none'} to ${finish.after ?? 'none'}.`,
      meaning:
        'Hours and quantities move dates, and dates move rent, prices and fees. A workbook cannot level crews.',
      remedy: 'Nothing: the total of the program holds.',
    });
  return findings;
}
