import { whyTree, why, type SheetResult, type WhyTree } from '../../../core/sheet';
import { UsageError, type Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';

/** How deep the printed tree goes for people, and how many of the givens under it are named; --json has all of it. */
const PRINTED_DEPTH = 5;
const MOST_GIVENS = 40;

/** How a step came about, in words; a step that only passes a figure on is not printed at all. */
const OPERATIONS: Readonly<Record<string, string>> = {
  dollars: 'rounded to cents',
  link: 'taken from its table',
  carried: 'carried over from the work sheet',
  when: 'as far as it applies',
  quoted: 'the first that is given',
};

export const whyCommand: Command = {
  name: 'why',
  words: 'Where one figure comes from, down to the givens and their basis.',
  usage: 'reefwright why FILE --line ID [--column KEY] [--scenario ID] [--json]',
  options: {
    ...SCENARIO_OPTION,
    line: { type: 'string', words: 'the line by its id, or "sums" for the totals', sample: 'ID' },
    column: { type: 'string', words: 'the column; the total unless given', sample: 'KEY' },
  },
  run: call => {
    const line = call.option('line');
    if (line === undefined)
      throw new UsageError('Name the line: --line ID. The command estimate --json lists them.');
    const column = call.option('column') ?? 'total';
    return evaluated(call, ({ estimate, findings }) => {
      if (estimate?.money === undefined) return { json: { findings }, lines: [], findings };
      const { result, id } = figureOf(
        [estimate.money.result, estimate.work.result],
        line,
        COLUMNS[column] ?? column,
      );
      const tree = whyTree(why(result, id));
      return { json: tree, lines: [...printed(tree, 0), ...givensOf(tree)], findings };
    });
  },
};

/** The columns by the names the estimate prints them under. */
const COLUMNS: Readonly<Record<string, string>> = { markUp: 'mark-up', waste: 'tonnes' };

function figureOf(
  results: readonly SheetResult[],
  line: string,
  column: string,
): { result: SheetResult; id: string } {
  const tries = [
    `lines/${line}/${column}`,
    `items/${line}/${column}`,
    `${line}/${column}`,
    `worked/${line}/${column}`,
    `hauled/${line}/${column}`,
  ];
  for (const id of tries) {
    const result = results.find(candidate => candidate.has(id));
    if (result !== undefined) return { result, id };
  }
  throw new UsageError(
    `There is no line "${line}" with a column "${column}". The command estimate --json lists the lines; columns are quantity, hours, labour, equipment, material, disposal, subcontract, fee, mark-up and total.`,
  );
}

/** Links and roundings that leave a figure as it is are passed by, down to the step that makes it. */
function made(tree: WhyTree): WhyTree {
  const [input, ...others] = tree.inputs ?? [];
  const passes = input !== undefined && others.length === 0 && tree.basis === undefined;
  if (!passes || tree.seen === true || input.value !== tree.value || input.unit !== tree.unit) return tree;
  return made(input);
}

function printed(whole: WhyTree, depth: number): string[] {
  const tree = made(whole);
  const value = tree.value === null ? 'absent' : String(tree.value);
  const operation = tree.operation === undefined ? '' : (OPERATIONS[tree.operation] ?? tree.operation);
  const from = tree.basis === undefined ? operation : `${tree.basis}: ${tree.source ?? ''}`;
  const head = `${'  '.repeat(depth)}${value} ${tree.unit}  ${whole.title}${tree.seen === true ? ' (shown above)' : `  [${from}]`}`;
  return tree.seen === true || depth >= PRINTED_DEPTH
    ? [head]
    : [head, ...(tree.inputs ?? []).flatMap(input => printed(input, depth + 1))];
}

/** What applies or does not, and what is so by definition, is no given anybody would look up. */
const PLAIN = new Set(['does not apply here', 'applies here', 'by definition']);

/** The givens that the figure rests on, each once with its basis and source. */
function givensOf(tree: WhyTree): string[] {
  const givens = leaves(tree).filter(({ source }) => !PLAIN.has(source ?? ''));
  const shown = givens
    .slice(0, MOST_GIVENS)
    .map(
      ({ value, unit, title, basis, source }) =>
        `  ${value === null ? 'absent' : String(value)} ${unit}  ${title}  [${basis ?? ''}: ${source ?? ''}]`,
    );
  const more = givens.length - shown.length;
  return [
    '',
    `It rests on ${givens.length} givens:`,
    ...shown,
    ...(more > 0 ? [`  and ${more} more: --json has all of them.`] : []),
  ];
}

function leaves(tree: WhyTree): WhyTree[] {
  if (tree.seen === true) return [];
  return tree.basis === undefined ? (tree.inputs ?? []).flatMap(leaves) : [tree];
}
