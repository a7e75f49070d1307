import { describe, expect, test } from 'vitest';
import { ELEMENTS, estimateJson, scheduleJson, summarise } from '../../../core/evaluation';
import { sumMoney } from '../../../core/money';
import { why, whyTree } from '../../../core/sheet';
import { verifySchedule } from '../../../core/scheduling';
import { misfits } from '../sheet/why-reader';
import { demoProject, estimated, evaluated } from './demo';

const evaluation = evaluated(demoProject());
const parts = estimated(evaluation);
const summary = summarise(parts);

describe('the estimate of the invented example', () => {
  test('lines, stages, elements and bases each add up to the total to the cent', () => {
    const total = summary.total?.cents;
    expect(total).toBeGreaterThan(0);
    const cents = (amounts: readonly ({ cents: number } | undefined)[]) =>
      amounts.reduce((sum, amount) => sum + (amount?.cents ?? Number.NaN), 0);
    expect(cents(summary.lines.map(line => line.total))).toBe(total);
    expect(cents(Object.values(summary.byStage))).toBe(total);
    expect(cents(Object.values(summary.byElement))).toBe(total);
    expect(cents(Object.values(summary.byBasis ?? {}))).toBe(total);
    for (const line of summary.lines)
      expect(cents(ELEMENTS.map(element => line.elements[element]))).toBe(line.total?.cents);
  });

  test('the total is contract work at direct cost, mark-ups and the owner’s own cost; the budget adds contingency', () => {
    const { contractCost, markUps, ownerCost, contingency, budget, total } = summary;
    if (!contractCost || !markUps || !ownerCost || !contingency || !budget || !total)
      throw new Error('a sum is absent');
    expect(sumMoney([contractCost, markUps, ownerCost]).cents).toBe(total.cents);
    expect(sumMoney([total, contingency]).cents).toBe(budget.cents);
    expect(
      sumMoney(summary.lines.filter(line => !line.contract).flatMap(line => line.total ?? [])).cents,
    ).toBe(ownerCost.cents);
  });

  test('the printed figures of a line can be worked out again from its printed inputs, down to givens with a basis', () => {
    const keys = [
      'cable-stripping',
      'haul-debris',
      'supervision',
      'tank-washing',
      'ocean-tow',
      'berth-hire',
      'project-management',
      'shell-openings-cut',
    ];
    for (const key of keys) {
      if (!parts.money.lines.scope.index.has(key)) continue;
      expect(misfits(whyTree(why(parts.money.result, `lines/${key}/total`)))).toEqual([]);
    }
    expect(misfits(whyTree(why(parts.money.result, 'sums/total')))).toEqual([]);
  });

  test('the schedule is accepted by the day-by-day check', () => {
    expect(verifySchedule(parts.problem, parts.schedule)).toEqual([]);
  });

  test('the same project, day and seed give the same figures', () => {
    expect(estimateJson(evaluated(demoProject()))).toEqual(estimateJson(evaluation));
  });

  test('what the command line prints has no null and no placeholder', () => {
    const text = JSON.stringify([estimateJson(evaluation), scheduleJson(evaluation)]);
    expect(text).not.toMatch(/:null/);
    expect(text).not.toMatch(/NaN|Infinity/);
  });

  test('all three scenarios stand without a finding that blocks', () => {
    for (const scenario of demoProject().scenarios) {
      const { findings } = evaluated(demoProject(), scenario.id);
      expect(findings.filter(finding => finding.weight === 'blocks')).toEqual([]);
    }
  });
});
