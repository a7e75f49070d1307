import { describe, expect, it } from 'vitest';
import { windowRows } from '../../../core/views';
import { ratesView } from '../../../core/views/rates';
import { shippedLibrary } from '../../../core/evaluation';
import { COPY_READERS, type Project } from '../../../core/project';
import type { Sentence, TableRows } from '../../../core/views/rows';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const evaluation = evaluated(project);
const plain = (sentence: Sentence) =>
  sentence.map(part => (typeof part === 'string' ? part : part.text)).join('');

describe('the sentence of a work item', () => {
  const work = windowRows(project, evaluation, 'us', undefined)?.rows.work;
  const lines = new Map(work?.stages.flatMap(stage => stage.lines).map(line => [line.id, line.says]));
  const { items, input } = estimated(evaluation);
  const said = (id: string) => plain(lines.get(id) ?? []);

  it('names the conditions that its hours are multiplied for, and the hours to set up', () => {
    const factors = new Map(input.library.rateBook.conditions.map(one => [one.id, one]));
    const hard = items.filter(
      one => one.conditions.length === 1 && one.hoursPerUnit !== undefined && said(one.id) !== '',
    );
    expect(hard.length).toBeGreaterThan(0);
    for (const one of hard) {
      const condition = factors.get(one.conditions[0] ?? '');
      const isHarder = Number(condition?.factor.value) !== 1;
      expect([
        one.id,
        said(one.id).includes(
          `times ${Number(condition?.factor.value)} ${condition?.title.toLowerCase() ?? ''}`,
        ),
      ]).toEqual([one.id, isHarder]);
      const setup = Number(one.setupHours?.value ?? 0);
      expect([one.id, said(one.id).includes(' hours to set up')]).toEqual([one.id, setup > 0]);
    }
  });

  it('says nothing of conditions where there are none', () => {
    const easy = items.filter(one => one.conditions.length === 0);
    expect(easy.length).toBeGreaterThan(0);
    expect(easy.map(one => said(one.id)).filter(words => /, times [\d.]+ /.test(words))).toEqual([]);
  });
});

describe('two wages of one trade', () => {
  const library = shippedLibrary();
  const [trade] = library.rateBook.trades;
  if (trade === undefined) throw new Error('no trades');
  const at = `trades/${trade.id}/wage`;
  const figure = (value: string) => ({ ...trade.wage, value, source: 'Invented for this test' });
  const tables = (rates: Partial<Project['rates']>) =>
    ratesView(
      { ...project, rates: { ...project.rates, wages: [], overrides: [], ...rates } },
      library,
      'us',
      '2026-11-24',
    ).tables;
  const table = (of: readonly TableRows[], id: string) => of.find(one => one.id === id);
  const wageShown = (of: readonly TableRows[]) =>
    table(of, 'trades')?.rows.find(row => row.id === at)?.cells['value']?.text;

  it('are shown under Trades as the one that counts', () => {
    const wages = [{ trade: trade.id, figure: figure('77') }];
    expect(wageShown(tables({ wages }))).toBe('77');
    expect(wageShown(tables({ wages, overrides: [{ at, figure: figure('88') }] }))).toBe('88');
  });

  it('are told in both tables, with the trades that have both', () => {
    const both = tables({
      wages: [{ trade: trade.id, figure: figure('77') }],
      overrides: [{ at, figure: figure('88') }],
    });
    expect(plain(table(both, 'trades')?.note ?? [])).toContain('One changed here counts instead of it.');
    expect(plain(table(both, 'wages')?.note ?? [])).toBe(
      `A wage given here counts instead of the rate book. A wage changed under Trades counts instead of both. That is so for ${trade.title.toLowerCase()}.`,
    );
  });
});

it('where several quotes may take another work item, it is said which one does', () => {
  const hintOf = (quotes: Project['quotes']) => {
    const of = { ...project, quotes };
    return windowRows(of, evaluated(of), 'us', undefined)?.rows.work.coverHint;
  };
  expect(project.quotes.length).toBeGreaterThan(1);
  expect(hintOf(project.quotes)).toContain('the quote chosen in the table above');
  expect(hintOf(project.quotes.slice(0, 1))).toBe('');
});

it('who makes a copy is told that an estimate can be made from it', () => {
  for (const { keeps } of COPY_READERS) expect(keeps).toContain('sees an estimate');
});
