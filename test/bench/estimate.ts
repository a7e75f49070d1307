/**
 * How long a re-estimate of the example takes: its two sheets with the schedule held, at its own length and with every
 * work item four times, and the whole evaluation, checks too, with 200 and 1,000 schedules.
 */
import { readFileSync } from 'node:fs';
import { moneySheet, workSheet } from '../../core/estimate';
import { evaluate, itemTimings, pricedGeneration, shippedLibrary } from '../../core/evaluation';
import { readProject } from '../../core/project';

const WARM_UP = 6;
const FILE = 'demo/wrenfield.reef.json';
const TODAY = '2026-11-24';

/** Prints the median, the 95th percentile and the least time of a run, and its processor time. */
function measure(name: string, runs: number, run: () => void): void {
  for (let i = 0; i < Math.min(WARM_UP, runs); i++) run();
  const before = process.cpuUsage();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const { user, system } = process.cpuUsage(before);
  const at = (share: number) => (times[Math.max(0, Math.ceil(share * runs) - 1)] ?? Number.NaN).toFixed(1);
  const cpu = ((user + system) / 1000 / runs).toFixed(1);
  console.log(`${name}: median ${at(0.5)} ms, p95 ${at(0.95)} ms, least ${at(0)} ms, processor ${cpu} ms`);
}

/** `npm run bench -- estimate`. */
export function estimate(): Promise<number> {
  const { project } = readProject(readFileSync(FILE, 'utf8'));
  if (project === undefined) return Promise.resolve(1);
  const library = shippedLibrary();
  const whole = (schedules: number) =>
    evaluate(project, { today: TODAY, seed: 1, schedules, upright: false }).estimate;
  const parts = whole(1);
  if (parts === undefined) return Promise.resolve(1);
  const { input, planned, schedule, generator } = parts;
  const drivers = library.drivers.filter(driver => parts.work.drivers.scope.index.has(driver.id));
  const timings = itemTimings(planned, schedule, input.prices);
  const generation = generator && pricedGeneration(input.library, generator);
  for (const times of [1, 4]) {
    const copies = Array.from({ length: times }, (_, i) => (i === 0 ? '' : `.${i}`));
    const items = copies.flatMap(copy => parts.items.map(item => ({ ...item, id: `${item.id}${copy}` })));
    const held = new Map(
      copies.flatMap(copy => [...timings].map(([id, timing]) => [`${id}${copy}`, timing])),
    );
    measure(`both sheets, schedule held, ${items.length} work items`, 40, () => {
      moneySheet(input, workSheet(input, drivers, items), held, new Map(), generation);
    });
  }
  for (const schedules of [200, 1000])
    measure(`whole evaluation with ${schedules} schedules`, 3, () => void whole(schedules));
  return Promise.resolve(0);
}
