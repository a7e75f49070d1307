import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import { compareScenarios } from '../../../core/scenario';
import { decisionRows } from '../../../core/views';
import { awkward, DEMO, evaluatedAs } from './awkward';
import { brokenWords, plain } from './laws';

const example = awkward('the example');
const decided = (...of: readonly [Evaluation, ...Evaluation[]]) => decisionRows(of[0], compareScenarios(of));
const figureOf = (rows: ReturnType<typeof decided>, id: string) =>
  rows.figures.rows.find(row => row.id === id)?.cells['value']?.text;

describe('a decision', () => {
  test('where nothing is known recommends nothing and says why, and tells no date', () => {
    const rows = decided(awkward('with a hull that nobody knows'));
    expect(rows.recommended).toBeUndefined();
    expect(rows.reasons).toEqual([
      'Each scenario leaves a clean-up goal unmet, or has no total. See Review.',
    ]);
    expect(plain(rows.sentence)).not.toContain('$');
    expect([figureOf(rows, 'total'), figureOf(rows, 'sunk'), figureOf(rows, 'finish')]).toEqual([
      'not known',
      undefined,
      undefined,
    ]);
    expect(rows.notThisOne).toBe('');
    expect(brokenWords(rows)).toEqual([]);
  });

  test('without a contingency asks for the total, and without a screen says that none was run', () => {
    const project = { ...DEMO, contingency: { policy: 'confidence', confidence: '0.8' } as const };
    const rows = decided(evaluatedAs(project));
    expect(rows.sentence[1]).toMatchObject({ why: 'sums/total' });
    expect([figureOf(rows, 'budget'), figureOf(rows, 'contingency')]).toEqual([undefined, undefined]);
    expect(rows.caution).toBe('The upright screen was not run.');
    expect(decided(example).sentence[1]).toMatchObject({ why: 'sums/budget' });
  });

  test('shows the vote of the board, or that there was none', () => {
    const voted = (chosen: string | undefined) => {
      const decision = chosen === undefined ? { weights: [] } : { weights: [], chosen };
      return decided({ ...example, project: { ...DEMO, decision } }).choice.rows[0]?.cells['value']?.edit
        ?.value;
    };
    expect(voted(undefined)).toBe('');
    expect(voted('gone-since')).toBe('');
    expect(voted(example.scenario.id)).toBe(example.scenario.id);
  });
});
