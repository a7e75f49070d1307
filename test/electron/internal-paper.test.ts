import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { writeProject } from '../../core/project';
import { makePapers } from '../../electron/papers/make-papers';
import { EVERY_PAPER, PAPERS } from '../../electron/papers/kinds';
import { demoProject } from '../core/evaluation/demo';

test('the window makes the internal build-up when it is asked for, and it is none of the papers handed over', async () => {
  expect(PAPERS).not.toContain('internal');
  expect(EVERY_PAPER).toContain('internal');
  const folder = mkdtempSync(path.join(tmpdir(), 'reefwright-internal-'));
  try {
    const project = demoProject();
    const scenario = project.scenarios[0]?.id ?? '';
    const request = { text: writeProject(project), scenario, only: ['internal' as const] };
    const made = await makePapers(request, folder, '2026-11-25');
    expect(made).toHaveLength(1);
    expect(made[0]).toMatch(/internal-build-up\.xlsx$/);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
