import { describe, expect, test } from 'vitest';
import { bidView, grantView, summarise, type Evaluation } from '../../../core/evaluation';
import {
  calendarFile,
  csvFiles,
  decisionAbout,
  estimateWorkbook,
  internalWorkbook,
  reportHtml,
  type PaperWorkbook,
} from '../../../core/papers';
import { compareScenarios } from '../../../core/scenario';
import { demoProject, estimated, evaluated } from '../evaluation/demo';
import { bareProject, withoutEstimate, withoutTotal, words } from './odd-documents';

const bare = bareProject();
const bareOnes = bare.scenarios.map(scenario => evaluated(bare, scenario.id));
const [plain] = bareOnes;
if (plain === undefined) throw new Error('a new project has a scenario');
const whole = evaluated(demoProject());
const untold = withoutTotal();
const circle = withoutEstimate();
/** The example as another scenario. */
const beside: Evaluation = {
  ...whole,
  letter: 'B',
  scenario: { ...whole.scenario, id: 'other', title: 'Other' },
};

/** The texts of a sheet, row by row. */
function textsOf(paper: PaperWorkbook | undefined, name: string): string[] {
  const sheet = paper?.sheets.find(one => one.name === name);
  if (sheet === undefined) throw new Error(`there is no sheet ${name}`);
  return sheet.cells.flatMap(({ content }) => (content.kind === 'text' ? [content.text] : []));
}

describe('papers of a project as it is begun', () => {
  const html = reportHtml(plain, compareScenarios(bareOnes)) ?? '';
  const paper = estimateWorkbook(plain, compareScenarios(bareOnes));

  test('are not called an invented example', () => {
    expect(words(html)).not.toContain('Invented example');
    expect(textsOf(paper, 'Cover').join(' ')).not.toContain('Invented example');
    expect(calendarFile(plain)).toContain('SUMMARY:');
    expect(calendarFile(plain)).not.toContain('Invented example');
  });

  test('say who sets the weights, when fiscal years start by custom, and what nobody has looked into', () => {
    const text = words(html);
    expect(text).toContain('these are usual ones, by judgement');
    expect(text).toContain(
      'Fiscal years start in October, as is usual; the funding section may say otherwise',
    );
    expect(decisionAbout(plain).notStudied.join(' ')).toMatch(
      /no laboratory result.*none was measured.*no quote.*not all that the guidance asks for.*none is named.*no source of funding/,
    );
  });

  test('have no federal money to lose and no deadline to miss', () => {
    const { troubles, county } = decisionAbout(plain);
    expect(troubles.map(({ happens }) => happens).join(' ')).not.toContain('deadline');
    expect(county.of).toBe('spending');
    expect(county).not.toHaveProperty('peakGap');
  });

  test('without a contingency by share or confidence say by which rule it would go', () => {
    const { share: _share, ...contingency } = bare.contingency;
    const one = evaluated({ ...bare, contingency });
    const text = words(reportHtml(one) ?? '');
    expect(text).toContain('No contingency is chosen yet.');
    expect(decisionAbout(one).budget).toBeUndefined();
    expect(text).toMatch(/is asked to approve scenario A, as planned ?\./);
  });

  test('there is no grant file without a grant', () => {
    expect(grantView(plain).book).toBeUndefined();
    expect(reportHtml(plain, undefined, 'grant')).toBeUndefined();
  });
});

