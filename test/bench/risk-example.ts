/** How fast the invented example is simulated: in one thread step by step as the window does it, and by the command. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { evaluate, prepareRisk, riskRun, type RiskProgress } from '../../core/evaluation';
import { readProject } from '../../core/project';
import { simulate } from '../../core/risk';

const FILE = 'demo/wrenfield.reef.json';
const TRIALS = 10_000;

/** A scenario of the example made ready. */
export function exampleRun(scenario: string) {
  const { project } = readProject(readFileSync(FILE, 'utf8'));
  if (project === undefined) throw new Error('the example could not be read');
  const evaluation = evaluate(project, { today: '2026-11-24', seed: 1, upright: false, scenario });
  const { prepared } = prepareRisk(evaluation);
  if (prepared === undefined) throw new Error('the example could not be made ready');
  return { evaluation, prepared };
}

/** Both sheets, the schedule with its weather, correlations, events, percentiles and drivers. */
export async function wholeExample(): Promise<void> {
  const { evaluation, prepared } = exampleRun('fishing-reef');
  const { run } = prepared;
  simulate(run, { trials: 2000, seed: 1 });
  const times = [2, 3, 4].map(seed => {
    const [wall, cpu] = [performance.now(), process.cpuUsage().user];
    simulate(run, { trials: TRIALS, seed });
    return { wall: (performance.now() - wall) / 1000, cpu: (process.cpuUsage().user - cpu) / 1e6 };
  });
  console.log(
    `the example, warm, one thread: ${prepared.drawn} of ${prepared.ranged} ranges drawn, ${prepared.liveSteps} live steps, ` +
      `${run.activities.length} activities, drivers ranked: ${TRIALS} trials in ${times.map(t => `${t.wall.toFixed(2)} s (CPU ${t.cpu.toFixed(2)} s)`).join(', ')}`,
  );
  console.log(`  longest step of the window between two looks for a cancel: ${longestStep(evaluation)} ms`);
  for (const threads of ['1', '2']) {
    const ran = await command(['--threads', threads, '--json']);
    const { seconds } = JSON.parse(ran.out) as { seconds: number };
    console.log(
      `  the command, cold, ${threads} thread(s): ${seconds} s for the simulation, ${ran.seconds.toFixed(2)} s in all, ` +
        `memory at most ${ran.megabytes} MB`,
    );
  }
  const waits = [];
  for (let i = 0; i < 5; i++)
    waits.push((await command(['--trials', '1000000', '--progress'], true)).stopped);
  console.log(`  the command ends after Ctrl-C: ${waits.map(ms => `${ms.toFixed(0)} ms`).join(', ')}`);
}

function longestStep(evaluation: ReturnType<typeof exampleRun>['evaluation']): string {
  const { run } = riskRun(evaluation, { trials: TRIALS });
  let [progress, longest] = [{ done: 0, of: 1 } as RiskProgress, 0];
  while (run !== undefined && progress.result === undefined) {
    const started = performance.now();
    progress = run.step();
    longest = Math.max(longest, performance.now() - started);
  }
  return longest.toFixed(0);
}

/** Runs the risk command. @param interrupts whether Ctrl-C is sent as soon as it tells of its progress. */
async function command(words: readonly string[], interrupts = false) {
  const started = performance.now();
  const child = spawn(process.execPath, ['electron/reefwright.mjs', 'risk', FILE, ...words]);
  let [out, asked, megabytes] = ['', 0, 0];
  child.stdout.on('data', (text: Buffer) => (out += text.toString()));
  child.stderr.on('data', () => {
    if (!interrupts || asked > 0) return;
    asked = performance.now();
    child.kill('SIGINT');
  });
  const timer = setInterval(() => (megabytes = Math.max(megabytes, residentOf(child.pid))), 10);
  await new Promise(resolve => child.on('close', resolve));
  clearInterval(timer);
  return {
    out,
    megabytes,
    seconds: (performance.now() - started) / 1000,
    stopped: performance.now() - asked,
  };
}

/** The most memory a process has held, in millions of bytes, where the system tells it. */
function residentOf(pid: number | undefined): number {
  try {
    const kilobytes = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid ?? 0}/status`, 'utf8'))?.[1];
    return Math.round((Number(kilobytes ?? 0) * 1024) / 1e6);
  } catch {
    return 0;
  }
}
