import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { summarise } from '../../core/evaluation';
import { moneyText } from '../../core/money';
import { compareScenarios } from '../../core/scenario';
import { writePapers } from '../../electron/papers/paper-set';
import { findChromium } from '../../electron/papers/print';
import { demoProject, estimated, evaluated } from '../core/evaluation/demo';
import { workFolder } from './recalculate';

const canRead = ['/usr/bin/pdfinfo', '/usr/bin/pdftotext', '/usr/bin/pdffonts'].every(existsSync);

describe('the printed report of the example', () => {
  test.skipIf(findChromium() === undefined || !canRead)(
    'is tagged, titled, four to six pages, with embedded fonts and the totals of the engine in its text',
    async () => {
      const project = demoProject();
      const evaluations = project.scenarios.map(scenario => evaluated(project, scenario.id));
      const [first] = evaluations;
      if (first === undefined) throw new Error('the example has scenarios');
      const folder = workFolder();
      const written = await writePapers(first, folder, ['report'], compareScenarios(evaluations));
      expect(written).toEqual({ files: [join(folder, `${first.scenario.id}-report.pdf`)], findings: [] });
      const read = (tool: string, ...args: string[]) =>
        execFileSync(tool, [...args, written.files[0] ?? ''], { encoding: 'utf8' });
      const facts = read('pdfinfo');
      expect(facts).toMatch(/Tagged:\s+yes/);
      expect(facts).toContain(project.title);
      const pages = Number(/Pages:\s+(\d+)/.exec(facts)?.[1]);
      expect(pages).toBeGreaterThanOrEqual(4);
      expect(pages).toBeLessThanOrEqual(6);
      const fonts = read('pdffonts').trim().split('\n').slice(2);
      expect(fonts.length).toBeGreaterThan(0);
      expect(fonts.filter(line => !/ yes yes (yes|no) /.test(line))).toEqual([]);
      const words = execFileSync('pdftotext', [written.files[0] ?? '', '-'], { encoding: 'utf8' });
      const { total, budget } = summarise(estimated(first));
      for (const amount of [total, budget])
        expect(words.replaceAll(',', '')).toContain(amount && moneyText(amount));
      expect(words).toContain(`Page 1 of ${pages}`);
    },
    120_000,
  );

  test('without a Chromium the report is a finding and the rest is written', async () => {
    const path = process.env['PATH'];
    process.env['PATH'] = '';
    try {
      const folder = workFolder();
      const written = await writePapers(evaluated(demoProject()), folder, ['report', 'calendar', 'json']);
      expect(written.findings.map(finding => finding.code)).toEqual(['papers/no-chromium']);
      expect(written.files.length).toBe(2);
    } finally {
      process.env['PATH'] = path;
    }
  });
});
