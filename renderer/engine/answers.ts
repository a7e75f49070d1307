import { evaluate, shippedLibrary } from '../../core/evaluation';
import { readProject, startingProject, writeProject } from '../../core/project';
import {
  importView,
  planOf,
  WhyDesk,
  windowRows,
  type BottomAmounts,
  type EarlierPlan,
} from '../../core/views';
import type { QuestionName, Questions } from './protocol';

/** The seed of the window's searches: the same document gives the same answer every time. */
const SEED = 1;

/** What the last evaluation left behind: for derivations, and to tell how the next edit moves the bottom line. */
interface Kept {
  readonly desk: WhyDesk;
  readonly amounts: BottomAmounts;
  readonly about: string;
}
let kept: Kept | undefined;
/** The plan as the document was opened in this scenario: later plans show how they moved from it. */
let first: { readonly about: string; readonly plan: EarlierPlan } | undefined;

type Answers = { readonly [Q in QuestionName]: (ask: Questions[Q]['ask']) => Questions[Q]['answer'] };

const ANSWERS: Answers = {
  read: ({ text }) => {
    const { project, findings, readOnly } = readProject(text);
    return project === undefined ? { findings, readOnly } : { project, findings, readOnly };
  },
  write: ({ project }) => ({ text: writeProject(project) }),
  start: ({ template, hullType, today }) => ({
    project: startingProject(shippedLibrary(), {
      reader: template,
      hullType: hullType ?? 'freighter',
      title: 'New project',
      start: today,
    }),
    findings: [],
    readOnly: false,
  }),
  evaluate: ({ project, scenario, today, measures, document }) => {
    const evaluation = evaluate(project, { today: project.statusDate ?? today, seed: SEED, scenario });
    const about = `${document} ${scenario} ${measures}`;
    const answer = windowRows(
      project,
      evaluation,
      measures,
      kept?.about === about ? kept.amounts : undefined,
      first?.about === about ? first.plan : undefined,
    );
    if (answer === undefined) return { findings: evaluation.findings };
    const desk = new WhyDesk(evaluation, measures);
    kept = { desk, amounts: answer.amounts, about };
    if (first?.about !== about) first = { about, plan: planOf(evaluation) };
    setTimeout(() => {
      if (kept?.desk === desk) desk.warm();
    }, 1200);
    return { rows: answer.rows, findings: evaluation.findings };
  },
  opened: ({ name }) => {
    const rows = kept?.desk.opened(name);
    return rows === undefined ? {} : { [name]: rows };
  },
  import: ({ project, ...ask }) => importView(project, shippedLibrary(), ask),
  why: ({ id }) => kept?.desk.answer(id) ?? null,
};

/** The answer to a question of the window. */
export function answerOf<Q extends QuestionName>(name: Q, ask: Questions[Q]['ask']): Questions[Q]['answer'] {
  return ANSWERS[name](ask);
}
