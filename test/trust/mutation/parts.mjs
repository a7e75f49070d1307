/** What each part asks: folders and files of tests. A part that is not named asks the folder of its own name. */
const TESTS = {
  sheet: ['test/core/sheet', 'test/property/sheet'],
};

export const testsOf = part => TESTS[part] ?? [`test/core/${part}`];

/** The share of changes that its tests must see. */
const STRICT = new Set(['money', 'units', 'calendar', 'sheet', 'network', 'funding']);
export const leastOf = part => (STRICT.has(part) ? 90 : 80);
