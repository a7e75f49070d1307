/**
 * How fast the columns of a sheet run, and the same arithmetic in C: prints live steps, draws and trials a
 * second. Bundle it, then run it with Node in the project's folder.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { columns, evaluateSheet } from '../../core/sheet';
import { exampleItems, exampleSheet } from '../core/sheet/example';

const BATCH = Number(process.env['BATCH'] ?? 256);
const UNCERTAIN = ['taken', 'production', 'crewRate', 'stuffRate', 'tonnesPer'];

/** Trials a second of processor time, the best of seven goes. */
function speed(lines: number, perLine: number): number {
  const items = exampleItems(lines);
  const { sheet, grand } = exampleSheet(items, true);
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
  const rates = Array.from({ length: 7 }, () => {
    const before = process.cpuUsage().user;
    for (let i = 0; i < runs; i++) plan.run(BATCH);
    return (runs * BATCH * 1e6) / (process.cpuUsage().user - before);
  });
  const rate = Math.max(...rates);
  console.log(
    `${lines} lines, ${perLine} uncertain a line (${inputs.size} draws, not counted): ${plan.liveSteps} live steps ` +
      `(${(plan.liveSteps / lines).toFixed(1)} a line), ${Math.round(rate)} trials/s, ` +
      `${(1e9 / rate / plan.liveSteps).toFixed(2)} ns a step, first exact evaluation ${exactMs.toFixed(1)} ms, ` +
      `arrays ${plan.bytes} bytes`,
  );
  return rate;
}

/** The same arithmetic in C: trials a second. */
function speedInC(perLine: number, flags: readonly string[]): number {
  const program = join(mkdtempSync(join(tmpdir(), 'sheet-bench-')), 'sheet');
  execFileSync('gcc', ['-O3', ...flags, join('test', 'bench', 'sheet.c'), '-o', program, '-lm']);
  return Number(execFileSync(program, [String(perLine)], { encoding: 'utf8' }).split(' ')[0]);
}

for (const perLine of [1, 5]) {
  const ours = speed(200, perLine);
  for (const flags of [[], ['-march=native']]) {
    const inC = speedInC(perLine, flags);
    console.log(
      `  C -O3 ${flags.join(' ')}: ${Math.round(inC)} trials/s, ${(inC / ours).toFixed(2)} times ours`,
    );
  }
}
speed(300, 5);
speed(3000, 5);
