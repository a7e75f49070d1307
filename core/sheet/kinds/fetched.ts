import { BugError } from '../../base';
import type { Block } from '../block';
import { passOn } from '../columns/runs';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { loosest } from '../looseness';
import { makeStep, requireUnit, type Step } from '../step';
import { boundUnit, type SheetUnit } from '../unit';

const record: Kind = {
  operation: 'link',
  cells: (self, row, book) => {
    const text = self.inputs[0]?.kind.texts?.[row];
    const wanted = boundUnit(self.unit, self.scope?.rows[row]?.own);
    const entry = self.inputs.find((step, i) => i > 0 && step.home?.key === text && step.unit === wanted);
    return [entry === undefined ? -1 : book.cell(entry, 0)];
  },
  exact: ([value]) => value,
  quick: (cells, [from = -1], out) => cells.copy(out, from),
  reason: () => 'there is no single value of that name in this unit',
  live: passOn,
  passes: () => 0,
  formula: context => call('INDEX', context.range(1), call('MATCH', context.term(0), context.keys(1), 0)),
  words: ([key]) => `the value named by ${key ?? ''}`,
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
