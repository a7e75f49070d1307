import { describe, expect, test } from 'vitest';
import {
  bidWorkbook,
  csvFiles,
  evaluationJson,
  internalWorkbook,
  reportHtml,
  type PaperWorkbook,
} from '../../../core/papers';
import { compareScenarios } from '../../../core/scenario';
import { demoProject, evaluated } from '../evaluation/demo';
import { HOSTILE } from './hostile';

const project = demoProject();
const first = evaluated(project);
const comparison = compareScenarios([first]);

/** The scenario with a text wherever a person types words that papers print. */
function planted(words: string): typeof first {
  return {
    ...first,
    scenario: { ...first.scenario, title: words },
    project: {
      ...first.project,
      title: words,
      vessel: { ...first.project.vessel, name: words },
      site: { ...first.project.site, county: words },
      quotes: first.project.quotes.map(quote => ({ ...quote, vendor: words, exclusions: [words] })),
    },
  };
}

const elements = (markup: string | undefined) => (markup?.match(/<[a-z]+\d?/g) ?? []).sort();
const formulas = (paper: PaperWorkbook | undefined) =>
  paper?.sheets.flatMap(({ cells }) => cells).filter(({ content }) => content.kind === 'formula').length;

describe('texts that could be taken for something to run', () => {
  test('are forty or more', () => {
    expect(HOSTILE.length).toBeGreaterThanOrEqual(40);
  });

  describe.each(['board', 'grant', 'bid'] as const)('in the pages of the %s', reader => {
    const calm = reportHtml(first, comparison, reader);

    test('there are pages', () => {
      expect(elements(calm).length).toBeGreaterThan(20);
    });

    test.each(HOSTILE)('%j stays text', words => {
      const html = reportHtml(planted(words), undefined, reader);
      expect(elements(html)).toEqual(elements(reportHtml(first, undefined, reader)));
      expect(html?.match(/<\/style>/g)?.length).toBe(1);
      expect(html).not.toMatch(/<[^>]*\son\w+=/);
    });
  });

  test.each(HOSTILE)('%j is no formula of the bid nor of its build-up', words => {
    expect(formulas(bidWorkbook(planted(words)))).toBe(formulas(bidWorkbook(first)));
    expect(formulas(internalWorkbook(planted(words)))).toBe(formulas(internalWorkbook(first)));
  });

  test.each(HOSTILE)('%j reads back from the JSON as it was, and leads no field of a CSV file', words => {
    const json = JSON.stringify(evaluationJson(planted(words)));
    const again: unknown = JSON.parse(json);
    expect(JSON.stringify(again)).toBe(json);
    expect(again).toMatchObject({ title: words });
    for (const { text } of csvFiles(planted(words)))
      expect(text).not.toMatch(/(^|[,\n])"?[\s\p{Cf}]*[=+@\uff1d\uff0b\uff20]/u);
  });
});
