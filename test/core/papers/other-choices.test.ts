import { expect, it } from 'vitest';
import { decisionAbout } from '../../../core/papers';
import { demoProject, evaluated } from '../evaluation/demo';

it('a published mean over many ships is said not to be scaled to this one', () => {
  const published = decisionAbout(evaluated(demoProject())).otherChoices.filter(
    one => one.kind === 'published',
  );
  expect(published.map(one => one.title)).toEqual([
    'Recycling in this country',
    'Keeping it laid up for 100 years',
  ]);
  // The amount of a ship of unknown tonnage would be read as that of this one: it stands in the words alone.
  expect(published.map(one => one.amount)).toEqual([undefined, undefined]);
  expect(published[0]?.note).toBe(
    'no amount for this ship: what was published is $5,310,000 a ship at 2000 prices, a mean for 358 ships whose tonnage is not known; source: Hess and others, RAND MR-1377 (2001)',
  );
  for (const { note, source } of published) {
    expect(note).toContain('no amount for this ship');
    expect(source).toContain('not scaled to this one');
  }
});
