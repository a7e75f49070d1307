/**
 * The modules of core, bottom up. A module may import modules of a row above it in this list, also of its own
 * number when listed before it, and never one below. A folder of core without a row fails the test.
 */
export const LAYERS: readonly (readonly [number, string])[] = [
  [0, 'base'],
  [1, 'units'],
  [1, 'money'],
  [1, 'calendar'],
  [2, 'sheet'],
  [2, 'network'],
  [3, 'vessel'],
  [3, 'materials'],
  [3, 'rate-book'],
  [3, 'towing'],
  [3, 'stability'],
  [3, 'flooding'],
  [4, 'work'],
  [4, 'scheduling'],
  [5, 'cash-flow'],
  [5, 'estimate'],
  [5, 'disposal'],
  [6, 'funding'],
  [6, 'bid'],
  [6, 'benefit'],
  [6, 'risk'],
  [7, 'project'],
  [8, 'review'],
  [8, 'evaluation'],
  [9, 'scenario'],
  [9, 'papers'],
  [9, 'views'],
];
