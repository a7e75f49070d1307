import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idOf, why, whyTree, type SheetResult } from '../../../core/sheet';
import { randomPair } from '../../core/sheet/random-sheet';
import { misfits } from '../../core/sheet/why-reader';

function placedIds(result: SheetResult): string[] {
  return [...result.sheet.tables.flatMap(t => t.placed), ...result.sheet.blocks.flatMap(b => b.entries())]
    .filter(step => step.unit !== 'text')
    .flatMap(step => (step.scope ? step.scope.rows.map(row => idOf(step, row.key)) : [idOf(step)]));
}

describe('why', () => {
  it('prints enough for a reader who knows only the operations to recompute every value', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), seed => {
        const { money } = randomPair(seed);
        for (const id of placedIds(money)) expect(misfits(whyTree(why(money, id)))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it('reaches givens with a basis at every leaf, through the sheet before', () => {
    const pairs = Array.from({ length: 20 }, (_, seed) => randomPair(seed, undefined, 0).money);
    const money = pairs.find(result => result.figure('m/i1/labour').text !== undefined);
    if (money === undefined) throw new Error('no pair has labour');
    const explanation = why(money, 'm/i1/labour');
    const leaves = [...explanation.steps.values()].filter(step => step.inputs.length === 0);
    expect(leaves.filter(step => step.given === undefined)).toEqual([]);
    expect(leaves.some(step => step.id.startsWith('u/'))).toBe(true);
  });
});
