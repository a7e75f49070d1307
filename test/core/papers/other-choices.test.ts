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
  for (const { note, source } of published) {
    expect(note).toContain('not scaled to the size of this one');
    expect(source).toContain('not scaled to this one');
  }
});
