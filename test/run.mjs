// The whole test run: type check, lint, unit and property tests, builds, recalculation in LibreOffice, and the window
// in Chromium. Missing tools are installed on a Debian machine as root; elsewhere their legs are skipped and named.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = dirname(dirname(fileURLToPath(import.meta.url)));
const npx = (...words) => [process.execPath, [join(home, 'node_modules', words[0]), ...words.slice(1)]];
const TOOLS = [
  {
    name: 'Chromium',
    finds: ['chromium', 'chromium-browser', 'google-chrome'],
    apt: 'chromium',
    legs: 'the window and the printed report',
  },
  {
    name: 'LibreOffice',
    finds: ['soffice'],
    apt: 'libreoffice-calc',
    legs: 'the recalculation of workbooks',
  },
  {
    name: 'poppler-utils',
    finds: ['pdftotext'],
    apt: 'poppler-utils',
    legs: 'reading back the printed report',
  },
];
const counts = { passed: 0, failed: 0, skipped: 0 };
const skippedLegs = [];

function has(program) {
  return (process.env.PATH ?? '').split(':').some(folder => existsSync(join(folder, program)));
}

function installMissing() {
  const missing = TOOLS.filter(tool => !tool.finds.some(has));
  if (missing.length === 0) return;
  const command = `apt-get install -y ${missing.map(tool => tool.apt).join(' ')}`;
  const canInstall = existsSync('/etc/debian_version') && process.getuid?.() === 0 && has('apt-get');
  if (canInstall) {
    console.log(
      `Installing what the tests need and this machine lacks: ${missing.map(tool => tool.name).join(', ')}`,
    );
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'ignore', env });
    spawnSync('apt-get', ['install', '-y', '-qq', ...missing.map(tool => tool.apt)], {
      stdio: 'ignore',
      env,
    });
  }
  for (const tool of missing.filter(tool => !tool.finds.some(has)))
    skippedLegs.push(`${tool.legs} (${tool.name} is missing; the command that brings it: sudo ${command})`);
}

/** Runs one program as one leg: passed when it ends with 0. */
function leg(title, [program, words], options = {}) {
  const begun = Date.now();
  const run = spawnSync(program, words, { cwd: home, encoding: 'utf8', maxBuffer: 1 << 28, ...options });
  const ok = run.status === 0;
  counts[ok ? 'passed' : 'failed']++;
  console.log(`${ok ? 'passed' : 'FAILED'}  ${title} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  if (!ok) console.log(`${run.stdout ?? ''}${run.stderr ?? ''}`.split('\n').slice(-80).join('\n'));
  return run;
}

/** Runs vitest once and adds its counts. */
function vitest(title, words, env = {}) {
  const report = join(mkdtempSync(join(tmpdir(), 'reefwright-')), 'report.json');
  const begun = Date.now();
  const [program, base] = npx(
    'vitest/vitest.mjs',
    'run',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...words,
  );
  const run = spawnSync(program, base, {
    cwd: home,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    env: { ...process.env, ...env },
  });
  if (!existsSync(report)) {
    counts.failed++;
    console.log(`FAILED  ${title}: no report\n${run.stdout}${run.stderr}`);
    return;
  }
  const result = JSON.parse(readFileSync(report, 'utf8'));
  const broken = result.testResults.filter(
    file => file.status === 'failed' && file.assertionResults.length === 0,
  );
  counts.passed += result.numPassedTests;
  counts.failed += result.numFailedTests + broken.length;
  counts.skipped += result.numPendingTests + result.numTodoTests;
  console.log(
    `${run.status === 0 ? 'passed' : 'FAILED'}  ${title}: ${result.numPassedTests} tests (${((Date.now() - begun) / 1000).toFixed(1)} s)`,
  );
  for (const file of result.testResults)
    for (const test of file.assertionResults.filter(test => test.status === 'failed'))
      console.log(
        `FAILED  ${file.name.replace(home, '.')} · ${test.fullName}\n${test.failureMessages.join('\n').slice(0, 2000)}`,
      );
  for (const file of broken)
    console.log(`FAILED  ${file.name.replace(home, '.')}: ${String(file.message).slice(0, 2000)}`);
}

/** Runs a program of our own whose last line counts its tests. */
function counted(title, script) {
  const run = leg(title, [process.execPath, [join(home, script)]]);
  const last = /(\d+) passed, (\d+) failed(?:, (\d+) skipped)?\s*$/.exec(run.stdout ?? '');
  if (last === null) return;
  counts.passed += Number(last[1]);
  counts.failed += run.status === 0 ? Number(last[2]) : Math.max(0, Number(last[2]) - 1);
  counts.skipped += Number(last[3] ?? 0);
}

installMissing();
for (const folder of ['core', 'electron', 'renderer', 'test'])
  leg(`type check of ${folder}`, npx('typescript/bin/tsc', '-p', folder));
leg('lint', npx('eslint/bin/eslint.js', '.'));
leg('formatting', npx('prettier/bin/prettier.cjs', '--check', '.', '--log-level', 'warn'));
leg('build', [process.execPath, [join(home, 'electron/build.mjs')]]);
vitest('unit, property, reference and parity tests', []);
for (const zone of ['America/New_York', 'Pacific/Kiritimati'])
  vitest(`dates in ${zone}`, ['test/core/calendar', 'test/core/project'], { TZ: zone });
if (TOOLS[0].finds.some(has) && existsSync(join(home, 'test/e2e/run.mjs'))) {
  counted('the window in Chromium', 'test/e2e/run.mjs');
}
counted('trust: kills, faults, hostile input, soak (short legs)', 'test/trust/run.mjs');
for (const words of skippedLegs) {
  counts.skipped++;
  console.log(`skipped ${words}`);
}
console.log(
  `${counts.passed} passed, ${counts.failed} failed${counts.skipped > 0 ? `, ${counts.skipped} skipped` : ''}`,
);
process.exitCode = counts.failed > 0 ? 1 : 0;
