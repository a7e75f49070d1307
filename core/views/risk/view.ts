import type { Finding } from '../../base';
import type { Evaluation, PreparedEstimate, RiskView } from '../../evaluation';
import { riskSchema } from '../../project';
import { findingWords } from '../finding-words';
import { printed } from '../number-text';
import { datesSaid } from '../dates-said';
import { dateWords } from '../schedule-axis';
import type { BottomCell, Sentence, Shown, TableRows } from '../rows';
import { Derivations } from '../simulated';
import { summaryOf } from '../window';
import { contingencyTable, surveyTable } from './contingency';
import { costCurve, finishCurve } from './curves';
import { frontierPicture } from './frontier';
import { runOrigin, runSteps } from './origin';
import { libraryEvents, registerTable } from './register';
import type { FoundRisk, RiskRows } from './rows';
import { settingsTable } from './settings';
import { chanceTable, driverBars, driverTable, finishDrivers, percentileTable } from './tables';
import { awardWords, inHundred, simulatedDollars } from './words';

/** What the view of risk is made from. */
export interface RiskStudy {
  readonly evaluation: Evaluation;
  readonly prepared: PreparedEstimate | undefined;
  readonly findings: readonly Finding[];
  /** The last run of this scenario. */
  readonly view: RiskView | undefined;
  /** The run is of the document as it was before an edit. */
  readonly isStale: boolean;
  /** Mitigations and surveys were tried as well. */
  readonly isWhole: boolean;
}

/** How sure the estimate is, ready to show: before a run only the register and how it would be run. */
export function riskRows(study: RiskStudy): RiskRows {
  const { evaluation, prepared, findings, view, isStale, isWhole } = study;
  const told = new Derivations('run');
  const open = (table: TableRows) => told.table(table, runOrigin(table, view, prepared));
  const tell = view === undefined ? undefined : teller(told, view, prepared);
  return {
    sentence:
      view === undefined || tell === undefined ? beforeRun(evaluation, prepared) : afterRun(view, tell),
    run:
      view === undefined
        ? ''
        : `${printed(String(view.trials))} runs, seed ${view.seed}${isStale ? ', of the document before the last edits' : ''}${isWhole ? '' : '; mitigations and surveys were not tried'}`,
    found: view === undefined || tell === undefined ? undefined : foundRisk(study, view, { open, tell }),
    register: open(registerTable(evaluation, prepared, view)),
    settings: settingsTable(evaluation, prepared),
    library: libraryEvents(evaluation, prepared),
    emptySection: riskSchema.parse({}),
    whys: told.whys,
    noted: prepared === undefined ? [] : [...findings, ...(view?.findings ?? [])].map(findingWords),
    missing: prepared === undefined ? findings.map(findingWords) : [],
  };
}

/** Makes a figure of a sentence open how it came about. */
type Tell = (name: string, text: string, title: string, words: string, by?: 'cost' | 'finish') => Shown;

function teller(told: Derivations, view: RiskView, prepared: PreparedEstimate | undefined): Tell {
  return (name, text, title, words, by = 'cost') =>
    told.figure(name, { text }, title, { path: 'Risk', home: 'risk' }, words, runSteps(view, prepared, by));
}

function beforeRun({ estimate }: Evaluation, prepared: PreparedEstimate | undefined): Sentence {
  if (prepared === undefined) return ['How sure this is cannot be worked out yet.'];
  const total = estimate === undefined ? undefined : summaryOf(estimate)?.total;
  const finish = estimate?.schedule.finish;
  if (total === undefined || finish === undefined) return ['How sure this is has not been worked out yet.'];
  return [
    'How sure ',
    { text: simulatedDollars(total.cents / 100), why: 'sums/total' },
    ' and ',
    { text: dateWords(finish), why: 'schedule:finish' },
    ' are has not been worked out yet.',
  ];
}

