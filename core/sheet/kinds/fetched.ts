import { BugError } from '../../base';
import type { Block } from '../block';
import { passOn } from '../columns/runs';
import { call } from '../formula/term';
import type { Book, Kind } from '../kind';
import { loosest } from '../looseness';
import { operandOf } from '../quick/cells';
import { homeOf, inputOf, makeStep, requireUnit, textsOf, unitIn, type Step } from '../step';
import type { SheetUnit } from '../unit';

function cellOf(self: Step, row: number, book: Book): number {
  const text = textsOf(inputOf(self, 0))[row];
  const wanted = unitIn(self, row);
  const entry = self.inputs.find((step, i) => i > 0 && homeOf(step).key === text && step.unit === wanted);
  return entry === undefined ? -1 : book.cell(entry, 0);
}

const record: Kind = {
  operation: 'link',
  cells: (self, row, book) => [cellOf(self, row, book)],
  oneCell: cellOf,
  exact: ([value]) => value,
  quick: (cells, operands, out) => cells.copy(out, operandOf(operands, 0)),
  reason: () => 'there is no single value of that name in this unit',
  live: passOn,
  passes: () => 0,
  formula: context => call('INDEX', context.range(1), call('MATCH', context.term(0), context.keys(1), 0)),
  words: key => `the value named by ${key}`,
};

/**
 * The single value of a block that a key of this row names: a cost relationship fetches its driver.
 * Only values placed before this call, of this unit, are found; any other is absent with a finding.
 */
export function fetched<U extends SheetUnit>(key: Step<'text'>, block: Block, unit: U): Step<U> {
  requireUnit('link', key, 'text');
  const entries = block.entries();
  if (entries.length === 0) throw new BugError(`link: the block ${block.id} holds no value yet`);
  return makeStep(unit, record, [key, ...entries], loosest(entries), key.scope);
}
