import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { calendarFile, csvFiles, evaluationJson, evaluationSchema } from '../../../core/papers';
import { compareScenarios } from '../../../core/scenario';
import { evaluate } from '../../../core/evaluation';
import { demoProject, evaluated } from '../evaluation/demo';

const project = demoProject();
const options = { today: '2026-11-24', seed: 1, schedules: 20 };
const evaluations = project.scenarios.map(({ id }) => evaluate(project, { ...options, scenario: id }));
const comparison = compareScenarios(evaluations);

describe('the JSON of an evaluation', () => {
  test.each(project.scenarios.map(({ id }) => id))('of scenario %s keeps to the published form', id => {
    const evaluation = evaluations.find(({ scenario }) => scenario.id === id);
    if (evaluation === undefined) throw new Error('the example has the scenario');
    const json: unknown = JSON.parse(JSON.stringify(evaluationJson(evaluation, comparison)));
    expect(evaluationSchema.safeParse(json).error?.issues ?? []).toEqual([]);
    expect(JSON.stringify(json)).not.toContain('null');
  });

  test('without an estimate keeps to the form too', () => {
    const faulty = { ...project, vessel: { ...project.vessel, hullType: 'no-such-hull' } };
    const json: unknown = JSON.parse(JSON.stringify(evaluationJson(evaluated(faulty))));
    expect(evaluationSchema.safeParse(json).error?.issues ?? []).toEqual([]);
  });

  test('a planted fault is refused by the form', () => {
    const [first] = evaluations;
    if (first === undefined) throw new Error('the example has scenarios');
    const json = evaluationJson(first) as { estimate: object };
    const broken = { ...json, estimate: { ...json.estimate, total: '5,324,475.93' } };
    expect(evaluationSchema.safeParse(broken).success).toBe(false);
  });

  test('the published schema is the one the program writes by', () => {
    const { $id, ...published } = z
      .looseObject({ $id: z.string() })
      .parse(JSON.parse(readFileSync('templates/schema/evaluation.schema.json', 'utf8')));
    expect($id).toMatch(/evaluation-1/);
    expect(published).toEqual(JSON.parse(JSON.stringify(z.toJSONSchema(evaluationSchema, { io: 'input' }))));
  });

  test('the same project gives the same bytes for JSON, CSV and calendar', () => {
    const texts = () => {
      const all = project.scenarios.map(({ id }) => evaluate(demoProject(), { ...options, scenario: id }));
      const [first] = all;
      if (first === undefined) throw new Error('the example has scenarios');
      return [
        JSON.stringify(evaluationJson(first, compareScenarios(all))),
        calendarFile(first),
        ...csvFiles(first).map(({ text }) => text),
      ];
    };
    expect(texts()).toEqual(texts());
  }, 60_000);
});
