import { BASES, type Finding } from '../base';
import { dollarsOf, type Money } from '../money';
import type { WorkSheet } from '../estimate';
import type { ScheduleResult } from '../scheduling';
import { STAGES } from '../work';
import { ELEMENTS, type EstimateLine, type EstimateSummary } from './summary';
import type { Evaluation } from './evaluate';
import { classOf } from './estimate-class';
import { splitAgainstHistory } from './split-history';
import { summarise } from './summary';
import { measurementPrices } from './upright-measurements';
import { openingWork } from './upright-work';

/** A plain JSON object; a figure that is absent is left out, never null or zero. */
export type JsonObject = { readonly [key: string]: unknown };

const ELEMENT_KEYS: Readonly<Record<(typeof ELEMENTS)[number], string>> = {
  labour: 'labour',
  equipment: 'equipment',
  material: 'material',
  disposal: 'disposal',
  subcontract: 'subcontract',
  fee: 'fee',
  'mark-up': 'markUp',
};

/** The estimate of a scenario as the command line prints it. */
export function estimateJson(evaluation: Evaluation): JsonObject {
  const { estimate, project, scenario, findings } = evaluation;
  const frame = { scenario: scenario.id, currency: 'USD', priceDate: project.rates.priceDate, findings };
  if (estimate?.money === undefined || estimate.generator === undefined) return frame;
  const summary = summarise({ ...estimate, money: estimate.money });
  const { byBasis, uncheckedShare } = summary;
  const { months, event } = estimate.generator;
  return {
    ...frame,
    permittable: estimate.unmetGoals.length === 0,
    unmetGoals: estimate.unmetGoals,
    ...sumsJson(summary),
    scrap: scrapJson(summary),
    byStage: present(STAGES.map(stage => [stage, summary.byStage[stage]])),
    byElement: present(ELEMENTS.map(element => [element, summary.byElement[element]])),
    ...(byBasis === undefined ? {} : { byBasis: present(BASES.map(basis => [basis, byBasis[basis]])) }),
    ...(uncheckedShare === undefined ? {} : { uncheckedShare }),
    ...classJson(summary),
    againstHistory: splitAgainstHistory(estimate, summary),
    lines: summary.lines.map(lineJson),
    wasteTonnes: wasteTonnes(estimate.work),
    generatorCategoryByMonth: Object.fromEntries(months.map(({ month, category }) => [month, category])),
    generatorMonths: months,
    ...(event === undefined ? {} : { episodicEvent: event }),
    ...scheduleSpan(estimate.schedule),
    ...uprightSummary(evaluation),
    findings,
  };
}

function classJson({ byBasis }: EstimateSummary): JsonObject {
  const found = byBasis && classOf(byBasis);
  return found === undefined ? {} : { estimateClass: found.estimateClass };
}

/** The verdict of the upright screen, in the estimate. */
function uprightSummary({ upright }: Evaluation): JsonObject {
  if (upright === undefined) return {};
  const { verdict, greatestHeelDegrees, atStage, lowestGmMetres, sinkMinutes, sinks } = upright;
  return {
    uprightScreen: defined({ verdict, greatestHeelDegrees, atStage, lowestGmMetres, sinkMinutes, sinks }),
  };
}

/** The upright screen of a scenario as the command line prints it. */
export function uprightJson({ upright, tow, estimate, scenario, findings }: Evaluation): JsonObject {
  if (upright === undefined) return { scenario: scenario.id, findings };
  const priced = estimate && {
    measurements: measurementPrices(estimate),
    openingWork: openingWork(estimate),
    ...(tow === undefined ? {} : { tow }),
  };
  return { scenario: scenario.id, ...defined({ ...upright }), ...priced, findings };
}

/** An object without its absent fields. */
function defined(object: JsonObject): JsonObject {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined));
}

function sumsJson(summary: EstimateSummary): JsonObject {
  const { total, knownSoFar, contractCost, markUps, ownerCost, contingency, budget } = summary;
  const sums = present([
    ['total', total],
    ['contractCost', contractCost],
    ['markUps', markUps],
    ['ownerCost', ownerCost],
    ['contingency', contingency],
    ['budget', budget],
  ]);
  return total === undefined ? { ...sums, ...present([['knownSoFar', knownSoFar]]) } : sums;
}

function scrapJson({ scrapCredit, scrapIncome }: EstimateSummary): JsonObject {
  const owner = scrapIncome !== undefined && scrapIncome.cents !== 0;
  return {
    ...present([['amount', owner ? scrapIncome : scrapCredit]]),
    keptBy: owner ? 'owner' : 'contractor',
  };
}

function lineJson(line: EstimateLine): JsonObject {
  return {
    id: line.id,
    stage: line.stage,
    title: line.title,
    ...(line.quantity === undefined ? {} : { quantity: line.quantity }),
    unit: line.unit,
    ...(line.hours === undefined ? {} : { hours: line.hours }),
    ...present(ELEMENTS.map(element => [ELEMENT_KEYS[element], line.elements[element]])),
    ...present([['total', line.total]]),
  };
}

/** Amounts of money as dollars, leaving out what is absent. */
function present(amounts: readonly (readonly [string, Money | undefined])[]): JsonObject {
  return Object.fromEntries(
    amounts.flatMap(([key, amount]) => (amount === undefined ? [] : [[key, dollarsOf(amount)]])),
  );
}

function wasteTonnes({ streams, result }: WorkSheet): JsonObject {
  return Object.fromEntries(
    streams.scope.rows.flatMap(row => {
      const tonnes = result.number(streams.columns.tonnes, row.key);
      return tonnes === undefined || tonnes === 0 ? [] : [[row.key, tonnes]];
    }),
  );
}

function scheduleSpan(schedule: ScheduleResult): JsonObject {
  const { start, finish, workDays, peakCrew } = schedule;
  return start === undefined || finish === undefined || workDays === undefined
    ? {}
    : { start, finish, workDays, peakCrew };
}

/** Dates and resources of a scenario as the command line prints them. */
export function scheduleJson(evaluation: Evaluation): JsonObject {
  const { estimate, findings, scenario } = evaluation;
  if (estimate === undefined) return { scenario: scenario.id, findings };
  const { schedule, problem } = estimate;
  return {
    scenario: scenario.id,
    status: schedule.status,
    ...(schedule.lowerBoundDays === undefined
      ? {}
      : {
          lowerBoundDays: schedule.lowerBoundDays,
          calendarDays: schedule.calendarDays,
          gapDays: schedule.gapDays,
        }),
    ...scheduleSpan(schedule),
    activities: schedule.activities.map(activity => ({
      id: activity.id,
      title: activity.title,
      start: activity.start,
      finish: activity.finish,
      workDays: activity.workDays,
      totalFloat: activity.totalFloat,
      critical: activity.critical,
      crew: activity.crewSize,
      heldBy: activity.heldBy,
    })),
    spans: schedule.hammocks,
    relationships: problem.relationships,
    resourcePeaks: schedule.resourcePeaks,
    criticalChain: schedule.criticalChain,
    findings: planFindings(schedule, findings),
  };
}

function planFindings(schedule: ScheduleResult, findings: readonly Finding[]): readonly Finding[] {
  const own = new Set(findings.map(finding => `${finding.place} ${finding.message}`));
  return [
    ...findings,
    ...schedule.findings.filter(finding => !own.has(`${finding.place} ${finding.message}`)),
  ];
}
