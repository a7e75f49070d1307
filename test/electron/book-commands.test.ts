import { describe, expect, test } from 'vitest';
import { findLeaks, secretsOf } from '../../core/bid';
import { bidView, evaluate } from '../../core/evaluation';
import { benefitCommand } from '../../electron/cli/commands/benefit';
import { bidCommand } from '../../electron/cli/commands/bid';
import { reviewCommand } from '../../electron/cli/commands/review';
import { UsageError, type Call, type Command } from '../../electron/cli/command';
import { demoProject } from '../core/evaluation/demo';

function call(options: Readonly<Record<string, string | true>> = {}): Call {
  return {
    files: ['demo/wrenfield.reef.json'],
    option: name => (typeof options[name] === 'string' ? options[name] : undefined),
    flag: name => options[name] === true,
    today: '2026-11-24',
    machineDate: '2026-11-24',
  };
}

async function run(command: Command, options: Readonly<Record<string, string | true>> = {}) {
  const outcome = await command.run(call(options));
  return { ...outcome, json: JSON.parse(JSON.stringify(outcome.json)) as Record<string, unknown> };
}

describe('the command bid', () => {
  test('prints items, alternates and the bids received, and nothing of the build-up', async () => {
    const { json } = await run(bidCommand);
    const { sheet, internal } = bidView(evaluate(demoProject(), { today: '2026-11-24', seed: 1 }));
    if (sheet === undefined || internal === undefined) throw new Error('the demo has a bid');
    expect(json).not.toHaveProperty('internal');
    expect(json['items']).toHaveLength(sheet.items.length);
    expect(json).toMatchObject({ baseBid: sheet.baseBid / 100, reconciliation: { difference: 0 } });
    expect(json).toMatchObject({ comparison: { bids: 3, estimate: sheet.baseBid / 100 } });
    const leaving = JSON.stringify([json['items'], json['alternates'], json['baseBid']]);
    expect(findLeaks([leaving], secretsOf(internal, sheet))).toEqual([]);
  });

  test('with --internal adds build-up, quotes and margin, with --trials the margin at P50 and P80', async () => {
    const { json } = await run(bidCommand, { internal: true, trials: '200', seed: '4' });
    expect(json).toMatchObject({
      internal: { quotes: [{ id: 'tow-tug', rows: [{}, {}, {}] }] },
    });
    const margin = (json['internal'] as { margin: Record<string, { cost: number; margin: number }> }).margin;
    const { plan, p50, p80 } = margin;
    expect((p50?.cost ?? 0) + (p50?.margin ?? 0)).toBeCloseTo((plan?.cost ?? 0) + (plan?.margin ?? 0), 2);
    expect(p80?.margin).toBeLessThanOrEqual(p50?.margin ?? Number.NaN);
  });

  test('takes only whole numbers of trials', () => {
    expect(() => bidCommand.run(call({ internal: true, trials: 'many' }))).toThrow(UsageError);
    expect(() => reviewCommand.run(call({ trials: '3' }))).toThrow('whole number from 100');
  });
});

describe('the command review', () => {
  test('answers every practice, and with --trials those that only a simulation answers', async () => {
    const plain = await run(reviewCommand);
    const simulated = await run(reviewCommand, { trials: '200' });
    const standing = (json: Record<string, unknown>, id: string) =>
      (json['review'] as { id: string; standing: string }[]).find(row => row.id === id)?.standing;
    expect(plain.json).toMatchObject({ simulated: false, history: { growth: { median: 1.32 } } });
    expect(standing(plain.json, 'schedule-risk')).toBe('not met');
    expect(simulated.json).toMatchObject({ simulated: true, trials: 200, seed: 1 });
    expect(standing(simulated.json, 'schedule-risk')).toBe('met');
    expect(simulated.lines.length).toBeGreaterThan(30);
  });
});

describe('the command benefit', () => {
  test('prints the band of life, the case and the alternatives as planning figures', async () => {
    const { json, lines } = await run(benefitCommand);
    expect(lines[0]).toContain('planning figure');
    expect(json).toMatchObject({ life: { lowYears: 28, highYears: 92 }, likely: { years: 50 } });
    const alternatives = json['alternatives'] as { id: string; published?: number }[];
    expect(alternatives.map(one => [one.id, one.published])).toEqual([
      ['reef', 1_400_000],
      ['recycle', 5_310_000],
      ['keep-laid-up', 13_690_000],
      ['do-nothing', undefined],
    ]);
  });
});
