import { at, lowerFirst } from '../../base';
import type { Evaluation, RiskView } from '../../evaluation';
import type { Comparison } from '../../scenario';
import { runSteps } from '../risk/origin';
import { words } from '../cells';
import type { TableRows, WhyRow } from '../rows';
import { step, type Origin } from '../simulated';

/** So many changes of a scenario are named under a figure. */
const NAMED = 6;
const RUN_FACTS = new Set(['p80', 'finish-p80', 'deadline']);
const WHOLE: Readonly<Record<string, string>> = {
  budget: 'sums/budget',
  finish: 'schedule:finish',
  'work-days': 'schedule:finish',
  unchecked: 'basis:unchecked',
  heel: 'upright:verdict',
  gm: 'upright:verdict',
};

/** What stands behind the figures of a comparison. */
export interface Compared {
  readonly comparison: Comparison;
  readonly views: readonly RiskView[];
  readonly chosen: string;
}

/** The changes of a scenario, each with the given of the chosen one when it is a figure. */
function changesOf({ scenario }: Evaluation): readonly WhyRow[] {
  const { changes } = scenario;
  const named = changes.slice(0, NAMED).map(({ at: place, to }) => {
    const name = place.slice(place.lastIndexOf('/') + 1).replaceAll('-', ' ');
    const isFigure = to !== null && typeof to === 'object' && 'unit' in to;
    const text = typeof to === 'string' ? to.replaceAll('-', ' ') : 'changed';
    return step({ text, ...(isFigure ? { why: `given:${place}` } : {}) }, `it changes: ${name}`);
  });
  return changes.length > NAMED
    ? [...named, step({ text: String(changes.length - NAMED) }, 'changes more')]
    : named;
}

function factOrigin({ comparison, views, chosen }: Compared): Origin {
  const { evaluations } = comparison;
  const of = (id: string) =>
    at(
      evaluations,
      evaluations.findIndex(one => one.scenario.id === id),
    );
  return {
    path: 'Compare, side by side',
    home: 'compare',
    hasNoUnits: true,
    words: ({ key }, row) => {
      const { letter } = of(key);
      if (RUN_FACTS.has(row.id)) return `Read from the runs of scenario ${letter}, put in order.`;
      return key === chosen
        ? `Worked out for scenario ${letter}, which is shown now.`
        : `Worked out for scenario ${letter} as a whole. Choose ${letter} at the top of the list to follow it step by step.`;
    },
    steps: ({ key }, row) => {
      const one = of(key);
      const view = views.find(each => each.scenario === key);
      const runs = RUN_FACTS.has(row.id) && view !== undefined ? runSteps(view, undefined, 'cost') : [];
      // The givens behind another scenario open once that scenario is chosen.
      const told =
        key === chosen ? runs : runs.map(({ value, ...one }) => ({ ...one, value: words(value.text) }));
      const own = Object.entries(row.cells)
        .filter(([scenario]) => scenario === chosen)
        .map(([scenario, { text }]) =>
          step(
            { text, why: WHOLE[row.id] ?? 'sums/total' },
            `the same in scenario ${of(scenario).letter}, with its givens`,
          ),
        );
      const changed = one.scenario.changes.length === 0 || key === chosen ? [] : [...changesOf(one)];
      return [...told, ...own, ...changed];
    },
  };
}

const RULES: readonly (readonly [RegExp, string])[] = [
  [
    /^bridge-/,
    'Each step is the average over every order of making the changes, so none depends on coming first.',
  ],
  [
    /^frontier$/,
    'The least budget with which so many runs end inside both the money and this date. For a plan it is its total.',
  ],
  [
    /^weights$/,
    'Each scenario stands between the worst, 0, and the best, 1. The score is the sum of these, each times its weight.',
  ],
];

/** The totals of all scenarios: that of the chosen one opens its givens. */
export function totalSteps({ comparison, chosen }: Compared): readonly WhyRow[] {
  return comparison.evaluations.map(({ scenario, letter }) => {
    const why = scenario.id === chosen ? 'sums/total' : `compare:scenarios-side-by-side|total|${scenario.id}`;
    return step({ text: `total of ${letter}`, why }, scenario.title);
  });
}

/** The origin of the figures of one table of the comparison. */
export function comparedOrigin(table: TableRows, about: Compared): Origin {
  if (table.id === 'scenarios-side-by-side') return factOrigin(about);
  const rule = RULES.find(([pattern]) => pattern.test(table.id))?.[1];
  return {
    path: `Compare, ${lowerFirst(table.caption)}`,
    home: 'compare',
    words: () => rule,
    steps: () => totalSteps(about),
  };
}
