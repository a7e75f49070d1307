import { spawn, spawnSync } from 'node:child_process';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { evaluate, prepareRisk } from '../../core/evaluation';
import { drainOnWorkers, simulation, trialRunner } from '../../core/risk';
import { loadProject } from '../../electron/cli/load';
import { RiskPool } from '../../electron/cli/risk-pool';

const ROOT = path.join(import.meta.dirname, '../..');
const FILE = path.join(ROOT, 'demo/wrenfield.reef.json');
const TODAY = '2026-11-24';

function words(...more: readonly string[]): string[] {
  return [path.join(ROOT, 'dist/electron/cli.js'), 'risk', FILE, '--today', TODAY, ...more];
}

function risk(...more: readonly string[]): Record<string, unknown> {
  const asked = words('--trials', '750', '--seed', '7', '--json', ...more);
  const ran = spawnSync(process.execPath, asked, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 28 });
  return JSON.parse(ran.stdout) as Record<string, unknown>;
}

/** Builds the command line once where it is older than its sources, with the code of its workers. */
beforeAll(() => {
  spawnSync(process.execPath, ['electron/reefwright.mjs', '--help'], { cwd: ROOT });
}, 300_000);

describe('worker threads', () => {
  test('one, two and four print the same from the same seed, but for the seconds they took', () => {
    const printed = ['1', '2', '4'].map(threads => risk('--threads', threads));
    expect(printed.map(one => typeof one['seconds'])).toEqual(['number', 'number', 'number']);
    const [one, two, four] = printed.map(said => JSON.stringify({ ...said, seconds: 0 }));
    expect(one).toContain('"drivers":[{');
    expect(two).toBe(one);
    expect(four).toBe(one);
  }, 300_000);

  test('asked to stop get no further job, and a run before stands to the bit when it is made again', async () => {
    const { project } = loadProject(FILE);
    if (project === undefined) throw new Error('the example could not be read');
    const { prepared } = prepareRisk(evaluate(project, { today: TODAY, seed: 1, upright: false }));
    if (prepared === undefined) throw new Error('the example could not be made ready');
    const plan = { trials: 100_000, seed: 3 };
    const worker = pathToFileURL(path.join(ROOT, 'dist/electron/risk-worker.js'));
    const pool = new RiskPool(
      { file: FILE, today: TODAY, scenario: undefined, plan },
      { threads: 3, worker },
    );
    const own = trialRunner(prepared.run, plan);
    try {
      await pool.ready;
      const before = await pool.run({ chunk: 0, adjustment: {} });
      const given: number[] = [];
      let answered = 0;
      const stopped = await drainOnWorkers(
        simulation(prepared.run, plan),
        job => {
          given.push(answered);
          return pool.run(job);
        },
        { onProgress: () => (answered += 1), shouldStop: () => answered >= 5 },
        pool.hands,
      );
      expect(stopped).toBeUndefined();
      // Nothing is given out after the fifth answer: five answered, and what the hands still held.
      expect(Math.max(...given)).toBeLessThan(5);
      expect(given.length).toBeLessThanOrEqual(5 + pool.hands);
      const [after, here] = [
        await pool.run({ chunk: 0, adjustment: {} }),
        own.run({ chunk: 0, adjustment: {} }),
      ];
      expect([...after.total]).toEqual([...before.total]);
      expect([...after.finish]).toEqual([...here.finish]);
      expect([...after.total]).toEqual([...here.total]);
    } finally {
      await pool.close();
    }
  }, 300_000);
});

test('Ctrl-C during the runs ends the command with a message, no figures and the exit code of an interrupt', async () => {
  const child = spawn(process.execPath, words('--trials', '1000000', '--progress', '--json'), { cwd: ROOT });
  let [out, told] = ['', ''];
  child.stdout.on('data', (text: Buffer) => (out += text.toString()));
  child.stderr.on('data', (text: Buffer) => {
    if (told === '') child.kill('SIGINT');
    told += text.toString();
  });
  const code = await new Promise<number | null>(resolve => child.on('close', resolve));
  expect([code, out]).toEqual([130, '']);
  expect(told).toMatch(/^\d+ trials done/);
  expect(told).toContain('Stopped before the runs were done: there are no figures, and no file was changed.');
}, 300_000);
