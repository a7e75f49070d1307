import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const CHROMIUM = process.env['REEFWRIGHT_CHROMIUM'] ?? '/usr/bin/chromium';

export const SWITCHES = [
  '--headless',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A loopback host without a window, with folders of its own, and the address it serves. */
export async function startedHost(
  words: readonly string[] = [],
): Promise<{ readonly address: string; readonly stop: () => void }> {
  const base = mkdtempSync(join(tmpdir(), 'host-'));
  const host = spawn(process.execPath, ['dist/electron/start.js', '--no-open', '--folder', base, ...words], {
    env: { ...process.env, REEFWRIGHT_FOLDER: join(base, 'app') },
  });
  const stop = () => {
    host.kill();
    rmSync(base, { recursive: true, force: true });
  };
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    host.stdout.on('data', (part: Buffer) => {
      said += part.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/#\S+/.exec(said);
      if (found !== null) resolve(found[0]);
    });
    host.on('exit', code => reject(new Error(`the host ended with ${code}: ${said}`)));
  });
  return { address, stop };
}
