import { describe, expect, it } from 'vitest';
import { quotedLines } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { demoProject, evaluated } from './demo';

const base: Project = { ...demoProject(), quotes: [] };

function quoteFor(items: readonly string[]): Project['quotes'][number] {
  return {
    id: 'tow',
    vendor: 'Kestrel Marine (invented)',
    dated: '2026-10-01',
    validUntil: '2027-01-31',
    covers: items.map(item => ({ item, share: '1' })),
    exclusions: [],
    amount: { value: '400000', unit: 'USD', basis: 'quoted', source: 'Invented quote', year: 2026 },
    chosen: true,
  };
}

function quoted(...items: readonly string[]) {
  return evaluated({ ...base, quotes: [quoteFor(items)] }).findings.filter(
    one => one.code === 'quotes/carried-elsewhere',
  );
}

describe('a quote for a line whose cost other lines carry', () => {
  it('names several lines that carry it as several', () => {
    const { estimate } = evaluated(base);
    const tug = estimate?.planned.find(({ item }) => item.id === 'tow-tug');
    if (estimate?.money === undefined || tug === undefined) throw new Error('the example has no tug');
    const pilot = { ...tug, item: { ...tug.item, id: 'tow-pilot', title: 'Pilot boat' } };
    const project = { ...base, quotes: [quoteFor(['ocean-tow'])] };
    const { findings } = quotedLines(project, estimate.money, '2026-11-29', [...estimate.planned, pilot]);
    expect(findings.map(one => one.message).join(' ')).toContain(
      '“Ocean tug and fuel”, “Pilot boat” carry what it uses.',
    );
  });

  it('is told with what the line cost before and which line carries it', () => {
    const [finding] = quoted('ocean-tow');
    expect(finding?.message).toMatch(
      /^The quote of Kestrel Marine \(invented\) puts \$400,000\.00 on “Tow to the site”, which cost \$[\d,.]+ before\. “Ocean tug and fuel” carries what it uses\.$/,
    );
    expect(finding?.place).toBe('/quotes/tow');
  });

  it('is in order when it prices those lines too, or a line that carries its own cost', () => {
    expect(quoted('ocean-tow', 'tow-tug')).toEqual([]);
    expect(quoted('cable-stripping')).toEqual([]);
  });
});
