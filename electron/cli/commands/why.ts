import { whyTree, why, type SheetResult, type WhyTree } from '../../../core/sheet';
import { UsageError, type Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';

/** How deep the printed tree goes for people; --json has all of it. */
const PRINTED_DEPTH = 5;

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
      return { json: tree, lines: printed(tree, 0), findings };
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

function printed(tree: WhyTree, depth: number): string[] {
  const value = tree.value === null ? 'absent' : String(tree.value);
  const from = tree.basis === undefined ? (tree.operation ?? '') : `${tree.basis}: ${tree.source ?? ''}`;
  const head = `${'  '.repeat(depth)}${value} ${tree.unit}  ${tree.title}${tree.seen === true ? ' (shown above)' : `  [${from}]`}`;
  return depth >= PRINTED_DEPTH
    ? [head]
    : [head, ...(tree.inputs ?? []).flatMap(input => printed(input, depth + 1))];
}
