import {
  bidView,
  grantView,
  quoteView,
  reviewJson,
  reviewRows,
  tabulationView,
  type Evaluation,
} from '../../../core/evaluation';
import type { Finding } from '../../../core/base';
import type { Command } from '../command';
import { findingLines } from '../words';
import { evaluated } from '../load';
import { reviewLine } from './review';

export const checkCommand: Command = {
  name: 'check',
  words: 'Every finding, and the quality review of estimate and schedule.',
  usage: 'reefwright check FILE [--json]',
  options: {},
  run: call =>
    evaluated(call, evaluation => {
      const findings = [...evaluation.findings, ...bookFindings(evaluation)];
      const rows = reviewRows(evaluation);
      return {
        json: { findings, review: reviewJson(rows) },
        lines: [
          ...(findings.length === 0 ? ['No findings.'] : findingLines(findings)),
          ...rows.map(reviewLine),
        ],
        findings,
      };
    }),
};

/** Findings of the books the project asks for, each once: what blocks the estimate is told already. */
function bookFindings(evaluation: Evaluation): Finding[] {
  const { funding, bid } = evaluation.project;
  if (evaluation.estimate?.money === undefined) return [];
  const found = [
    ...(funding === undefined ? [] : grantView(evaluation).findings),
    ...(bid === undefined ? [] : bidView(evaluation).findings),
    ...tabulationView(evaluation).findings,
    ...quoteView(evaluation).findings,
  ];
  const told = new Set(evaluation.findings.map(({ place, message }) => `${place} ${message}`));
  return found.filter(({ place, message }, index) => {
    const isFirst = found.findIndex(one => one.place === place && one.message === message) === index;
    return isFirst && !told.has(`${place} ${message}`);
  });
}