/** The joint confidence as one sentence, then what it takes. */
function afterRun({ joint, cost, confidence }: RiskView, tell: Tell): Sentence {
  const chosen = cost.curve.find(point => point.share >= confidence - 1e-9)?.value;
  const cut = joint.sentence.indexOf(' in 100');
  const inside = tell(
    'joint',
    joint.sentence.slice(0, cut + ' in 100'.length),
    'Inside the money and the date',
    `The runs that cost no more than ${simulatedDollars(joint.budget)} and end by ${dateWords(joint.date)} are counted; here they are of 100.`,
  );
  const said: Sentence = [inside, joint.sentence.slice(cut + ' in 100'.length)];
  if (chosen === undefined) return said;
  const share = inHundred(confidence);
  const takes = tell(
    'takes',
    simulatedDollars(chosen),
    `What ${share} in 100 runs stay under`,
    `All runs are put in order of cost. ${share} in 100 of them cost this much or less.`,
  );
  return [...said, ` ${share} in 100 stay under `, takes, '.'];
}

interface Opening {
  readonly open: (table: TableRows) => TableRows;
  readonly tell: Tell;
}

function foundRisk({ evaluation, isStale }: RiskStudy, view: RiskView, { open, tell }: Opening): FoundRisk {
  const titles = new Map((evaluation.estimate?.items ?? []).map(item => [item.id, item.title]));
  const limit = view.deadline?.date ?? view.grantPeriod?.end;
  const frontier = frontierPicture(
    [
      {
        letter: evaluation.letter,
        isChosen: true,
        isPermittable: evaluation.estimate?.unmetGoals.length === 0,
        total: view.cost.plan ?? view.cost.mean,
        finish: view.finish.plan,
        line: view.frontier,
      },
    ],
    { confidence: view.confidence, inHand: view.contingency.budget, lastDate: limit },
  );
  return {
    cost: costCurve(view),
    finish: finishCurve(view),
    frontier: { ...frontier, table: open(frontier.table) },
    percentiles: open(percentileTable(view, tell)),
    chances: open(chanceTable(view)),
    award: awardSentence(view, isStale, tell),
    drivers: open(driverTable(view)),
    driverBars: driverBars(view),
    drivesFinish: open(finishDrivers(view)),
    contingency: open(contingencyTable(view, line => titles.get(line) ?? line)),
    contingencyNote: view.contingencyNote,
    surveys: open(surveyTable(view)),
    planWords: [
      datesSaid([view.safe?.sentence, view.gap?.sentence].filter(said => said !== undefined).join(' ')),
    ],
    pastHulls: [pastWords(view)],
    bottom: bottomCells(view, isStale, tell),
  };
}

/** How likely the cost stays inside the award, for the page of the grant budget. */
function awardSentence({ award }: RiskView, isStale: boolean, tell: Tell): Sentence | undefined {
  if (award === undefined) return undefined;
  const chance = tell(
    'award',
    `${inHundred(award.chance)} in 100`,
    'Inside what the grant has a part in',
    'The runs that cost no more than this are counted; here they are of 100.',
  );
  return [`${awardWords(award)}: `, chance, isStale ? ' runs, before the edit.' : ' runs.'];
}

/** Where the runs stand beside past hulls. */
function pastWords({ growth }: RiskView): string {
  const times = (value: number) => value.toFixed(2);
  return `In eight of ten runs the cost is ${times(growth.p10)} to ${times(growth.p90)} times the plan. Past hulls cost ${times(growth.least)} to ${times(growth.most)} times their middle estimate; P80 would have covered ${Math.round(growth.coveredAtP80 * growth.of)} of those ${growth.of}. The ranges were set with these hulls in view, so agreement proves nothing.`;
}

/** P80 of the cost and the chance of the grant period, for the bottom line. */
function bottomCells(view: RiskView, isStale: boolean, tell: Tell): readonly BottomCell[] {
  const p80 = view.cost.percentiles.find(one => one.share === 0.8)?.value;
  const beside = isStale ? { beside: 'before the edit' } : {};
  const cells: BottomCell[] = [];
  if (p80 !== undefined)
    cells.push({
      key: 'p80',
      label: 'P80 cost',
      value: tell(
        'p80',
        simulatedDollars(p80),
        'P80 cost',
        'All runs are put in order of cost. 80 in 100 of them cost this much or less.',
      ),
      ...beside,
    });
  if (view.grantPeriod !== undefined) {
    const inside = inHundred(1 - view.grantPeriod.chanceOfMissing);
    cells.push({
      key: 'grant',
      label: 'In grant period',
      value: tell(
        'grant',
        `${inside} in 100`,
        'Inside the grant period',
        `The runs that end by ${dateWords(view.grantPeriod.end)} are counted; here they are of 100.`,
        'finish',
      ),
      ...beside,
    });
  }
  return cells;
}
