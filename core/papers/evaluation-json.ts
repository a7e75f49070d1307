import { estimateJson, scheduleJson, uprightJson, type Evaluation, type JsonObject } from '../evaluation';
import { comparisonJson, type Comparison } from '../scenario';
import { documentHash } from './document-hash';

/** The name and version of the form, as its schema has them. */
export const EVALUATION_FORMAT = 'reefwright-evaluation';
export const EVALUATION_VERSION = 1;

/**
 * The evaluation of a scenario as one JSON object in the form of `templates/schema/evaluation.schema.json`: money in
 * dollars, dates `YYYY-MM-DD`, months `YYYY-MM`, lengths in metres, angles in degrees, shares 0 to 1. What is absent is
 * left out, never null or zero.
 */
export function evaluationJson(evaluation: Evaluation, comparison?: Comparison): JsonObject {
  const { project, scenario, letter, today } = evaluation;
  return {
    $schema: 'https://reefwright.example/schema/evaluation.schema.json',
    format: EVALUATION_FORMAT,
    version: EVALUATION_VERSION,
    title: project.title,
    sample: project.sample,
    document: documentHash(project),
    evaluatedOn: today,
    scenario: { id: scenario.id, letter, title: scenario.title },
    estimate: estimateJson(evaluation),
    schedule: scheduleJson(evaluation),
    ...(evaluation.upright === undefined ? {} : { upright: uprightJson(evaluation) }),
    ...(comparison === undefined ? {} : { comparison: comparisonJson(comparison) }),
  };
}
