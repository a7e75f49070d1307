import { mkdtempSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { produce } from 'immer';
import { expect, test } from 'vitest';
import { writeProject } from '../../../core/project';
import { makePapers } from '../../../electron/papers/make-papers';
import { demoProject } from '../../core/evaluation/demo';

test('a bid that a wage withholds says that it is the wage', async () => {
  const project = produce(demoProject(), draft => {
    draft.rates.wages.push({
      trade: 'foreman',
      figure: { value: '-5', unit: 'USD/h', basis: 'judgement', source: 'test' },
    });
  });
  const folder = mkdtempSync(path.join(os.tmpdir(), 'reefwright-withheld-'));
  const scenario = project.scenarios[0]?.id ?? '';
  const made = makePapers({ text: writeProject(project), scenario, only: ['bid'] }, folder, '2026-11-24');
  await expect(made).rejects.toThrow(/^The bid could not be written: wage of foreman is given as −\$5 per h/);
});
