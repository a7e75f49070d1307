import type { Command } from '../command';
import { findingLines } from '../words';
import { evaluated } from '../load';

export const checkCommand: Command = {
  name: 'check',
  words: 'Every finding, and the quality review of estimate and schedule.',
  usage: 'reefwright check FILE [--json]',
  options: {},
  run: call =>
    evaluated(call, ({ findings }) => ({
      json: { findings },
      lines: findings.length === 0 ? ['No findings.'] : findingLines(findings),
      findings,
    })),
};
