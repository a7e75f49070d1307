import { describe, expect, test } from 'vitest';
import { WhyDesk, windowRows, type OpenedName } from '../../../core/views';
import { AWKWARD, AWKWARD_NAMES, awkward, type AwkwardName } from './awkward';
import {
  absentNumbers,
  brokenWords,
  foreignUnits,
  looseRows,
  otherAmounts,
  silentFigures,
  tablesIn,
  whysIn,
  wrongSums,
} from './laws';

const OPENED = [
  'materials',
  'funding',
  'bid',
  'review',
  'scenarios',
  'evidence',
] as const satisfies readonly OpenedName[];

/** Everything the window shows of an awkward project. */
function shown(name: AwkwardName, measures: 'us' | 'metric') {
  const desk = new WhyDesk(awkward(name), measures);
  const window = windowRows(AWKWARD[name], awkward(name), measures, undefined)?.rows;
  return { desk, rows: { window, opened: OPENED.map(view => desk.opened(view)) } };
}

/** Lines of the estimate are many and alike, and so are both measures: one in forty figures of them stands for all. */
function sampled(names: readonly string[], measures: 'us' | 'metric'): string[] {
  const alike = measures === 'us' ? /^(lines|given|activity|stage)/ : /./;
  return names.filter((name, place) => !alike.test(name) || place % 40 === 0);
}

/** Tables whose lines make up their total. */
const SUMMED = /^(by-(stage|element|material|month)|sources|bid-sheet|bid-totals|[AC]-.*|C|contingency)$/;

describe.each(AWKWARD_NAMES)('a project %s', name => {
  describe.each(['us', 'metric'] as const)('for a reader of %s measures', measures => {
    const { desk, rows } = shown(name, measures);

    test('says nothing in the words of the program, and no figure that is none', () => {
      expect(brokenWords(rows)).toEqual([]);
      expect(absentNumbers(rows)).toEqual([]);
    });

    test('has one row of each name, each under its group, each cell in a column', () => {
      expect(looseRows(rows)).toEqual([]);
    });

    test('tells every amount in the reader’s units', () => {
      expect(foreignUnits(rows, measures)).toEqual([]);
    });

    test('adds up to the dollar and to the tenth of a per cent', () => {
      const summed = tablesIn(rows).filter(({ id }) => SUMMED.test(id));
      expect(summed.flatMap(wrongSums)).toEqual([]);
    });

    test('opens every figure, and what opens says the same amount', () => {
      const answer = (one: string) => desk.answer(one);
      expect(silentFigures(sampled(whysIn(rows), measures), answer)).toEqual([]);
      const tables = tablesIn(rows).filter(({ id }) => /^(by-|payee|materials)/.test(id));
      const [families, others] = [
        tables.filter(table => table.id === 'materials'),
        tables.filter(table => table.id !== 'materials'),
      ];
      expect(otherAmounts(others, answer)).toEqual([]);
      // A family is told as the sum of its lines in whole dollars, as Work shows them.
      expect(otherAmounts(families, answer, 20)).toEqual([]);
    }, 120_000);
  });
});

test('a project whose hull nobody knows shows nothing, and no name opens anything', () => {
  const desk = new WhyDesk(awkward('with a hull that nobody knows'), 'us');
  expect(OPENED.map(view => desk.opened(view))).toEqual(OPENED.map(() => undefined));
  expect(desk.answer('sums/total')).toBeUndefined();
});
