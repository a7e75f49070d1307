import { spawnSync } from 'node:child_process';
import path from 'node:path';
import type { Leg, Outcome } from '../leg';

const ZONES = ['UTC', 'America/New_York', 'Pacific/Kiritimati'];

/** The same document gives the same bytes wherever the machine stands. */
function everywhere(): Outcome {
  const program = path.join(import.meta.dirname, 'zone.js');
  const told = ZONES.map(TZ =>
    spawnSync(process.execPath, [program], { encoding: 'utf8', env: { ...process.env, TZ } }),
  );
  const [first] = told;
  const scenarios = first?.stdout.trim().split('\n').length ?? 0;
  const isSame = told.every(run => run.status === 0 && run.stdout === first?.stdout);
  return {
    ok: isSame && scenarios > 1,
    words: `${scenarios} scenarios in ${ZONES.join(', ')}: ${isSame ? 'the same bytes' : told.map(run => `${run.stdout}${run.stderr.slice(0, 200)}`).join(' | ')}`,
  };
}

export const zoneLegs: readonly Leg[] = [{ name: 'time zones', run: () => Promise.resolve(everywhere()) }];
