import { describe, expect, test } from 'vitest';
import { decisionAbout } from '../../../core/papers';
import { grantView, type Evaluation } from '../../../core/evaluation';
import { compareScenarios, riskFacts } from '../../../core/scenario';
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
    const asked = (one: Evaluation) => decisionAbout(one, compareScenarios([first, second])).request;
    expect(asked(second)).toMatch(/^The board of .+ has chosen scenario B, [^.]+$/);
    expect(asked(first)).toMatch(/^The board of .+ has chosen scenario B, .+, and not scenario A$/);
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

  test('says how often the grant ends first, and with which scenario that is rarest', () => {
    const plan = { trials: 200, seed: 1 };
    const d = evaluations.find(({ scenario }) => scenario.id === 'early-sinking');
    if (d === undefined) throw new Error('the example sinks early in one scenario');
    const risks = [a, d].flatMap(one => riskFacts(one, plan) ?? []);
    const [often, rarely] = [d, a].map(one => {
      const missed = risks.find(risk => risk.scenario === one.scenario.id)?.missesGrant;
      return Math.round((missed ?? Number.NaN) * 100);
    });
    expect(often).toBeGreaterThan(rarely ?? Infinity);
    const reasons = (chosen: string) => {
      const project = { ...a.project, decision: { weights: [], chosen } };
      const both = [a, d].map(one => ({ ...one, project }));
      const comparison = { ...compareScenarios(both), risks };
      return decisionAbout(both[0] ?? a, comparison).recommended?.reasons ?? [];
    };
    expect(reasons(d.scenario.id)).toContain(
      `But the grant ends before it is done in ${often} of 100 runs; with A, in ${rarely}.`,
    );
    expect(reasons(a.scenario.id)).toContain(
      `The grant ends before it is done in ${rarely} of 100 runs, no more than with any other.`,
    );
    // Without a simulation nothing is said of it.
    expect(decisionAbout(a, compareScenarios([a, d])).recommended?.reasons.join(' ')).not.toContain('of 100');
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
