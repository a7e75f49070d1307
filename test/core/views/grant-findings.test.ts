import { describe, expect, it } from 'vitest';
import { WhyDesk, windowParts, windowRows } from '../../../core/views';
import { demoProject, evaluated } from '../evaluation/demo';

const project = demoProject();
const { funding } = project;
if (funding === undefined) throw new Error('the demo has no funding');
const refused = { ...funding, contingency: { ...funding.contingency, acceptedByAgency: false } };
const evaluation = evaluated({ ...project, funding: refused });
const desk = new WhyDesk(evaluation, 'us');
const { rows } = windowRows(evaluation.project, evaluation, 'us', undefined) ?? {};
const countOf = (bottom: NonNullable<typeof rows>['bottom'] | undefined) =>
  bottom?.find(cell => cell.key === 'findings');

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
    const told = rows?.findings.filter(row => reason.test(row.finding.message));
    expect(told?.map(row => row.view)).toEqual(['funding']);
  });

  it('is counted: bottom line, left column and review hold the same findings', () => {
    const count = rows?.findings.length ?? 0;
    expect(count).toBeGreaterThan(evaluation.findings.length);
    expect(countOf(rows?.bottom)?.value.text).toBe(`${count} open`);
    expect(rows?.counts['review']).toBe(String(count));
    expect(rows?.openSentence).toBe(`${count} findings are open; those that withhold a figure come first.`);
  });

  it('is no count before the grant budget is made, and then the count of the plan before', () => {
    const unknown = windowParts(project, evaluation, 'us', undefined)?.head;
    expect(countOf(unknown?.bottom)).toMatchObject({ value: { text: 'settling' }, isSettling: true });
    expect(unknown?.counts['review']).toBeUndefined();
    const held = { findings: [], isHeld: true };
    const settling = windowParts(project, evaluation, 'us', undefined, undefined, held);
    expect(countOf(settling?.head.bottom)).toMatchObject({
      value: { text: `${evaluation.findings.length} open` },
      isSettling: true,
    });
    expect(settling?.amounts.findings).toBeUndefined();
  });
});
