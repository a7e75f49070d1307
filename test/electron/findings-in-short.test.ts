import { describe, expect, it } from 'vitest';
import type { Finding } from '../../core/base';
import { findingsInShort } from '../../electron/cli/words';

const finding = (weight: Finding['weight']): Finding => ({
  code: 'made/up',
  weight,
  place: '/vessel',
  message: `One that ${weight}.`,
  remedy: 'Look.',
});

describe('findings beside a result', () => {
  it('are counted by weight in one line that says how to see them', () => {
    expect(findingsInShort([finding('warns'), finding('warns'), finding('notes')])).toEqual([
      '3 findings: 2 to look at, 1 note. --findings prints them in full.',
    ]);
  });

  it('are told in full where they withhold the result', () => {
    expect(findingsInShort([finding('notes'), finding('blocks')])).toEqual([
      'Blocks: /vessel: One that blocks.',
      '    To do: Look.',
      '2 findings: 1 blocks, 1 note. --findings prints them in full.',
    ]);
  });

  it('are not spoken of where there are none', () => {
    expect(findingsInShort([])).toEqual([]);
  });
});
