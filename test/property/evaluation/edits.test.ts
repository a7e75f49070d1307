import { readFileSync } from 'node:fs';
import { produce, type Draft } from 'immer';
import { expect, test, vi } from 'vitest';
import { randomStream } from '../../../core/base';
import type { WorkSheet } from '../../../core/estimate';
import { shippedLibrary, type Evaluation, type summarise } from '../../../core/evaluation';
import { readProject, type Project } from '../../../core/project';
import type { ScheduleResult } from '../../../core/scheduling';
import type { Step } from '../../../core/sheet';

const DEMO = readFileSync('demo/wrenfield.reef.json', 'utf8');
const OPTIONS = { today: '2026-11-24', seed: 1, schedules: 8, upright: false };

type Edit = (project: Draft<Project>, draw: () => number) => void;

const figure = (value: string, unit: string) => ({
  value,
  unit,
  basis: 'quoted' as const,
  source: 'Entered in the test',
  year: 2026,
});
const changeOf = (project: Draft<Project>, item: string) => {
  const found = project.items.find(row => row.item === item);
  if (found !== undefined) return found;
  const made: Draft<Project>['items'][number] = { item, note: 'Entered in the test' };
  project.items.push(made);
  return made;
};

/** An item of the project's own, as another item of the library is. */
const ownItem = (project: Draft<Project>, draw: () => number) => {
  const { items } = shippedLibrary();
  const plain = items.filter(item => item.disposes === undefined && item.span === undefined);
  const like = plain[Math.floor(draw() * plain.length)];
  if (like === undefined) throw new Error('the library has no items');
  const id = `${like.id}-again-${project.ownItems.length}`;
  project.ownItems.push({ ...structuredClone(like), id, title: `${like.title}, once more` });
};
const someOwn = (project: Draft<Project>, draw: () => number) =>
  project.ownItems[Math.floor(draw() * project.ownItems.length)];

/** Edits of every kind that the loop keeps something of: prices, quantities, durations, work, ship, calendar, options. */
const EDITS: readonly Edit[] = [
  (project, draw) =>
    void (project.vessel.lightship = figure(String(3000 + Math.round(draw() * 900)), 'long-ton')),
  (project, draw) =>
    void project.rates.overrides.push({
      at: 'equipment/forklift/rate',
      figure: figure((300 + draw() * 99).toFixed(2), 'USD/work-day'),
    }),
  (project, draw) =>
    void (changeOf(project, 'pcb-cable-removal').duration = figure(
      String(3 + Math.floor(draw() * 20)),
      'work-day',
    )),
  (project, draw) => void (changeOf(project, 'asbestos-notice').include = draw() < 0.5),
  (project, draw) => void (project.calendars.start = `2027-0${1 + Math.floor(draw() * 8)}-15`),
  (project, draw) =>
    void (project.options['shift-pattern'] = draw() < 0.5 ? 'one-shift-six-days' : 'two-shifts-five-days'),
  (project, draw) => void (project.contingency.share = figure((draw() * 0.2).toFixed(3), '1')),
  (project, draw) => void (project.vessel.built = 1955 + Math.floor(draw() * 30)),
  project => {
    for (const quote of project.quotes) quote.chosen = !quote.chosen;
  },
  ownItem,
  (project, draw) => {
    const own = someOwn(project, draw);
    if (own !== undefined) own.feeFixed = figure((draw() * 9000).toFixed(2), 'USD');
  },
  (project, draw) => {
    const own = someOwn(project, draw);
    if (own?.hoursPerUnit !== undefined) own.hoursPerUnit.value = (draw() * 3).toFixed(2);
  },
  (project, draw) =>
    void (changeOf(project, 'pcb-cable-removal').quantity = figure((draw() * 900).toFixed(1), 'm')),
  (project, draw) => {
    const result = project.survey.laboratory[0];
    if (result !== undefined && draw() < 0.5) project.survey.laboratory.splice(0, 1);
  },
  project => void project.rates.overrides.pop(),
  project => void project.items.pop(),
];

const columnsOf = ({ result }: Pick<WorkSheet, 'result'>, placed: readonly Step[]): unknown[] =>
  placed.map(step => result.column(step));

/** All that an evaluation says, cell by cell; the summary is read by the modules that evaluated it. */
function said(evaluation: Evaluation, summariser: typeof summarise): unknown {
  const { estimate, findings } = evaluation;
  return {
    findings,
    schedule: estimate?.schedule,
    problem: estimate?.problem,
    items: estimate?.items,
    relationships: estimate?.relationships,
    unmetGoals: estimate?.unmetGoals,
    generator: estimate?.generator,
    quoted: estimate?.quoted,
    summary: estimate?.money && summariser({ ...estimate, money: estimate.money }),
    figures: [estimate?.work, estimate?.money].map(one =>
      one?.sheet.tables.map(({ placed }) => columnsOf(one, placed)),
    ),
    sums:
      estimate?.money &&
      Object.values<Step>({ ...estimate.money.sums }).map(step => estimate.money?.result.at(step)),
  };
}

/** Evaluates with nothing kept: every module anew. */
async function anew(project: Project, scenario: string): Promise<unknown> {
  vi.resetModules();
  const { evaluate, summarise: summariser } = await import('../../../core/evaluation');
  return said(evaluate(structuredClone(project), { ...OPTIONS, scenario }), summariser);
}

test('a project edited step by step says in every cell what it says when it is evaluated for the first time', async () => {
  const { evaluate, summarise: summariser } = await import('../../../core/evaluation');
  const draw = randomStream(7, 'edits');
  let project = readProject(DEMO).project;
  let compared = 0;
  let priced = 0;
  let held: ScheduleResult | undefined;
  for (let step = 0; step < 60; step++) {
    const edit = EDITS[Math.floor(draw() * EDITS.length)];
    if (project === undefined || edit === undefined) throw new Error('no project, or no edit');
    project = produce(project, draft => edit(draft, draw));
    const scenario = project.scenarios[Math.floor(draw() * project.scenarios.length)]?.id ?? '';
    if (held !== undefined) {
      const shown = evaluate(project, { ...OPTIONS, scenario, held }).estimate;
      if (shown?.datesHeld === true) expect(shown.schedule).toBe(held);
    }
    const edited = evaluate(project, { ...OPTIONS, scenario });
    held = edited.estimate?.schedule ?? held;
    if (step % 5 !== 4) continue;
    compared += 1;
    expect(said(edited, summariser), `after ${step + 1} edits`).toEqual(await anew(project, scenario));
    if (edited.estimate?.money !== undefined) priced += 1;
  }
  expect(compared).toBe(12);
  expect(priced).toBeGreaterThan(6);
}, 300_000);
