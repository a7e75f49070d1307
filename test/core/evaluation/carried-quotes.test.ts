import { describe, expect, it } from 'vitest';
import type { Project } from '../../../core/project';
import { demoProject, evaluated } from './demo';

const base: Project = { ...demoProject(), quotes: [] };

function quoted(...items: readonly string[]) {
  const quote: Project['quotes'][number] = {
    id: 'tow',
    vendor: 'Kestrel Marine (invented)',
    dated: '2026-10-01',
    validUntil: '2027-01-31',
    covers: items.map(item => ({ item, share: '1' })),
    exclusions: [],
    amount: { value: '400000', unit: 'USD', basis: 'quoted', source: 'Invented quote', year: 2026 },
    chosen: true,
  };
  return evaluated({ ...base, quotes: [quote] }).findings.filter(
    one => one.code === 'quotes/carried-elsewhere',
  );
}

describe('a quote for a line whose cost other lines carry', () => {
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
