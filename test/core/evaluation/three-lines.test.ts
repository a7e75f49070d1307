import { describe, expect, test } from 'vitest';
import { shippedLibrary, summarise } from '../../../core/evaluation';
import type { Figure } from '../../../core/base';
import type { Project } from '../../../core/project';
import { workItemSchema } from '../../../core/work';
import { demoProject, estimated, evaluated } from './demo';

/** Fees only, at the price of the year and with nothing on top, so that the shares can be told by heart. */
function threeLines(bases: readonly Figure['basis'][]): Project {
  const project = demoProject();
  const own = bases.map((basis, i) =>
    workItemSchema.parse({
      id: `own-${i + 1}`,
      stage: 'management',
      title: `Fee ${i + 1}`,
      does: 'A fee.',
      contract: false,
      driver: 'one-project',
      decimals: 0,
      place: 'office',
      calendar: 'office',
      feeFixed: {
        value: String((i + 1) * 100),
        unit: 'USD',
        basis,
        source: 'worked out by hand',
        year: 2025,
      },
      formLine: { construction: '1', objectClass: 'h' },
      bidItem: 'none',
    }),
  );
  return {
    ...project,
    rates: { ...project.rates, fixedPriceYear: 2025 },
    ownItems: own,
    items: shippedLibrary().items.map(item => ({ item: item.id, include: false, note: 'left out' })),
    scenarios: [{ id: 'only', title: 'Only', changes: [] }],
  };
}

describe('the share not yet checked on a project of three lines', () => {
  test('is the share in money of judgement, from memory and invented figures', () => {
    const summary = summarise(estimated(evaluated(threeLines(['quoted', 'published', 'judgement']))));
    expect(summary.total?.cents).toBe(60_000);
    expect(summary.byBasis?.quoted.cents).toBe(10_000);
    expect(summary.byBasis?.published.cents).toBe(20_000);
    expect(summary.byBasis?.judgement.cents).toBe(30_000);
    expect(summary.uncheckedShare).toBe(0.5);
  });

  test('sinks when a judgement is replaced by a quote, and is nothing when all is quoted', () => {
    expect(
      summarise(estimated(evaluated(threeLines(['quoted', 'from memory', 'quoted'])))).uncheckedShare,
    ).toBeCloseTo(1 / 3, 6);
    expect(
      summarise(estimated(evaluated(threeLines(['quoted', 'surveyed', 'common practice'])))).uncheckedShare,
    ).toBe(0);
  });
});
