import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { summarise } from '../../core/evaluation';
import { moneyText } from '../../core/money';
import { compareScenarios, riskFacts } from '../../core/scenario';
import { paperStem } from '../../core/papers';
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
      const risks = evaluations.flatMap(one => riskFacts(one, { trials: 200, seed: 1 }) ?? []);
      const written = await writePapers(first, folder, ['report'], compareScenarios(evaluations, risks));
      const names = ['report', 'grant-file', 'bid-file'].map(end =>
        join(folder, `${paperStem(first)}-${end}.pdf`),
      );
      expect(written).toEqual({ files: names, findings: [] });
      const read = (tool: string, file: string, ...args: string[]) =>
        execFileSync(tool, [...args, file], { encoding: 'utf8', maxBuffer: 2 ** 26 });
      for (const file of names) {
        const facts = read('pdfinfo', file);
        expect(facts).toMatch(/Tagged:\s+yes/);
        expect(facts).toContain(project.title);
        const fonts = read('pdffonts', file).trim().split('\n').slice(2);
        expect(fonts.length).toBeGreaterThan(0);
        expect(fonts.filter(line => !/ yes yes (yes|no) /.test(line))).toEqual([]);
        const tags = read('pdfinfo', file, '-struct');
        for (const tag of ['H1', 'H2', 'Table', 'TH', 'P'])
          expect(tags, file).toMatch(new RegExp(`^\\s*${tag}\\b`, 'm'));
        expect(readFileSync(file, 'latin1')).toMatch(/\/Lang \(en-US\)/);
      }
      const [board = '', grant = ''] = names;
      const pages = Number(/Pages:\s+(\d+)/.exec(read('pdfinfo', board))?.[1]);
      expect(pages).toBeGreaterThanOrEqual(4);
      expect(pages).toBeLessThanOrEqual(6);
      const words = execFileSync('pdftotext', [board, '-'], { encoding: 'utf8' });
      const { total, budget } = summarise(estimated(first));
      for (const amount of [total, budget])
        expect(words.replaceAll(',', '')).toContain(amount && moneyText(amount));
      expect(words).toContain(`Page 1 of ${pages}`);
      const page = (n: number) =>
        execFileSync('pdftotext', ['-f', String(n), '-l', String(n), board, '-'], { encoding: 'utf8' });
      expect(page(1)).toContain('Dates on which the board must act');
      expect(page(2)).toContain('What it costs');
      const inGrant = execFileSync('pdftotext', [grant, '-'], { encoding: 'utf8' }).replaceAll(',', '');
      expect(inGrant).toContain(total && moneyText(total));
    },
    180_000,
  );

  test.skipIf(findChromium() === undefined)(
    'each reader’s report is printed alone when it is asked for by name',
    async () => {
      const evaluation = evaluated(demoProject());
      for (const [kind, end] of [
        ['board-report', 'report'],
        ['grant-file', 'grant-file'],
        ['bid-print', 'bid-file'],
      ] as const) {
        const folder = workFolder();
        const written = await writePapers(evaluation, folder, [kind]);
        expect(written).toEqual({
          files: [join(folder, `${paperStem(evaluation)}-${end}.pdf`)],
          findings: [],
        });
      }
      const unfunded = evaluated({ ...demoProject(), funding: undefined });
      const without = await writePapers(unfunded, workFolder(), ['grant-file']);
      expect(without.files).toEqual([]);
      expect(without.findings[0]?.code).toBe('papers/no-grant');
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
