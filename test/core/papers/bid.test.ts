import { describe, expect, test } from 'vitest';
import { bidWorkbook } from '../../../core/papers';
import { summarise } from '../../../core/evaluation';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const evaluation = evaluated(demoProject());

describe('the bid file', () => {
  test('items add up to the contract price: direct cost of contract work and mark-ups', () => {
    const cells = bidWorkbook(evaluation)?.sheets.flatMap(sheet => sheet.cells) ?? [];
    const cents = cells.flatMap(({ content }) =>
      content.kind === 'money' ? [Math.round(content.value * 100)] : [],
    );
    const { contractCost, markUps } = summarise(estimated(evaluation));
    expect(cents.length).toBeGreaterThan(5);
    expect(cents.reduce((a, b) => a + b, 0)).toBe((contractCost?.cents ?? 0) + (markUps?.cents ?? 0));
    const total = cells.find(({ content }) => content.kind === 'formula')?.content;
    expect(total).toMatchObject({ result: cents.reduce((a, b) => a + b, 0) / 100 });
  });

  test('shows neither cost, mark-up nor the owner’s total', () => {
    const text = JSON.stringify(bidWorkbook(evaluation));
    const { total, markUps, contractCost, contingency } = summarise(estimated(evaluation));
    for (const amount of [total, markUps, contractCost, contingency])
      expect(text).not.toContain(String((amount?.cents ?? Number.NaN) / 100));
  });
});
