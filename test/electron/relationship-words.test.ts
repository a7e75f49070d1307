import { describe, expect, test } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { calendarFile, csvFiles, estimateWorkbook, reportHtml } from '../../core/papers';
import { compareScenarios } from '../../core/scenario';
import { WhyDesk, windowRows, type OpenedName } from '../../core/views';
import type { Call } from '../../electron/cli/command';
import { COMMANDS } from '../../electron/cli/commands';
import { commandHelp, findingLines } from '../../electron/cli/words';
import { demoProject } from '../core/evaluation/demo';

/** The letters that code and JSON have for kinds of relationships. */
const CODES = /(?<![A-Za-z0-9-])(?:FS|SS|FF|SF)(?![A-Za-z0-9-])/;

const project = demoProject();
const evaluation = evaluate(project, { today: '2026-11-24', seed: 1 });

/** Every text of a value, however deep it stands. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(textsIn);
}
const withCodes = (value: unknown) => textsIn(value).filter(text => CODES.test(text));

test('the letters are found where they stand, and nowhere else', () => {
  expect(['A FS B', 'kind: SS+3', 'FF'].every(text => CODES.test(text))).toBe(true);
  expect(['SF-424A', 'OFF', 'SSS', 'after A finishes'].some(text => CODES.test(text))).toBe(false);
});

describe('relationships are words', () => {
  test('in the views and their derivations', () => {
    const desk = new WhyDesk(evaluation, 'us');
    const opened = [
      'materials',
      'funding',
      'bid',
      'review',
      'scenarios',
    ] as const satisfies readonly OpenedName[];
    const rows = windowRows(project, evaluation, 'us', undefined)?.rows;
    expect(textsIn(rows).length).toBeGreaterThan(2000);
    expect(withCodes(rows)).toEqual([]);
    for (const name of opened) expect(withCodes(desk.opened(name)), name).toEqual([]);
    const activities = evaluation.estimate?.schedule.activities ?? [];
    for (const { id } of activities) expect(withCodes(desk.answer(`activity:${id}`)), id).toEqual([]);
  });
  test('in the papers', () => {
    const comparison = compareScenarios([evaluation]);
    const papers = {
      report: (reportHtml(evaluation, comparison) ?? '').replaceAll(/<style[^]*?<\/style>/g, ''),
      calendar: calendarFile(evaluation),
      csv: csvFiles(evaluation),
      workbook: estimateWorkbook(evaluation, comparison),
    };
    for (const [name, paper] of Object.entries(papers)) {
      expect(textsIn(paper).join('').length, name).toBeGreaterThan(1000);
      expect(
        withCodes(paper).map(text => text.slice(0, 200)),
        name,
      ).toEqual([]);
    }
  });
  test('on the command line: what commands print, their help and the findings', async () => {
    expect(withCodes(COMMANDS.map(commandHelp))).toEqual([]);
    expect(withCodes(findingLines(evaluation.findings))).toEqual([]);
    const call: Call = {
      files: ['demo/wrenfield.reef.json'],
      option: name => (name === 'baseline' ? 'demo/wrenfield.reef.json' : undefined),
      flag: () => false,
      today: '2026-11-24',
      machineDate: '2026-11-24',
    };
    for (const name of ['estimate', 'schedule', 'check', 'review', 'funding']) {
      const command = COMMANDS.find(one => one.name === name);
      const { lines = [] } = (await command?.run(call)) ?? {};
      expect(lines.length, name).toBeGreaterThan(5);
      expect(withCodes(lines), name).toEqual([]);
    }
  });
});
