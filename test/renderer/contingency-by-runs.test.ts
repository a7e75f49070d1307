import { readFileSync } from 'node:fs';
import { produce } from 'immer';
import { expect, test } from 'vitest';
import { evaluate, evaluatedWithRuns, type Evaluation } from '../../core/evaluation';
import { decisionAbout } from '../../core/papers';
import { readProject, type Project } from '../../core/project';
import type { BottomCell, Edit, OpenedRows, Row } from '../../core/views';
import { typedEdit } from '../../renderer/edits/edits';
import { plansOf } from '../../renderer/state/revisions';
import { EvaluationDesk } from '../../renderer/engine/evaluation-desk';
import { StudyDesk } from '../../renderer/engine/study-desk';
import type { StudyAnswers } from '../../renderer/engine/study-protocol';
import { edited, startHistory } from '../../renderer/state/history';

const TODAY = '2026-11-24';

function demo(): Project {
  const { project } = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8'));
  if (project === undefined) throw new Error('the example cannot be read');
  return produce(project, draft => {
    if (draft.risk !== undefined) draft.risk.trials = 400;
  });
}

/** The window's two desks on one document, as the window puts them to work. */
function desks() {
  const [desk, studies] = [new EvaluationDesk(), new StudyDesk()];
  const scenario = demo().scenarios[0]?.id ?? '';
  const about = { scenario, today: TODAY, measures: 'us', document: 'd' } as const;
  const quiet = { say: () => undefined, pause: () => Promise.resolve(true), now: () => 0 };
  return {
    scenario,
    funding: async (project: Project, run: Partial<StudyAnswers['risk']> = {}) => {
      const found = run.leaves === undefined ? {} : { found: run.leaves };
      const { findings } = await desk.evaluate({ ...about, project, view: 'funding', ...found }, quiet);
      const rows = desk.why?.opened('funding');
      if (rows === undefined) throw new Error('the funding is not shown');
      return { rows, codes: findings.map(one => one.code) };
    },
    /** What the review says of the trials, and of whether uncertainty was looked at. */
    review: async (project: Project, run: Partial<StudyAnswers['risk']> = {}) => {
      const found = run.leaves === undefined ? {} : { found: run.leaves };
      await desk.evaluate({ ...about, project, view: 'review', ...found }, quiet);
      const rows = desk.why?.opened('review');
      const lines = rows?.guides.flatMap(guide => guide.lines) ?? [];
      const told = rows?.practicesSentence
        .map(part => (typeof part === 'string' ? part : part.text))
        .join('')
        .replace(/^.*cannot be told\. /, '');
      return [told, lines.find(line => line.id === 'uncertainty')?.evidence[0]];
    },
    decision: async (project: Project) => {
      const ask = {
        ...about,
        number: 2,
        name: 'decision',
        project,
        revision: 1,
        plans: plansOf(project),
        runs: false,
      } as const;
      const answer = await studies.answer(ask, quiet);
      if (answer === undefined || !('county' in answer)) throw new Error('there is no decision');
      return answer;
    },
    runs: async (project: Project): Promise<StudyAnswers['risk']> => {
      const ask = {
        ...about,
        number: 1,
        name: 'risk',
        project,
        revision: 1,
        plans: plansOf(project),
        runs: true,
      } as const;
      const answer = await studies.answer(ask, quiet);
      if (answer === undefined || !('register' in answer)) throw new Error('the runs have no answer');
      return answer;
    },
  };
}

const contingencyRows = ({ terms }: NonNullable<OpenedRows['funding']>): readonly Row[] =>
  terms.find(table => table.id === 'contingency-terms')?.rows ?? [];

function editOf(rows: readonly Row[], id: string): Edit {
  const edit = rows.find(row => row.id === id)?.cells['value']?.edit;
  if (edit === undefined) throw new Error(`nothing to edit at ${id}`);
  return edit;
}

const dollarsOf = (cells: readonly BottomCell[], key: string) =>
  Number(cells.find(cell => cell.key === key)?.value.text.replace(/[$,]/g, ''));

function budgetOf({ estimate }: Evaluation): number {
  const cents = estimate?.money?.result.money(estimate.money.sums.budget)?.cents;
  if (cents === undefined) throw new Error('the budget is absent');
  return cents;
}

