import { describe, expect, test } from 'vitest';
import { decisionAbout } from '../../../core/papers';
import { grantView, type Evaluation } from '../../../core/evaluation';
import { compareScenarios } from '../../../core/scenario';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const evaluations = project.scenarios.map(scenario => evaluated(project, scenario.id));
const [a, b] = evaluations;
if (a === undefined || b === undefined) throw new Error('the example has scenarios');

function unmet(evaluation: Evaluation): Evaluation {
  const goal = { material: 'pcb', title: 'PCB', goal: 'below 50 ppm', leftOut: [] };
  return { ...evaluation, estimate: { ...estimated(evaluation), unmetGoals: [goal] } };
}

describe('the decision', () => {
  test('never recommends a scenario that leaves a clean-up goal unmet, and says that it cannot be approved', () => {
    const bad = unmet(a);
    const decision = decisionAbout(bad, compareScenarios([bad, b]));
    expect(decision.isPermittable).toBe(false);
    expect(decision.request).toContain('cannot approve');
    expect(decision.request).toContain('PCB');
    expect(decision.recommended?.letter).toBe('B');
    expect(decisionAbout(bad).recommended).toBeUndefined();
  });

  test('keeps to the scenario the board has chosen, unless it may not be carried out', () => {
    const chosen = (evaluation: Evaluation): Evaluation => ({
      ...evaluation,
      project: { ...evaluation.project, decision: { weights: [], chosen: b.scenario.id } },
    });
    const [first, second] = [chosen(a), chosen(b)];
    expect(decisionAbout(first, compareScenarios([first, second])).recommended).toMatchObject({
      letter: 'B',
      isBoardsChoice: true,
    });
    const bad = unmet(second);
    expect(decisionAbout(first, compareScenarios([first, bad])).recommended).toMatchObject({
      letter: 'A',
      isBoardsChoice: false,
    });
  });

  test('gives at most three reasons, each a sentence', () => {
    for (const one of evaluations) {
      const { recommended } = decisionAbout(one, compareScenarios(evaluations));
      expect(recommended?.reasons.length).toBeGreaterThan(0);
      expect(recommended?.reasons.length).toBeLessThanOrEqual(3);
      for (const reason of recommended?.reasons ?? []) expect(reason).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('the county’s money by fiscal year is its own share of the grant budget, to the cent', () => {
    const { county } = decisionAbout(a);
    const { cash } = grantView(a);
    const own = cash?.cash.sources.find(source => source.mode === 'own' && source.sourceId === 'own');
    const sum = (amounts: readonly { amount: number }[]) =>
      amounts.reduce((all, { amount }) => all + amount, 0);
    expect(county.of).toBe('own share');
    expect(county.fiscalYearStart).toBe(project.funding?.fiscalYearStart);
    expect(sum(county.fiscalYears)).toBe(sum(own?.bears ?? []));
    expect(county.peakGap).toEqual(cash?.cash.view.peak);
  });

  test('what was not studied follows from what the project does not hold', () => {
    const { notStudied } = decisionAbout(a);
    expect(notStudied.join(' ')).toContain('no simulation was run');
    expect(decisionAbout({ ...a, project: { ...a.project, quotes: [] } }).notStudied.join(' ')).toContain(
      'no quote',
    );
    const bare: Evaluation = { ...a, project: { ...a.project, funding: undefined, benefits: undefined } };
    expect(decisionAbout(bare).notStudied.join(' ')).toMatch(/no source of funding.*Benefits/);
    expect(notStudied.join(' ')).not.toContain('Benefits');
  });

  test('doing nothing is always among the other choices, and it has no invented price', () => {
    const nothing = decisionAbout(a, compareScenarios(evaluations)).otherChoices.filter(
      ({ kind }) => kind === 'nothing',
    );
    expect(nothing).toHaveLength(1);
    expect(nothing[0]).not.toHaveProperty('amount');
  });
});
