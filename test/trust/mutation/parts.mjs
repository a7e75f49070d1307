/** What each part asks: folders and files of tests. A part that is not named asks the folder of its own name. */
const TESTS = {
  'cash-flow': ['test/core/cash-flow', 'test/core/funding', 'test/core/bid'],
  sheet: ['test/core/sheet', 'test/property/sheet'],
  vessel: ['test/core/vessel', 'test/reference/take-off.test.ts', 'test/reference/hull-formulas.test.ts'],
  towing: ['test/reference/towing.test.ts', 'test/core/evaluation/tow.test.ts'],
  materials: ['test/core/materials', 'test/core/imports', 'test/core/evaluation/rules.test.ts'],
  estimate: [
    'test/core/estimate',
    'test/core/evaluation/absent-rates.test.ts',
    'test/core/evaluation/three-lines.test.ts',
    'test/core/evaluation/carried-quotes.test.ts',
  ],
  // Of the tests of whole evaluations those that work none out while they are read.
  evaluation: [
    ...['dates-and-goals', 'screened-givens', 'evaluating', 'book-pieces', 'book-margins'],
    ...['three-lines', 'absent-rates', 'faults', 'split-history', 'carried-quotes', 'award-room'],
  ].map(name => `test/core/evaluation/${name}.test.ts`),
  work: ['test/core/work', 'test/core/evaluation/scope.test.ts'],
  stability: ['test/core/stability', 'test/reference/statics.test.ts'],
  flooding: ['test/core/flooding', 'test/reference/hydraulics.test.ts'],
  scheduling: ['test/core/scheduling', 'test/core/scheduling-search'],
  'rate-book': ['test/reference/price-index.test.ts'],
};

export const testsOf = part => TESTS[part] ?? [`test/core/${part}`];

/** The share of changes that its tests must see. */
const STRICT = new Set(['money', 'units', 'calendar', 'sheet', 'network', 'funding']);
export const leastOf = part => (STRICT.has(part) ? 90 : 80);