test('a confidence takes the place of the share, and the trials set the contingency to it', async () => {
  const { scenario, funding, runs } = desks();
  const byShare = demo();
  const before = contingencyRows((await funding(byShare)).rows);
  expect(before.map(row => row.id).slice(0, 2)).toEqual(['policy', 'share']);

  const history = edited(startHistory(byShare), typedEdit(editOf(before, 'policy'), scenario, 'confidence'));
  const { project } = history;
  expect(project.contingency).toEqual({ policy: 'confidence', confidence: '0.8' });
  const waiting = await funding(project);
  const chosen = contingencyRows(waiting.rows);
  expect(chosen.map(row => row.id).slice(0, 2)).toEqual(['policy', 'confidence']);
  expect(waiting.codes).toContain('risk/contingency-not-simulated');

  const run = await runs(project);
  const after = await funding(project, run);
  expect(after.codes).not.toContain('risk/contingency-not-simulated');
  // What 80 in 100 runs stay within is the budget: the plan and the contingency that they set.
  const { simulated } = run.leaves ?? {};
  if (simulated === undefined) throw new Error('the runs set no contingency');
  const options = { today: project.statusDate ?? TODAY, seed: 1, scenario, upright: false };
  const budget = budgetOf(evaluate(project, { ...options, simulated }));
  expect(Math.round(budget / 100)).toBe(dollarsOf(run.found?.bottom ?? [], 'p80'));
  // A paper runs the trials itself, and comes to the same.
  expect(budgetOf(evaluatedWithRuns(project, options))).toBe(budget);

  const other = edited(history, typedEdit(editOf(chosen, 'confidence'), scenario, '0.9')).project;
  expect(other.contingency.confidence).toBe('0.9');
  expect((await funding(other, run)).codes).toContain('risk/contingency-not-simulated');
}, 120_000);

test('the quality review takes in the trials of this plan, by share and by confidence, and not those of another', async () => {
  const { scenario, funding, runs, review } = desks();
  const byShare = demo();
  expect(await review(byShare)).toEqual([
    'No trials were looked at: they are run under Risk.',
    'No simulation was run.',
  ]);
  const looked = 'The trials run under Risk were looked at.';
  const run = await runs(byShare);
  const [told, evidence] = await review(byShare, run);
  expect(told).toBe(looked);
  const { found } = run.leaves?.trials ?? {};
  expect(found?.planPercentile).toBeGreaterThan(0);
  expect(evidence).not.toBe('No simulation was run.');
  expect(evidence).toContain(String(Math.round(found?.planPercentile ?? 0)));

  const { rows } = await funding(byShare, run);
  const edit = editOf(contingencyRows(rows), 'policy');
  const byRuns = edited(startHistory(byShare), typedEdit(edit, scenario, 'confidence')).project;
  const earlier = 'The trials run under Risk were of an earlier plan and are not looked at.';
  expect(await review(byRuns, run)).toEqual([earlier, 'No simulation was run.']);
  expect((await review(byRuns, await desks().runs(byRuns)))[0]).toBe(looked);
}, 120_000);

test('a share chosen again leaves no confidence beside it', async () => {
  const { scenario, funding } = desks();
  const byRuns = produce(demo(), draft => {
    draft.contingency = { policy: 'confidence', confidence: '0.7' };
  });
  const edit = editOf(contingencyRows((await funding(byRuns)).rows), 'policy');
  const { project } = edited(startHistory(byRuns), typedEdit(edit, scenario, 'percentage'));
  expect(project.contingency).toEqual({ policy: 'percentage' });
  const rows = contingencyRows((await funding(project)).rows);
  expect(rows.map(row => row.id).slice(0, 2)).toEqual(['policy', 'share']);
}, 60_000);

test('the decision asks for the budget that the trials set, as the bottom line and the papers do', async () => {
  const { scenario, runs, decision } = desks();
  const project = produce(demo(), draft => {
    draft.contingency = { policy: 'confidence', confidence: '0.8' };
    draft.scenarios = draft.scenarios.slice(0, 1);
  });
  await runs(project);
  const { figures, county } = await decision(project);
  const options = { today: project.statusDate ?? TODAY, seed: 1, scenario };
  const paper = evaluatedWithRuns(project, options);
  const shown = figures.rows.find(row => row.id === 'budget')?.cells['value']?.text;
  expect(shown).toBe(`$${Math.round(budgetOf(paper) / 100).toLocaleString('en-US')}`);
  const printed = decisionAbout(paper).county;
  expect(printed.of).toBe('own share');
  expect(county.rows.map(row => row.cells['amount']?.text)).toEqual(
    printed.fiscalYears.map(({ amount }) => Math.round(amount / 100).toLocaleString('en-US')),
  );
}, 120_000);
