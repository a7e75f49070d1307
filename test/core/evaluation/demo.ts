import { readFileSync } from 'node:fs';
import { evaluate, type Evaluation } from '../../../core/evaluation';
import { readProject, type Project } from '../../../core/project';

/** The invented example. */
export function demoProject(): Project {
  const { project, findings } = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8'));
  if (project === undefined) throw new Error(JSON.stringify(findings));
  return project;
}

/** An evaluation with a small search: what is tested is the estimate, not the search. */
export function evaluated(project: Project, scenario?: string): Evaluation {
  return evaluate(project, {
    today: '2026-11-24',
    seed: 1,
    schedules: 20,
    upright: false,
    ...(scenario === undefined ? {} : { scenario }),
  });
}

/** The parts of an evaluation that must be there. */
export function estimated(evaluation: Evaluation) {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) throw new Error(JSON.stringify(evaluation.findings.slice(0, 5)));
  return { ...estimate, money: estimate.money };
}
