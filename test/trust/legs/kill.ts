import { spawn, type ChildProcess } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { backupOf, KEPT_VERSIONS, sweepLeftovers } from '../../../electron/files/backups';
import { readJournal } from '../../../electron/files/journal';
import { sequence, type Leg } from '../leg';
import { wholeVersion } from '../version-text';

type Way = 'safely' | 'journal' | 'plainly';
const SIZE = 500_000;

/** Starts a saving program, kills it without warning after a while, and gives the last version it said was saved. */
function killed(way: Way, target: string, first: number, wait: number): Promise<number> {
  const saver = path.join(import.meta.dirname, 'saver.js');
  return new Promise(resolve => {
    const child = spawn(process.execPath, [saver, way, target, String(first), String(SIZE)], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let said = '';
    child.stdout.on('data', (bytes: Buffer) => {
      if (said === '') setTimeout(() => killAfter(child, (wait % 1) * SPREAD), wait);
      said += bytes.toString();
    });
    child.on('close', () => resolve(Number(said.split('\n').at(-2) ?? first - 1)));
  });
}

/** A save takes about a millisecond: kills are spread over two. */
const SPREAD = 2;

/**
 * Kills after a while that is spent awake. A timer alone would fire when the program says that something is saved, and so
 * nearly always at the same place of the next save.
 */
function killAfter(child: ChildProcess, milliseconds: number): void {
  const until = performance.now() + milliseconds;
  while (performance.now() < until);
  child.kill('SIGKILL');
}

interface Count {
  damaged: number;
  lost: number;
  stray: number;
  damagedBackups: number;
}

function damagedBackups(target: string): number {
  let count = 0;
  for (let age = 1; age <= KEPT_VERSIONS; age++) {
    const file = backupOf(target, age);
    if (fs.existsSync(file) && wholeVersion(fs.readFileSync(file, 'utf8')) === undefined) count++;
  }
  return count;
}

function textLeft(way: Way, target: string): string {
  if (way === 'journal') return readJournal(target)?.text ?? '';
  return fs.existsSync(target) ? fs.readFileSync(target, 'utf8') : '';
}

async function killOften(way: Way, kills: number): Promise<Count> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-kill-'));
  const target = path.join(folder, 'x.reef.json');
  const random = sequence(20270101);
  const count = { damaged: 0, lost: 0, stray: 0, damagedBackups: 0 };
  let next = 1;
  for (let kill = 0; kill < kills; kill++) {
    const last = await killed(way, target, next, random() * 25);
    const found = wholeVersion(textLeft(way, target));
    if (found === undefined) count.damaged++;
    else if (found < last) count.lost++;
    count.damagedBackups += damagedBackups(target);
    await sweepLeftovers(target);
    const known = /^(x\.reef\.json|\.x\.reef\.json\.before-\d)$/;
    count.stray += fs.readdirSync(folder).filter(name => !known.test(name)).length;
    next = Math.max(last, found ?? last) + 1;
  }
  fs.rmSync(folder, { recursive: true, force: true });
  return count;
}

const sum = (count: Count) => count.damaged + count.lost + count.stray + count.damagedBackups;
const told = (count: Count) =>
  `${count.damaged} damaged, ${count.lost} acknowledged saves lost, ${count.stray} stray files, ${count.damagedBackups} damaged earlier versions`;

export const killLegs: readonly Leg[] = [
  {
    name: 'kill during save',
    run: async long => {
      const kills = long ? 1000 : 60;
      const count = await killOften('safely', kills);
      return { ok: sum(count) === 0, words: `${kills} kills: ${told(count)}` };
    },
  },
  {
    name: 'kill during journal',
    run: async long => {
      const kills = long ? 1000 : 40;
      const count = await killOften('journal', kills);
      return { ok: sum(count) === 0, words: `${kills} kills: ${told(count)}` };
    },
  },
  {
    name: 'the control: plain overwriting',
    run: async long => {
      const kills = long ? 100 : 30;
      const { damaged } = await killOften('plainly', kills);
      return {
        ok: damaged >= kills / 10,
        words: `${damaged} of ${kills} damaged (at least ${kills / 10} expected, or the legs above prove nothing)`,
      };
    },
  },
];