describe('papers of an estimate without a total', () => {
  const text = words(reportHtml(untold, compareScenarios([untold, beside])) ?? '');
  const paper = estimateWorkbook(untold, compareScenarios([untold, beside]));

  test('say that the figure is absent and never show it as nothing', () => {
    expect(summarise(estimated(untold)).total).toBeUndefined();
    expect(text).toContain('The share nobody has checked is not known, because a line is absent.');
    expect(text).toContain('Spending by fiscal year is not known, because a line is absent.');
    expect(text).toContain('What the reef costs after the sinking is not known.');
    expect(text).not.toContain('$0.00');
  });

  test('have no months, no bridge and no chart of months', () => {
    const names = paper?.sheets.map(({ name }) => name);
    expect(names).not.toContain('Cash by month');
    expect(names).not.toContain('Labour and crews');
    expect(paper?.sheets.find(({ name }) => name === 'Charts')?.charts).toHaveLength(1);
    expect(textsOf(paper, 'Comparison').filter(one => one.startsWith('From '))).toEqual([]);
    expect(csvFiles(untold).map(({ name }) => name)).toEqual(['lines', 'activities', 'inputs']);
  });

  test('the workbook’s checks ask for a review, and no formula reads a change of the total', () => {
    const checks = paper?.sheets.find(({ name }) => name === 'Checks')?.cells ?? [];
    const standings = checks.flatMap(({ column, content }) =>
      column === 3 && content.kind === 'formula' ? [content.result] : [],
    );
    expect(standings.length).toBeGreaterThan(3);
    expect(new Set(standings)).toEqual(new Set(['REVIEW']));
    expect(paper?.names.map(({ name }) => name)).not.toContain('changed_since');
    const formulas = (paper?.sheets ?? []).flatMap(({ cells }) =>
      cells.flatMap(({ content }) => (content.kind === 'formula' ? [content.formula] : [])),
    );
    expect(formulas.filter(formula => formula.includes('changed_since'))).toEqual([]);
  });

  test('the rows of contract work in the file of lines have no amount, not a zero; the owner’s own have theirs', () => {
    const lines =
      csvFiles(untold)
        .find(({ name }) => name === 'lines')
        ?.text.trim()
        .split(/\r?\n/) ?? [];
    expect(lines[0]).toMatch(/"?total, USD"?$/);
    expect(lines.length).toBeGreaterThan(200);
    const withAmount = lines.slice(1).filter(line => !line.endsWith(','));
    expect(withAmount.filter(line => !/,owner,/.test(line))).toEqual([]);
    const own = untold.estimate?.items.filter(item => !item.contract) ?? [];
    expect(withAmount).toHaveLength(own.length);
  });

  test('a bid of it is not written, and the scenario cannot be recommended', () => {
    expect(bidView(untold).sheet).toBeUndefined();
    expect(reportHtml(untold, undefined, 'bid')).toBeUndefined();
    expect(internalWorkbook(untold)).toBeUndefined();
    const decision = decisionAbout(untold);
    expect(decision.recommended).toBeUndefined();
    expect(decision.total).toBeUndefined();
    expect(decision.afterSinking).toMatchObject({ perYear: undefined });
    expect(decision.request).toMatch(/cannot decide on scenario A, .* yet: it has no total$/);
    const alone = words(reportHtml(untold) ?? '');
    expect(alone).toContain('No scenario is recommended');
    expect(alone).not.toContain('asked to approve');
    expect(text).toContain('is asked to choose scenario B, other, rather than scenario A.');
  });
});

describe('papers of a document that cannot be estimated', () => {
  test('are not written', () => {
    expect(circle.estimate).toBeUndefined();
    expect(reportHtml(circle)).toBeUndefined();
    expect(estimateWorkbook(circle)).toBeUndefined();
    expect(csvFiles(circle)).toEqual([]);
  });

  test('the decision about it asks for nothing and knows no day and no amount', () => {
    const decision = decisionAbout(circle);
    expect(decision).toMatchObject({
      isPermittable: false,
      unmetGoals: [],
      total: undefined,
      sunkOn: undefined,
      finish: undefined,
      boardDates: [],
      county: { of: 'not known', fiscalYears: [] },
      afterSinking: { years: 0, perYear: undefined },
    });
    expect(decision.recommended).toBeUndefined();
  });

  test('beside one that can be estimated it stands as absent, and the other is the only one to choose', () => {
    const comparison = compareScenarios([whole, { ...circle, letter: 'B', scenario: beside.scenario }]);
    const decision = decisionAbout(whole, comparison);
    expect(decision.recommended?.reasons[0]).toBe('It is the only scenario that may be carried out.');
    const row = estimateWorkbook(whole, comparison)
      ?.sheets.find(({ name }) => name === 'Comparison')
      ?.cells.filter(
        cell => cell.content.kind === 'text' && cell.content.text.startsWith('B: Other'),
      )[0]?.row;
    expect(row).toBeDefined();
    expect(words(reportHtml(whole, comparison) ?? '')).toContain(
      'Scenario B is not ranked: it has no total: see its findings.',
    );
  });
});
