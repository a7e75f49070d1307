import { shippedLibrary } from '../../core/evaluation';
import {
  copyForOthers,
  readProject,
  FIRST_HULL_TYPE,
  startingProject,
  writeProject,
} from '../../core/project';
import { importView } from '../../core/views';
import { EvaluationDesk, type Work } from './evaluation-desk';
import type { QuestionName, Questions } from './protocol';

const desk = new EvaluationDesk();

type Answer<Q extends QuestionName> = Questions[Q]['answer'] | Promise<Questions[Q]['answer']>;
type Answers = { readonly [Q in QuestionName]: (ask: Questions[Q]['ask'], work: Work) => Answer<Q> };

const ANSWERS: Answers = {
  read: ({ text }) => {
    const { project, findings, readOnly } = readProject(text);
    return project === undefined ? { findings, readOnly } : { project, findings, readOnly };
  },
  copy: ({ project, without }) => {
    const copy = copyForOthers(project, without, shippedLibrary());
    return { text: writeProject(copy.project), leftOut: copy.leftOut };
  },
  write: ({ project }) => ({ text: writeProject(project) }),
  start: ({ template, hullType, today }) => ({
    project: startingProject(shippedLibrary(), {
      reader: template,
      hullType: hullType ?? FIRST_HULL_TYPE,
      title: 'New project',
      start: today,
    }),
    findings: [],
    readOnly: false,
  }),
  evaluate: (ask, work) => desk.evaluate(ask, work),
  grant: (_ask, work) => desk.lookAtGrant(work),
  opened: ({ name }) => {
    const rows = desk.why?.opened(name);
    return rows === undefined ? {} : { [name]: rows };
  },
  import: ({ project, ...ask }) => importView(project, shippedLibrary(), ask),
  why: ({ id }) => desk.why?.answer(id) ?? null,
};

/** The answer to a question of the window. */
export function answerOf<Q extends QuestionName>(name: Q, ask: Questions[Q]['ask'], work: Work): Answer<Q> {
  return ANSWERS[name](ask, work);
}
