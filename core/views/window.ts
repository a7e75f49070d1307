import { summarise, type EstimateParts, type EstimateSummary, type Evaluation } from '../evaluation';
import type { Project } from '../project';
import { bottomChanges, bottomLine, unscreenedLine, type Bottom, type BottomAmounts } from './bottom';
import { budgetView } from './budget';
import { lineBases } from './bases';
import type { EstimateContext } from './context';
import { grantFindings } from './funding/grant-findings';
import type { Measures } from './measures';
import { printed } from './number-text';
import { openFindings, openSentence, type FoundOfGrant, type OpenFindings } from './open-findings';
import { ratesView } from './rates';
import { scheduleView, type EarlierPlan } from './schedule';
import { sinkingView } from './sinking';
import { shownMoney } from './shown-money';
import { stillMissing } from './still-missing';
import { vesselView } from './vessel';
import { workView } from './work';
import type { WindowRows } from './window-rows';

export interface WindowAnswer {
  readonly rows: WindowRows;
  readonly amounts: BottomAmounts;
}

/** The views of the window that are made after every edit. */
export const WINDOW_VIEWS = ['vessel', 'sinking', 'work', 'rates', 'schedule', 'budget'] as const;
export type WindowViewName = (typeof WINDOW_VIEWS)[number];
export type WindowHead = Omit<WindowRows, WindowViewName>;

/** What the window shows of one evaluation, made part by part: what is looked at first. */
export interface WindowParts {
  readonly head: WindowHead;
  readonly amounts: BottomAmounts;
  readonly view: <N extends WindowViewName>(name: N) => Pick<WindowRows, N>;
}

/** The parts of the window; undefined when the document has faults that leave nothing to work out. */
export function windowParts(
  project: Project,
  evaluation: Evaluation,
  measures: Measures,
  before: BottomAmounts | undefined,
  earlier?: EarlierPlan,
  ofGrant?: FoundOfGrant,
): WindowParts | undefined {
  const { estimate } = evaluation;
  if (estimate === undefined) return undefined;
  const context: EstimateContext = { evaluation, measures, parts: estimate, summary: summaryOf(estimate) };
  const money = shownMoney(context);
  const open = openFindings(evaluation, ofGrant);
  const bottom = bottomLine(context, money, open);
  const makers: { readonly [N in WindowViewName]: () => Pick<WindowRows, N> } = {
    vessel: () => ({ vessel: vesselView(context) }),
    sinking: () => ({ sinking: sinkingView(context) }),
    work: () => ({ work: workView(context, money, lineBases(context)) }),
    rates: () => ({ rates: ratesView(evaluation.project, evaluation.library, measures, evaluation.today) }),
    schedule: () => ({ schedule: scheduleView(context, earlier) }),
    budget: () => ({ budget: budgetView(context, money) }),
  };
  return {
    head: headOf(project, evaluation, estimate, { bottom, open, before }),
    amounts: bottom.amounts,
    view: name => makers[name](),
  };
}

function headOf(
  project: Project,
  evaluation: Evaluation,
  estimate: EstimateParts,
  { bottom, open, before }: { bottom: Bottom; open: OpenFindings; before: BottomAmounts | undefined },
): WindowHead {
  const moved = bottomChanges(before, bottom.amounts);
  const { findings } = open;
  const isCounted = findings.length > 0 && open.standing !== 'not known';
  return {
    scenario: evaluation.scenario.id,
    changes: moved.changes,
    changeWords: moved.words,
    isSample: project.sample,
    ship: project.vessel.name,
    scenarios: project.scenarios.map(one => ({ id: one.id, letter: '', title: one.title })),
    counts: {
      work: printed(String(estimate.items.length)),
      ...(isCounted ? { review: printed(String(findings.length)) } : {}),
    },
    bottom: bottom.cells,
    verdict: evaluation.upright?.verdict,
    findings,
    openSentence: openSentence(open),
    missing: stillMissing(evaluation),
  };
}

/** The head of a document just opened, before its upright screen: findings are counted when all of them are known. */
export function unscreenedHead(head: WindowHead): WindowHead {
  const { review: _review, ...counts } = head.counts;
  return { ...head, counts, bottom: unscreenedLine(head.bottom) };
}

/** Everything the window shows of one evaluation; undefined when the document has faults that leave nothing to work out. */
export function windowRows(
  project: Project,
  evaluation: Evaluation,
  measures: Measures,
  before: BottomAmounts | undefined,
  earlier?: EarlierPlan,
): WindowAnswer | undefined {
  const ofGrant = { findings: grantFindings(evaluation), isHeld: false };
  const parts = windowParts(project, evaluation, measures, before, earlier, ofGrant);
  if (parts === undefined) return undefined;
  const { head, amounts, view } = parts;
  const rows = {
    ...head,
    ...view('vessel'),
    ...view('sinking'),
    ...view('work'),
    ...view('rates'),
    ...view('schedule'),
    ...view('budget'),
  };
  return { rows, amounts };
}

/** The money of an estimate in figures, when there is any. */
export function summaryOf(parts: EstimateParts): EstimateSummary | undefined {
  return parts.money === undefined ? undefined : summarise({ ...parts, money: parts.money });
}
