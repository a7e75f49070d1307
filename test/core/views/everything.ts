import { prepareRisk, riskRun, type Evaluation, type RiskView } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { compareScenarios, factsOf, type RiskFacts } from '../../../core/scenario';
import {
  compareRows,
  decisionRows,
  riskRows,
  WhyDesk,
  windowRows,
  type Measures,
  type OpenedName,
  type WhyRows,
} from '../../../core/views';
import { AWKWARD, awkward, DEMO, evaluatedAs, figure, FULL, type AwkwardName } from './awkward';

/** All that is shown of one document to one reader, and what a figure of it opens. */
export interface Everything {
  readonly project: Project;
  readonly measures: Measures;
  readonly shown: Readonly<Record<string, unknown>>;
  readonly answer: (name: string) => WhyRows | undefined;
}

const OPENED: readonly OpenedName[] = [
  'materials',
  'funding',
  'bid',
  'review',
  'benefit',
  'scenarios',
  'evidence',
];

function shownOf(evaluation: Evaluation, measures: Measures): Everything {
  const { project } = evaluation;
  const desk = new WhyDesk(evaluation, measures);
  const window = windowRows(project, evaluation, measures, undefined)?.rows;
  const opened = Object.fromEntries(OPENED.map(view => [view, desk.opened(view)]));
  return { project, measures, shown: { ...window, ...opened }, answer: name => desk.answer(name) };
}

/** What is worked out before anything is shown, once for each test file. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** An obligation of the reader's own. */
const OBLIGATION = {
  ...{ id: 'light', title: 'Light of the buoy', party: 'permit holder', firstYear: 2, years: 9 },
  costPerYear: figure('1500', 'USD/year'),
};

/** What is shown as it was given and changes no figure: weights, ways between spaces, wages, lessons and the like. */
function withMore(project: Project): Project {
  const { vessel, rates, record, decision, benefits } = project;
  const way = { kind: 'door' as const, area: figure('2', 'm2'), centre: figure('1', 'm'), closed: true };
  const compartments = vessel.compartments.map((one, at, all) => {
    const next = all[at + 1];
    return next === undefined ? one : { ...one, connections: [{ to: next.id, ...way }] };
  });
  const centre = { vcg: figure('3', 'm'), lcg: figure('-6', 'm'), tcg: figure('0.5', 'm') };
  return {
    ...project,
    vessel: {
      ...vessel,
      compartments,
      weights: [{ id: 'engine', title: 'Main engine', mass: figure('20', 't'), ...centre }],
    },
    rates: { ...rates, wages: [{ trade: 'burner', figure: figure('39', 'USD/h') }] },
    record: {
      crossChecks: [],
      leftOut: [],
      reasons: [],
      ...record,
      independent: { by: 'An estimator', on: '2026-11-03', total: figure('4900000', 'USD') },
      lessons: [{ id: 'rain', title: 'Rain', lesson: 'Plan for it', on: '2026-10-01' }],
    },
    decision: { ...decision, weights: [] },
    ...(benefits && { benefits: { ...benefits, obligations: [OBLIGATION] } }),
  };
}

/** A full document with its upright screen. */
export const screened = once((): Evaluation => {
  const evaluation = evaluatedAs(FULL, { upright: true });
  return { ...evaluation, project: withMore(evaluation.project) };
});

interface Studied {
  readonly evaluation: Evaluation;
  readonly other: Evaluation;
  readonly prepared: ReturnType<typeof prepareRisk>;
  readonly view: RiskView;
  readonly facts: RiskFacts;
}

/** A short run of the example, whose board has set a weight, beside another of its scenarios. */
export const studied = once((): Studied => {
  const weights = [{ criterion: 'cost' as const, weight: '0.6' }];
  const project: Project = { ...DEMO, decision: { ...DEMO.decision, weights } };
  const evaluation: Evaluation = { ...awkward('the example'), project };
  const other = { ...evaluatedAs(DEMO, { scenario: 'diver-access' }), project };
  const { run } = riskRun(evaluation, { trials: 100, triesWhatIfs: false });
  if (run === undefined) throw new Error('the example can be simulated');
  let { result } = run.step();
  while (result === undefined) ({ result } = run.step());
  const { view, simulation } = result;
  const facts = factsOf(evaluation, simulation, run.prepared.first);
  return { evaluation, other, prepared: prepareRisk(evaluation), view, facts };
});

/** The views of the runs, of the comparison and of the decision. */
function studies(measures: Measures): Everything {
  const { evaluation, other, prepared, view, facts } = studied();
  const chosen = evaluation.scenario.id;
  const comparison = compareScenarios([evaluation, other], [facts]);
  const run = { prepared: prepared.prepared, findings: prepared.findings, isStale: false, isWhole: true };
  const shown = {
    risk: riskRows({ evaluation, view, ...run }),
    compare: compareRows({ comparison, views: [view], isStale: false, chosen, measures }),
    decision: decisionRows(evaluation, comparison),
  };
  const whys = { ...shown.risk.whys, ...shown.compare.whys, ...shown.decision.whys };
  const desk = new WhyDesk(evaluation, measures);
  const { project } = evaluation;
  return { project, measures, shown, answer: name => whys[name] ?? desk.answer(name) };
}

const awkwardly = (name: AwkwardName, measures: Measures) => () =>
  shownOf({ ...awkward(name), project: AWKWARD[name] }, measures);

const MADE = {
  'a full document in feet': () => shownOf(screened(), 'us'),
  'a full document in metres': () => shownOf(screened(), 'metric'),
  'the example': awkwardly('the example', 'us'),
  'a document just begun': awkwardly('as it begins', 'us'),
  'a document without a schedule': awkwardly('without a schedule', 'us'),
  'a document with an absent figure': awkwardly('with a lightship that is no weight', 'metric'),
  'the runs, the comparison and the decision': () => studies('us'),
} as const satisfies Record<string, () => Everything>;

export type Shown = keyof typeof MADE;
export const ALL_SHOWN = Object.keys(MADE).filter((name): name is Shown => name in MADE);

/** All that is shown of one of the documents; only what it rests on is kept. */
export function everything(name: Shown): Everything {
  return MADE[name]();
}
