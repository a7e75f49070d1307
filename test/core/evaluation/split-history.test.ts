import { describe, expect, test } from 'vitest';
import { splitAgainstHistory, splitLines, summarise } from '../../../core/evaluation';
import { demoProject, estimated, evaluated } from './demo';

const project = demoProject();

describe('the split of the example against history', () => {
  test.each(project.scenarios.map(scenario => scenario.id))(
    'in %s clean-up takes the most cost and the most paid hours, within what past hulls took',
    scenario => {
      const parts = estimated(evaluated(project, scenario));
      const summary = summarise(parts);
      const { splits, largest } = splitAgainstHistory(parts, summary);
      // 0.35 to 0.75 of cost, 3 to 15 h a tonne: judged, from a naval auxiliary of 523 ft and a carrier of 888 ft.
      expect(splits.map(row => [row.id, row.low, row.high, row.falls])).toEqual([
        ['removal-share', 0.35, 0.75, 'inside'],
        ['hours-per-tonne', 3, 15, 'inside'],
      ]);
      expect(largest.map(row => [row.of, row.stage])).toEqual([
        ['cost', 'clean-up'],
        ['paid hours', 'clean-up'],
      ]);
      // Counted again from the lines, in another way.
      const stage = (id: string) => summary.lines.filter(line => line.stage === id);
      const cents = (lines: typeof summary.lines) =>
        lines.reduce((sum, line) => sum + (line.total?.cents ?? Number.NaN), 0);
      const share = cents(stage('clean-up')) / cents(summary.lines);
      expect(splits[0]?.value).toBeCloseTo(share, 3);
      const tonnes = Number(project.vessel.lightship?.value) * 1.0160469088; // long ton, NIST SP 811
      const hours = stage('clean-up').reduce((sum, line) => sum + (line.hours ?? 0), 0);
      expect(splits[1]?.value).toBeCloseTo(hours / tonnes, 2);
      expect(splitLines({ splits, largest }).join('\n')).toMatch(
        /Contaminant removal, share of the cost: \d+ % \(past hulls 35 % to 75 %, judgement\): inside/,
      );
    },
  );

  test('falls outside when the clean-up is quoted away, and says so', () => {
    const ids = estimated(evaluated(project))
      .items.filter(item => item.stage === 'clean-up')
      .map(item => item.id);
    const cheap = {
      ...project,
      quotes: [
        {
          id: 'too-good',
          vendor: 'Plover Works (invented)',
          dated: '2026-10-01',
          validUntil: '2027-01-31',
          covers: ids.map(item => ({ item, share: '1' })),
          exclusions: [],
          amount: {
            value: '1000',
            unit: 'USD',
            basis: 'quoted' as const,
            source: 'Invented quote',
            year: 2026,
          },
          chosen: true,
        },
      ],
    };
    const parts = estimated(evaluated(cheap));
    const found = splitAgainstHistory(parts, summarise(parts));
    expect(found.splits[0]?.falls).toBe('below');
    expect(found.largest[0]).toMatchObject({ of: 'cost', stage: 'yard', isUsual: false });
    expect(splitLines(found).join('\n')).toMatch(/below it/);
  });
});
