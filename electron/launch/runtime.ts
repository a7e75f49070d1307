import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

/** A day in milliseconds: how long a refused fetch is remembered. */
const DAY = 86_400_000;
/** How long the one attempt to fetch the runtime may take, in milliseconds. */
const PATIENCE = 90_000;

const PROGRAMS: Readonly<Record<string, string>> = {
  win32: 'electron.exe',
  darwin: 'Electron.app/Contents/MacOS/Electron',
};

/** The Electron program on disk, found without touching the `electron` module, whose import would start a download. */
export function electronOnDisk(modules: string, environment: NodeJS.ProcessEnv): string | undefined {
  const folder = environment['ELECTRON_OVERRIDE_DIST_PATH'] ?? path.join(modules, 'electron', 'dist');
  const program = PROGRAMS[process.platform];
  const target = path.join(folder, program ?? 'electron');
  return fs.existsSync(target) ? target : undefined;
}

const refusalSchema = z.strictObject({ refusedAt: z.number() });

/** Whether a fetch was refused within the last day. */
export function wasRefused(memory: string, now: number): boolean {
  try {
    const seen = refusalSchema.safeParse(JSON.parse(fs.readFileSync(memory, 'utf8')));
    return seen.success && now - seen.data.refusedAt < DAY && seen.data.refusedAt <= now;
  } catch {
    return false;
  }
}

export function rememberRefusal(memory: string, now: number): void {
  fs.mkdirSync(path.dirname(memory), { recursive: true });
  fs.writeFileSync(memory, JSON.stringify({ refusedAt: now }));
}

/** Runs Electron's own installer once. Whether the runtime is there afterwards is for the caller to look. */
export function fetchRuntime(modules: string, patience = PATIENCE): void {
  const installer = path.join(modules, 'electron', 'install.js');
  if (!fs.existsSync(installer)) return;
  spawnSync(process.execPath, [installer], { stdio: 'ignore', timeout: patience });
}
