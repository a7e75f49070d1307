import { summarise, type EstimateParts, type EstimateSummary, type Evaluation } from '../evaluation';
import type { Project } from '../project';
import { bottomChanges, bottomLine, type BottomAmounts } from './bottom';
import { budgetView } from './budget';
import { lineBases } from './bases';
import type { EstimateContext } from './context';
import type { Measures } from './measures';
import { ratesView } from './rates';
import { scheduleView, type EarlierPlan } from './schedule';
import { sinkingView } from './sinking';
import { shownMoney } from './shown-money';
import { vesselView } from './vessel';
import { workView } from './work';
import type { FindingRow } from './rows';
import type { WindowRows } from './window-rows';

export interface WindowAnswer {
  readonly rows: WindowRows;
  readonly amounts: BottomAmounts;
}

/** Everything the window shows of one evaluation; undefined when the document has faults that leave nothing to work out. */
export function windowRows(
  project: Project,
  evaluation: Evaluation,
  measures: Measures,
  before: BottomAmounts | undefined,
  earlier?: EarlierPlan,
): WindowAnswer | undefined {
  const { estimate } = evaluation;
  if (estimate === undefined) return undefined;
  const context: EstimateContext = { evaluation, measures, parts: estimate, summary: summaryOf(estimate) };
  const money = shownMoney(context);
  const bases = lineBases(context);
  const bottom = bottomLine(context, money);
  const moved = bottomChanges(before, bottom.amounts);
  const findings = findingRows(evaluation);
  const rows: WindowRows = {
    scenario: evaluation.scenario.id,
    changes: moved.changes,
    changeWords: moved.words,
    isSample: project.sample,
    ship: project.vessel.name,
    scenarios: project.scenarios.map(one => ({ id: one.id, letter: '', title: one.title })),
    counts: {
      work: String(estimate.items.length),
      ...(findings.length === 0 ? {} : { review: String(findings.length) }),
    },
    bottom: bottom.cells,
    verdict: evaluation.upright?.verdict,
    sinking: sinkingView(context),
    findings,
    vessel: vesselView(context),
    work: workView(context, money, bases),
    rates: ratesView(evaluation.project, evaluation.library, measures),
    schedule: scheduleView(context, earlier),
    budget: budgetView(context, money),
  };
  return { rows, amounts: bottom.amounts };
}

/** The money of an estimate in figures, when there is any. */
export function summaryOf(parts: EstimateParts): EstimateSummary | undefined {
  return parts.money === undefined ? undefined : summarise({ ...parts, money: parts.money });
}

const HOMES: readonly (readonly [string, string])[] = [
  ['/vessel', 'vessel'],
  ['/site', 'vessel'],
  ['/items', 'work'],
  ['/options', 'work'],
  ['/survey', 'materials'],
  ['/funding', 'funding'],
  ['/bid', 'bid'],
  ['/receivedBids', 'bid'],
  ['/contingency', 'funding'],
  ['templates/materials', 'materials'],
  ['/quotes', 'work'],
  ['/rates', 'rates'],
  ['/calendars', 'schedule'],
  ['/schedule', 'schedule'],
];

/** The view where a place of the document is put right. */
export function homeOf(place: string): string {
  return HOMES.find(([start]) => place.startsWith(start))?.[1] ?? 'review';
}

/** Findings with the view where each is put right, those that withhold a figure first. */
export function findingRows(evaluation: Evaluation): readonly FindingRow[] {
  const order = { blocks: 0, warns: 1, notes: 2 } as const;
  return evaluation.findings
    .map(finding => ({ finding, view: homeOf(finding.place) }))
    .toSorted((a, b) => order[a.finding.weight] - order[b.finding.weight]);
}
