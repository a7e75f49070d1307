/** How fast the columns of a sheet run: prints live steps, draws and trials a second. Run with vite-node or after bundling. */
import { columns, evaluateSheet } from '../../core/sheet';
import { exampleItems, exampleSheet } from '../core/sheet/example';

const BATCH = Number(process.env['BATCH'] ?? 256);
const UNCERTAIN = ['taken', 'production', 'crewRate', 'stuffRate', 'tonnesPer'];

function speed(lines: number, perLine: number): void {
  const items = exampleItems(lines);
  const { sheet, grand } = exampleSheet(items);
  const started = performance.now();
  const result = evaluateSheet(sheet);
  const exactMs = performance.now() - started;
  const inputs = new Map<string, Float64Array>();
  for (const item of items)
    for (const key of UNCERTAIN.slice(0, perLine)) {
      const id = `lines/${item.id}/${key}`;
      const base = result.figure(id).number ?? NaN;
      inputs.set(
        id,
        Float64Array.from({ length: BATCH }, (_, i) => base * (0.8 + (0.4 * i) / BATCH)),
      );
    }
  const plan = columns(result, { inputs, keep: [result.at(grand).id], batch: BATCH });
  for (let i = 0; i < 40; i++) plan.run(BATCH);
  const runs = Math.ceil(40_000 / BATCH);
  const rates = Array.from({ length: 5 }, () => {
    const t0 = process.cpuUsage().user;
    for (let i = 0; i < runs; i++) plan.run(BATCH);
    return (runs * BATCH * 1e6) / (process.cpuUsage().user - t0);
  });
  const best = Math.max(...rates);
  console.log(
    `${lines} lines, ${perLine} uncertain a line (${inputs.size} draws): ${plan.liveSteps} live steps ` +
      `(${(plan.liveSteps / lines).toFixed(1)} a line), ${Math.round(best)} trials/s, ` +
      `${(1e9 / best / plan.liveSteps).toFixed(2)} ns a step, exact ${exactMs.toFixed(1)} ms, ${plan.bytes} bytes`,
  );
}

for (const perLine of [1, 5]) speed(200, perLine);
speed(300, 5);
speed(3000, 5);
