import { lowerFirst } from '../../base';
import { CRITERIA, type Criterion } from '../../project';
import {
  comparedWords,
  criterionTitle,
  CRITERION_TITLES,
  dominanceWords,
  listed,
  USUAL_WEIGHTS,
  type Comparison,
  type DecisionTable,
} from '../../scenario';
import { aligned, editCell, NOT_APPLYING, REMOVE_COLUMN, removeCell, words } from '../cells';
import { inHundred } from '../risk/words';
import type { Addition, Column, Row, Shown, TableRows } from '../rows';

/** The decision table: weights the board can set, the score of each scenario, and how far each weight reaches. */
export function weightTable({ evaluations }: Comparison, table: DecisionTable): TableRows {
  const own = evaluations[0]?.project.decision?.weights ?? [];
  const columns: Column[] = [
    { key: 'what', title: 'What counts', kind: 'words' },
    { key: 'weight', title: 'Weight', kind: 'number' },
    { key: 'share', title: 'Share', unit: '%', kind: 'number' },
    ...table.ranked.map(({ scenario, letter }): Column => ({
      key: scenario,
      title: letter,
      unit: 'score',
      kind: 'number',
    })),
    { key: 'reach', title: 'The order holds for', kind: 'words' },
    ...(own.length > 0 ? [REMOVE_COLUMN] : []),
  ];
  const given = own.length > 0 ? own : USUAL_WEIGHTS;
  const rows = given.map(({ criterion, weight }, at): Row => {
    const used = table.weights.find(one => one.criterion === criterion);
    const place = `/decision/weights/${at}`;
    const label = `Weight of ${lowerFirst(CRITERION_TITLES[criterion])}`;
    const edit = { at: `${place}/weight`, kind: 'decimal', unit: '1', value: weight, label } as const;
    return {
      id: criterion,
      kind: 'line',
      cells: {
        what: words(criterionTitle(criterion, table.reading)),
        weight: own.length > 0 ? editCell(edit) : words(weight),
        share: words(used === undefined ? notCounted(table, criterion) : inHundred(used.weight)),
        ...Object.fromEntries(table.ranked.map(one => [one.scenario, scoreCell(one.scores[criterion])])),
        reach: words(reachWords(table, criterion)),
        ...(own.length > 0 ? { remove: removeCell(place, lowerFirst(label)) } : {}),
      },
    };
  });
  const total: Row = {
    id: 'score',
    kind: 'total',
    cells: {
      what: words('Weighted score'),
      ...Object.fromEntries(table.ranked.map(one => [one.scenario, scoreCell(one.score)])),
    },
  };
  const add =
    own.length > 0 && own.length < CRITERIA.length ? { add: addition(own.map(one => one.criterion)) } : {};
  return {
    id: 'weights',
    caption: 'What counts, and for how much',
    columns,
    rows: aligned(columns, table.ranked.length === 0 ? rows : [...rows, total]),
    note: [
      '0 is the worst of the scenarios compared and 1 the best. What is alike in all of them counts for none. Only those that may be carried out are ranked.',
    ],
    ...add,
  };
}

/** Why a criterion has no share. */
function notCounted({ alike }: DecisionTable, criterion: Criterion): string {
  if (alike.includes(criterion)) return 'no difference';
  return criterion === 'confidence' ? 'after the trials' : 'not known';
}

function scoreCell(score: number | undefined): Shown {
  return score === undefined ? NOT_APPLYING : words(score.toFixed(2));
}

function reachWords({ sensitivity, ranked, alike }: DecisionTable, criterion: Criterion): string {
  if (alike.includes(criterion)) return 'alike in all scenarios: it turns no order';
  const range = sensitivity.find(one => one.criterion === criterion);
  if (range === undefined) return 'left out: a scenario has no figure for it';
  const { from, to, firstBelow, firstAbove } = range;
  if (firstBelow === undefined && firstAbove === undefined)
    return ranked.length < 2 ? 'any share' : 'any share of it';
  const below = firstBelow === undefined ? '' : `; below, ${firstBelow} comes first`;
  const above = firstAbove === undefined ? '' : `; above, ${firstAbove} comes first`;
  return `${inHundred(from)} to ${inHundred(to)} %${below}${above}`;
}

function addition(taken: readonly string[]): Addition {
  const choices = CRITERIA.filter(criterion => !taken.includes(criterion)).map(id => ({
    id,
    title: CRITERION_TITLES[id],
  }));
  return {
    at: '/decision/weights',
    what: 'what counts',
    entry: {},
    fields: [
      { path: 'criterion', kind: 'choice', label: 'What counts', choices },
      { path: 'weight', kind: 'decimal', unit: '1', label: 'Weight, 0 to 1', value: '0.1' },
    ],
  };
}

/** The ranking in words: who comes first by how much, by what, who stands outside and why, who is beaten in everything. */
export function rankingWords(table: DecisionTable): readonly string[] {
  const { leftOut } = table;
  return [
    firstWords(table),
    ...comparedWords(table),
    ...leftOut.map(({ letter, reason }) => `${letter} is not ranked: it ${reason}.`),
    ...dominanceWords(table),
  ];
}

function firstWords({ ranked, weights, isBoardsOwn }: DecisionTable): string {
  const [first, second] = ranked;
  if (first === undefined) return 'No scenario can be ranked: none may be carried out.';
  if (second === undefined) return `Only ${first.letter} may be carried out and ranked.`;
  if (weights.length === 0)
    return `Nothing that is compared separates ${listed(ranked.map(({ letter }) => letter))}.`;
  const whose = isBoardsOwn ? 'the board’s weights' : 'usual weights, which the board has not set yet';
  return `${first.letter} comes first with ${first.score.toFixed(2)}, then ${second.letter} with ${second.score.toFixed(2)}, by ${whose}.`;
}
