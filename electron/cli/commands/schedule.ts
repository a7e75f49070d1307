import { scheduleJson } from '../../../core/evaluation';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';
import { answersTo, QUESTIONS } from './schedule-questions';

export const scheduleCommand: Command = {
  name: 'schedule',
  words: 'Dates, crews and what holds each activity where it is.',
  usage:
    'reefwright schedule FILE [--scenario ID] [--baseline FILE] [--starts N] [--level] [--least-crew --by DATE] [--crew-plan [--by DATE]] [--json]',
  options: { ...SCENARIO_OPTION, ...QUESTIONS },
  run: call =>
    evaluated(call, evaluation => {
      const schedule = evaluation.estimate?.schedule;
      const lines = (schedule?.activities ?? []).map(
        activity =>
          `${activity.start}  ${activity.finish}  ${String(activity.workDays).padStart(4)} d  float ${String(activity.totalFloat).padStart(4)}  ${activity.critical ? '*' : ' '} ${activity.title}`,
      );
      const answers = answersTo(call, evaluation);
      return {
        json: { ...scheduleJson(evaluation), ...answers.json },
        lines: [...lines, ...answers.lines],
        findings: [...evaluation.findings, ...answers.findings],
      };
    }),
};
