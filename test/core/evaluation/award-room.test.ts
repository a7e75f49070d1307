import { describe, expect, it } from 'vitest';
import { awardChance } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { demoProject } from './demo';

/** Ten runs that cost 1 to 10 dollars. */
const samples = {
  total: Float64Array.from({ length: 10 }, (_, at) => at + 1),
  finish: new Float64Array(10),
};

function withAcceptance(acceptedByAgency: boolean): Pick<Project, 'funding'> {
  const { funding } = demoProject();
  if (funding === undefined) throw new Error('the demo has no funding');
  return { funding: { ...funding, contingency: { ...funding.contingency, acceptedByAgency } } };
}

// 2 CFR 200.433: a contingency is allowable where the awarding agency accepts it.
describe('the chance to stay inside the award', () => {
  it('counts the contingency where the agency accepts it', () => {
    expect(awardChance(withAcceptance(true), samples, 5, 3)).toEqual({
      budget: 8,
      holdsContingency: true,
      chance: 0.8,
    });
  });

  it('is that of the plan alone where the agency does not', () => {
    expect(awardChance(withAcceptance(false), samples, 5, 3)).toEqual({
      budget: 5,
      holdsContingency: false,
      chance: 0.5,
    });
  });

  it('is absent without an award, and while the contingency is not known', () => {
    expect(awardChance({}, samples, 5, 3)).toBeUndefined();
    expect(awardChance(withAcceptance(true), samples, 5, undefined)).toBeUndefined();
  });
});
