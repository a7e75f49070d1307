import { describe, expect, test } from 'vitest';
import { grantView } from '../../../core/evaluation';
import { demoProject, evaluated } from './demo';

const demo = demoProject();
const evaluation = evaluated(demo);
const view = grantView(evaluation);
const told = (of: typeof view) =>
  of.findings.filter(({ code }) => code === 'funding/personnel-without-fringe');

describe('labour of hired crews under Personnel', () => {
  test('is asked about once an award, with its lines and what they come to', () => {
    const [one, ...more] = told(view);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ weight: 'notes', place: `/funding/sources/${demo.funding?.sources[0]?.id}` });
    expect(one?.message).toMatch(
      /^12 lines under Personnel of .*, \$[\d,.]+ in all, have no fringe benefits: /,
    );
  });

  test('is that of crews which the owner does not employ', () => {
    const [award] = view.book?.awards ?? [];
    const withFringe = new Set(award?.rows.flatMap(row => (row.kind === 'fringe' ? [row.lineId] : [])));
    const bare = award?.rows.filter(row => row.kind === 'labour' && !withFringe.has(row.lineId)) ?? [];
    const { crews } = evaluation.library.rateBook;
    const employers = bare.map(({ lineId }) => {
      const crew = evaluation.estimate?.items.find(({ id }) => id === lineId)?.crew;
      return crews.find(({ id }) => id === crew)?.employer;
    });
    expect([...new Set(employers)]).toEqual(['contractor']);
  });

  test('is not asked about where a row of the mapping sends it elsewhere', () => {
    const { funding } = demo;
    if (funding === undefined) throw new Error('the example has a grant');
    const rows = (evaluation.estimate?.items ?? [])
      .filter(
        ({ crew }) => evaluation.library.rateBook.crews.find(({ id }) => id === crew)?.employer !== 'owner',
      )
      .map(({ id }) => ({ when: { lineId: id, kind: 'labour' as const }, to: 'f' }));
    const project = { ...demo, funding: { ...funding, mapping: { 'SF-424A': rows } } };
    expect(told(grantView({ ...evaluation, project }))).toEqual([]);
  });
});
