/**
 * Changes that change nothing anybody could see, each with the reason: file, the line as it stands, what takes the
 * place, why it is the same. A change listed here that is seen all the same is told as one too many.
 */

/** The same work is done in another order or in other portions: a matter of time alone. */
const PORTIONS = 'the same cells or trials are worked out, only in other portions';
/** An answer that was kept is worked out again, from the same. */
const KEPT = 'what was kept is worked out again, and comes to the same';
/** Two ways to one number, both within 4 · 10^-14 of it, meet at a bound that belongs to either. */
const WAYS = 'both ways give the power to within 4 · 10^-14';

/** What a column looks at beside its row, to be made again when that changes: words that never change are no matter. */
const BESIDE = 'a constant beside the row makes no column anew';

const changes = (file, why, ...pairs) => pairs.map(([line, put]) => ({ file, line, put, why }));

export const EQUIVALENT = [
  ...changes('core/sheet/columns/quick-kernels.ts', PORTIONS, ['for (; i + 3 < n; i += 4) {', 'false']),
  ...changes('core/sheet/again.ts', PORTIONS, ['return rowsOf(step) / 4;', 'rowsOf(step) * 4']),
  ...changes(
    'core/sheet/again.ts',
    'no cell of such a step is taken over, whether each is asked or none',
    ['return changed !== undefined && changed.count === rowsOf(input);', 'false'],
    ['isAllNew(step: Step): boolean {', '{}'],
  ),
  ...changes('core/sheet/again.ts', 'what is not taken over whole is taken over row by row', [
    'const looksAtRows = isLeaf || step.kind.carried || step.kind.cells !== undefined;',
    'true',
  ]),
  ...changes('core/sheet/rows-named.ts', KEPT, ['if (known !== undefined) return known;', 'false']),
  ...changes('core/sheet/weakest-basis.ts', KEPT, ['if (known !== undefined) return known;', 'false']),
  ...changes('core/sheet/quick/text.ts', KEPT, ['if (READ.has(text)) return READ.get(text);', 'false']),
  ...changes('core/sheet/decimal.ts', KEPT, [
    'if (READ.size < MOST_READ) READ.set(text, value);',
    'READ.size <= MOST_READ',
  ]),
  ...changes('core/sheet/columns/settled.ts', 'where no value is settled, no cell rests on one', [
    'if (this.#settled.size === 0) return;',
    'false',
  ]),
  ...changes(
    'core/sheet/columns/powers.ts',
    KEPT,
    ['this.#exponents = new Float64Array(SLOTS * base.length).fill(Number.NaN);', 'SLOTS / base.length'],
    ['if (exponents[at] !== asked) {', 'true'],
    ['const at = ((asked * STEPS_OF_ONE + 0.5) & (SLOTS - 1)) * trials + t;', 'asked * STEPS_OF_ONE - 0.5'],
  ),
  ...changes(
    'core/sheet/columns/kernels.ts',
    WAYS,
    ['const part = (base - 1) / (base + 1);', 'base + 1'],
    [
      'if (part < NEAR_ONE && part > -NEAR_ONE && near < NEAR_NOTHING && near > -NEAR_NOTHING)',
      'near >= -NEAR_NOTHING',
    ],
    [
      'const isPlain = base > LEAST_BASE && base < GREATEST_BASE && Math.abs(exponent) < GREATEST_POWER;',
      'false',
    ],
    [
      'const isPlain = base > LEAST_BASE && base < GREATEST_BASE && Math.abs(exponent) < GREATEST_POWER;',
      'base >= LEAST_BASE',
    ],
  ),
  ...changes('core/scenario/averaged-steps.ts', 'one times the factorial of nothing is one', [
    'return n <= 1 ? 1n : BigInt(n) * factorial(n - 1);',
    'n < 1',
  ]),
  ...changes(
    'core/scenario/bridge.ts',
    'every set of groups is worked out once either way, in another order',
    [
      'const changed = new Set(groups.map((_, i) => i).filter(i => Math.floor(set / 2 ** i) % 2 === 1));',
      'Math.floor(set / 2 ** i) % 2 !== 1',
    ],
  ),
  ...changes('core/scenario/bridge.ts', 'behind the last set of groups comes the empty one again', [
    'for (let set = 0; set < 2 ** groups.length; set++) {',
    'set <= 2 ** groups.length',
  ]),
  ...changes('core/scenario/bridge.ts', 'a group is one digit', ["return [...changed].join(' ');", '""']),
  ...changes('core/scenario/decision-table.ts', 'the letters of two scenarios are never the same', [
    'const ranked = [...scored].sort((a, b) => b.score - a.score || (a.letter < b.letter ? -1 : 1));',
    'a.letter <= b.letter',
  ]),
  ...changes('core/scenario/decision-table.ts', 'only a scenario with a total is read', [
    'cost: one => negative(summaryOf(one)?.budget?.cents ?? summaryOf(one)?.total?.cents),',
    'summaryOf(one).budget',
  ]),
  ...changes('core/scenario/decision-table.ts', 'without a first scenario there are no others either', [
    'if (first === undefined) return frame;',
    'false',
  ]),
  ...changes('core/scenario/risk-step.ts', 'a word among the simulations is found by no scenario', [
    'risks: readonly RiskFacts[] = [],',
    '["Stryker was here"]',
  ]),
  ...changes(
    'core/estimate/quantity-columns.ts',
    BESIDE,
    ["t.key('driver-key', 'Driver (key)', row => row.item.driver, []),", '["Stryker was here"]'],
    [
      "const step = t.field('rounded-to', 'Rounded to', '1', row => roundedTo(row.item.decimals), []);",
      '["Stryker was here"]',
    ],
  ),
  ...changes('core/estimate/timing-table.ts', KEPT, [
    'if (known !== undefined && isSameData(known.timing, timing)) return known;',
    'false',
  ]),
  ...changes('core/estimate/waste-table.ts', 'only rows that yield scrap are asked', [
    "row => fieldGiven(row, 'scrap', row.item.scrap?.perUnit, perOwn('t', row), '0'),",
    'row.item.scrap.perUnit',
  ]),
  ...changes('core/flooding/simulate/linear-solve.ts', 'a row that leads already takes its own place', [
    'if (best === k) return;',
    'false',
  ]),
  ...changes('core/views/materials/why.ts', 'without a summary the lines are not looked at', [
    'const lines = (context.summary?.lines ?? []).filter(line => {',
    '["Stryker was here"]',
  ]),
  ...changes('core/views/compare/bridge.ts', 'a difference of nothing is told before', [
    "const way = total === 0 ? 'as much as' : total > 0 ? 'more than' : 'less than';",
    'total >= 0',
  ]),
  ...changes('core/views/sinking-tables.ts', 'unevenness is always a number', [
    "uneven: number(100 * choice.unevenness, 1, 'not run'),",
    '""',
  ]),
  ...changes('core/views/scenarios.ts', 'a place of the document always has a step', [
    "const [section = '', id = '', ...fields] = steps;",
    '"Stryker was here!"',
  ]),
  ...changes('core/views/bid/received.ts', 'a bid of just the estimate is told before', [
    ": `, ${dollars(Math.abs(over))} ${over > 0 ? 'over' : 'under'} the estimate.`,",
    'over >= 0',
  ]),
  ...changes('core/evaluation/books/line-hints.ts', 'a word among the sources gives nothing in kind', [
    'return (funding?.sources ?? []).some(',
    '["Stryker was here"]',
  ]),
  ...changes('core/evaluation/books/line-hints.ts', 'a line of the books has all its elements', [
    'const labour = line.elements.labour?.cents ?? 0;',
    'line.elements.labour.cents',
  ]),
  ...changes('core/evaluation/evaluate.ts', 'money and what quotes replace of it are made together', [
    'if (estimate.money === undefined || estimate.quoted === undefined) return scheduled;',
    'estimate.money === undefined && estimate.quoted === undefined',
  ]),
  ...changes('core/scheduling/words.ts', 'one word has nothing to be joined with', [
    "return `${words.slice(0, -1).join(', ')} and ${words.slice(-1).join('')}`;",
    '"Stryker was here!"',
  ]),
  ...changes('core/scheduling/verify/check-resources.ts', 'nothing is more than a limit that is not there', [
    'if (crewLimit === undefined) return [];',
    'false',
  ]),
  ...changes('core/scheduling/verify/day-rules.ts', 'the same days are only written out once more', [
    'const held = problem.resources.filter(r => r.calendar !== undefined && (uses[r.id] ?? 0) > 0);',
    'true',
  ]),
  ...changes(
    'core/scheduling/search/lag-pass.ts',
    'no lag leads from an activity to itself',
    ['if (intAt(placeOf, other) >= k) continue;', 'intAt(placeOf, other) > k'],
    ['if (intAt(this.placeOf, other) >= k) continue;', 'intAt(this.placeOf, other) > k'],
  ),
  ...changes('core/scheduling/search/mirror.ts', 'every activity has a calendar on the axis', [
    'if (!calendar) return false;',
    'false',
  ]),
  ...changes(
    'core/scheduling/search/bounds/dated/pairs.ts',
    'an order that does not fit cannot be kept either',
    ['if (!canFirst && !canSecond) return false;', 'false'],
  ),
  ...changes(
    'core/scheduling/search/bounds/dated/windows.ts',
    'where nothing is marked, looking finds nothing',
    ['windows.hasNarrowed = value === 1;', 'true'],
    ['view.hasPushed = value === 1;', 'true'],
    ['view.hasMoved = value === 1;', 'true'],
  ),
  ...changes(
    'core/scheduling/search/compile-held.ts',
    'resources lie in other words of 32 bits, and fit as before',
    ['const held = watched.flatMap(({ units }, r) => (units[i] === 0 ? [] : [r]));', '[]'],
  ),
  ...changes('core/scheduling/explain/profiles.ts', 'days behind the last one stay without work', [
    'const workers = new Int32Array(Math.max(0, to - from));',
    'to + from',
  ]),
  ...changes('core/scheduling/verify/day-list.ts', 'every year has four digits', [
    "String(year).padStart(4, '0'),",
    '""',
  ]),
];
