import { describe, expect, test } from 'vitest';
import { estimateWorkbook, partsOf } from '../../../core/papers';
import { compareScenarios } from '../../../core/scenario';
import { demoProject, evaluated } from '../evaluation/demo';
import { HOSTILE } from './hostile';

const project = demoProject();
const evaluations = project.scenarios.map(scenario => evaluated(project, scenario.id));
const [first] = evaluations;
if (first === undefined) throw new Error('the example has scenarios');
const paper = estimateWorkbook(first, compareScenarios(evaluations));
if (paper === undefined) throw new Error('the example has an estimate');
const cells = paper.sheets.flatMap(sheet => sheet.cells.map(cell => ({ sheet, cell })));

describe('the workbook as plain data', () => {
  test('has what a reviewer looks for, under names that a workbook can hold', () => {
    const names = paper.sheets.map(sheet => sheet.name);
    for (const name of [
      ...['Cover', 'Read me', 'Checks', 'Comparison', 'Roll-up', 'Cash by month', 'Charts', 'Schedule'],
      ...['Time chart', 'Lines', 'Crews', 'Waste by stream', 'Assumptions', 'Sources', 'Basis of estimate'],
      ...['Cautions', 'Findings', 'Change log', 'Glossary'],
    ])
      expect(names).toContain(name);
    expect(new Set(names.map(name => name.toLowerCase())).size).toBe(names.length);
    expect(names.filter(name => name.length > 31 || /[:\\/?*[\]']/.test(name))).toEqual([]);
  });

  test('gives large sheets in parts of whole rows from the top, the same cells each time; a copy keeps its own', () => {
    const lines = paper.sheets.find(({ name }) => name === 'Inputs');
    if (lines === undefined) throw new Error('the workbook has inputs');
    const parts = partsOf(lines).map(part => part());
    expect(parts.length).toBeGreaterThan(3);
    expect(parts.flat()).toEqual(lines.cells);
    parts.slice(1).forEach((part, i) => {
      const above = Math.max(...(parts[i] ?? []).map(({ row }) => row));
      expect(Math.min(...part.map(({ row }) => row))).toBeGreaterThan(above);
    });
    expect(partsOf({ ...lines, cells: [] }).flatMap(part => part())).toEqual([]);
  });

  test('no cell is written twice', () => {
    for (const sheet of paper.sheets) {
      const places = sheet.cells.map(cell => `${cell.row} ${cell.column}`);
      expect(new Set(places).size, sheet.name).toBe(places.length);
    }
  });

  test('every total in bold is a formula or says that it is absent', () => {
    const typed = cells.filter(
      ({ cell }) =>
        cell.style === 'total' && (cell.content.kind === 'money' || cell.content.kind === 'number'),
    );
    expect(typed).toEqual([]);
  });

  test('without a contingency there is no budget to be checked, and the other checks hold', () => {
    const evaluation = evaluated({ ...project, contingency: { policy: 'percentage' } }, first.scenario.id);
    const sheets = estimateWorkbook(evaluation)?.sheets ?? [];
    const checks = sheets.find(({ name }) => name === 'Checks')?.cells ?? [];
    const shown = checks.flatMap(({ row, column, content }) =>
      column === 3 && content.kind === 'formula' ? [[row, content.result]] : [],
    );
    const told = checks.flatMap(({ content }) => (content.kind === 'text' ? [content.text] : []));
    expect(told).not.toContain('Total and contingency are the budget');
    expect(shown.length).toBeGreaterThan(5);
    expect(shown.filter(([, result]) => result !== 'OK')).toEqual([]);
    const master = sheets[0]?.cells.find(({ row, column }) => row === 5 && column === 2)?.content;
    expect(master).toMatchObject({ result: 'OK' });
  });

  test('the master check takes in lines, stages, labour, bridges, forms and months, each nothing as handed out', () => {
    const checks = paper.sheets.find(({ name }) => name === 'Checks')?.cells ?? [];
    const formulas = checks.flatMap(({ column, content }) =>
      column === 2 && content.kind === 'formula' ? [content] : [],
    );
    const all = formulas.map(({ formula }) => formula).join(' ');
    for (const sheet of [
      "'Labour and crews'!",
      'Comparison!',
      "'Funding forms'!",
      "'Cash by month'!",
      "'Roll-up'!",
    ])
      expect(all, sheet).toContain(sheet);
    expect(formulas.map(({ result }) => result)).toEqual(formulas.map(() => 0));
    const standings = checks.filter(({ column, content }) => column === 3 && content.kind === 'formula');
    const master = paper.sheets[0]?.cells.find(({ row, column }) => row === 5 && column === 2)?.content;
    expect(master).toMatchObject({
      formula: `IF(COUNTIF(Checks!$C$3:$C$${standings.length + 2},"OK")=ROWS(Checks!$C$3:$C$${standings.length + 2}),"OK","REVIEW")`,
      result: 'OK',
    });
  });

  test('no unit reads as a rate for one', () => {
    const units = cells.filter(
      ({ cell }) => cell.content.kind === 'text' && /^[A-Za-z]+\/1$/.test(cell.content.text),
    );
    expect(units.map(({ sheet, cell }) => `${sheet.name} ${cell.row}`)).toEqual([]);
  });

  test('formulas hold no number but 0, 1, 2 of months and rounding digits, and no volatile function', () => {
    const formulas = cells.flatMap(({ cell }) =>
      cell.content.kind === 'formula' ? [cell.content.formula] : [],
    );
    const literals = formulas
      .map(formula =>
        formula
          .replace(/"[^"]*"/g, '')
          .replace(/'[^']*'!/g, '')
          .replace(/ROUND(UP)?\(((?:[^()]|\([^()]*\))*),-?\d+\)/g, '($2)')
          .replace(/,-?\d+\)/g, ')'),
      )
      .filter(formula => /(?<![\w$.])(?!0(?![\d.])|1(?![\d.]))\d+(\.\d+)?(?![\w:.])/.test(formula));
    expect([...new Set(literals)].slice(0, 5)).toEqual([]);
    expect(formulas.filter(formula => /NOW|TODAY|RAND|OFFSET|INDIRECT|\[/.test(formula))).toEqual([]);
  });

  test.each(HOSTILE)('a ship, a scenario and a county named %j stay text', hostile => {
    const planted = estimateWorkbook({
      ...first,
      scenario: { ...first.scenario, title: hostile },
      project: { ...first.project, title: hostile, vessel: { ...first.project.vessel, name: hostile } },
    });
    const formulas = (book: ReturnType<typeof estimateWorkbook>) =>
      book?.sheets.flatMap(sheet => sheet.cells).filter(cell => cell.content.kind === 'formula').length;
    const alone = estimateWorkbook(first);
    expect(formulas(planted)).toBe(formulas(alone));
  });
});
