import { shippedLibrary } from '../../core/evaluation/templates';
import { readProject, writeProject } from '../../core/project';
import { startingProject } from '../../core/project';
import type { Progress, QuestionName, Questions } from './protocol';

export async function answerOf(name: QuestionName, ask: unknown, onProgress: Progress): Promise<unknown> {
  void onProgress;
  const handler = ANSWERS[name] as (ask: unknown) => unknown;
  return handler(ask);
}

const ANSWERS: { [Q in QuestionName]: (ask: Questions[Q]['ask']) => Questions[Q]['answer'] } = {
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
  evaluate: () => {
    throw new Error('The estimate is not there yet.');
  },
  why: () => null,
};
