import { describe, expect, it } from 'vitest';
import { WhyDesk } from '../../../core/views';
import { demoProject, evaluated } from '../evaluation/demo';

const project = demoProject();
const { funding } = project;
if (funding === undefined) throw new Error('the demo has no funding');
const refused = { ...funding, contingency: { ...funding.contingency, acceptedByAgency: false } };
const desk = new WhyDesk(evaluated({ ...project, funding: refused }), 'us');

// 2 CFR 200.433: a contingency must be accepted by the awarding agency before a grant may bear it.
describe('a contingency that no grant bears', () => {
  const reason =
    /^The contingency of \$[\d,.]+ is not accepted by the agency yet; it stands in the budget as cost not allowable\./;

  it('is told with the grant budget, and why', () => {
    const view = desk.opened('funding');
    expect(view?.missing).toEqual([]);
    expect(view?.findings.filter(words => reason.test(words))).toHaveLength(1);
  });

  it('is told in the review, with the view where it is put right', () => {
    const view = desk.opened('review');
    const rows = view?.ofGrant.filter(row => reason.test(row.finding.message));
    expect(rows?.map(row => row.view)).toEqual(['funding']);
    expect(view?.ofGrantSentence).toMatch(/ of the grant budget\.$/);
  });
});
