import { scheduleJson } from '../../../core/evaluation';
import type { Command } from '../command';
import { evaluated } from '../load';
import { SCENARIO_OPTION } from './estimate';

export const scheduleCommand: Command = {
  name: 'schedule',
  words: 'Dates, crews and what holds each activity where it is.',
  usage: 'reefwright schedule FILE [--scenario ID] [--json]',
  options: SCENARIO_OPTION,
  run: call =>
    evaluated(call, evaluation => {
      const schedule = evaluation.estimate?.schedule;
      const lines = (schedule?.activities ?? []).map(
        activity =>
          `${activity.start}  ${activity.finish}  ${String(activity.workDays).padStart(4)} d  float ${String(activity.totalFloat).padStart(4)}  ${activity.critical ? '*' : ' '} ${activity.title}`,
      );
      return { json: scheduleJson(evaluation), lines, findings: evaluation.findings };
    }),
};
