import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { readProject } from '../../core/project';
import { emitWorkbook } from '../../core/sheet';

const { project } = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8'));

describe('the formulas of the example', () => {
  it.each(project?.scenarios.map(scenario => scenario.id) ?? ['the example cannot be read'])(
    'are short enough to be read by a person in scenario %s',
    scenario => {
      if (project === undefined) throw new Error('the example cannot be read');
      const options = { today: '2026-11-24', seed: 1, schedules: 1, upright: false, scenario };
      const { estimate } = evaluate(project, options);
      if (estimate?.money === undefined) throw new Error('the example has no money sheet');
      const { sheets, tooLong } = emitWorkbook([estimate.work.result, estimate.money.result]);
      expect(sheets.size).toBeGreaterThan(1);
      expect(tooLong).toEqual([]);
    },
    30_000,
  );
});
