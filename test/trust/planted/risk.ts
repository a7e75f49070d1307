import { bugs } from './bug';

/** Distributions, simulation, contingency. */
export const riskBugs = bugs(
  [
    'quantiles agree with the statistics library to 1e-9',
    'core/risk/distributions/triangular.ts',
    'return u => (u < peak ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling));',
    'return u => (u < peak ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling) * 1.000001);',
    'test/core/risk/distributions.test.ts',
    'quantiles agree with the stdlib',
  ],
  [
    'ranks are correlated as asked',
    'core/risk/score-correlation.ts',
    'return 2 * Math.sin((Math.PI / 6) * asked);',
    'return asked * 0.9;',
    'test/core/risk/analytic.test.ts',
    'asked for at 0.5 of the ranks themselves',
  ],
  [
    'with ranges collapsed the simulation is the plan',
    'core/risk/distributions/triangular.ts',
    'if (span === 0) return (_, out, n) => void out.fill(likely, 0, n);',
    'if (span === 0) return (_, out, n) => void out.fill(likely * 1.01, 0, n);',
    'test/core/risk/simulation.test.ts',
    'give the plan to the cent',
  ],
  [
    'draws belong to ids',
    'core/risk/latin-hypercube.ts',
    'this.order = bitsKey(plan.seed, id);',
    "this.order = bitsKey(plan.seed, 'all');",
    'test/core/risk/simulation.test.ts',
    'those of two ids are unrelated',
  ],
  [
    'a trial without a finite value is counted',
    'core/risk/percentiles.ts',
    'return values.filter(Number.isFinite).sort();',
    'return values.slice().sort();',
    'test/core/risk/simulation.test.ts',
    'is counted, reported and left out',
  ],
  [
    'contingency is split to lines that add up to the cent',
    'core/risk/contingency.ts',
    'const parts = allocate(amount, weights);',
    'const parts = allocate(amount, weights).slice(1);',
    'test/core/risk/confidence.test.ts',
    'is split to lines that add up',
  ],
  [
    'one figure moved twice without a note is a finding',
    'core/risk/coverage.ts',
    'if (kinds.size < 2 ||',
    'if (kinds.size < 3 ||',
    'test/core/risk/what-if.test.ts',
    'of an input by its own range and a driver',
  ],
  [
    'the whole joint distribution is matched',
    'core/risk/joint.ts',
    '<= cost && ',
    '<= cost || ',
    'test/core/risk/confidence.test.ts',
    'joint confidence',
  ],
);
