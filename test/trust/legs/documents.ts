import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { evaluate } from '../../../core/evaluation';
import { readProject, writeProject } from '../../../core/project';
import { readDocument } from '../../../electron/files/read-document';
import { HostProblem } from '../../../electron/problem';
import { spread, type Leg, type Outcome } from '../leg';
import { documentBombs } from './bombs';
import { mutants } from './mutants';

interface Tally {
  opened: number;
  refused: number;
  wrong: string[];
  times: number[];
}

/** Opens one document from bytes, as the program does, and tells what should not have happened. */
async function open(bytes: Buffer, file: string, original: string, tally: Tally): Promise<void> {
  fs.writeFileSync(file, bytes);
  const begun = performance.now();
  try {
    const read = readProject(await readDocument(file));
    if (read.project === undefined) {
      tally.refused++;
      if (read.findings.some(finding => finding.message === '' || finding.remedy === ''))
        tally.wrong.push('a refusal without words');
    } else {
      tally.opened++;
      const isSilent = read.findings.length === 0;
      const carriesSum = bytes.includes('"sha256"');
      if (isSilent && carriesSum && writeProject(read.project) !== original)
        tally.wrong.push('a silent change');
    }
  } catch (cause) {
    tally.refused++;
    if (!(cause instanceof HostProblem)) tally.wrong.push(`a raw fault: ${String(cause)}`);
  }
  const time = performance.now() - begun;
  tally.times.push(time);
  if (time > 1000) tally.wrong.push(`took ${time.toFixed(0)} ms`);
}

async function mutatedDocuments(long: boolean): Promise<Outcome> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-mutants-'));
  const file = path.join(folder, 'x.reef.json');
  const original = fs.readFileSync('demo/wrenfield.reef.json', 'utf8');
  const project = readProject(original).project;
  if (project === undefined) return { ok: false, words: 'the example does not open' };
  const small = writeProject({ ...project, items: [], quotes: [], scenarios: project.scenarios.slice(0, 1) });
  const count = long ? 10_000 : 1000;
  const tally: Tally = { opened: 0, refused: 0, wrong: [], times: [] };
  for (const [text, share] of [[writeProject(project), 0.5] as const, [small, 0.5] as const])
    for (const bytes of mutants(text, count * share, 7)) await open(bytes, file, text, tally);
  fs.rmSync(folder, { recursive: true, force: true });
  return {
    ok: tally.wrong.length === 0,
    words: `${count} mutated documents: ${tally.opened} opened, ${tally.refused} refused in words, ${tally.wrong.length} wrong ${tally.wrong.slice(0, 3).join('; ')}; ${spread(tally.times)}`,
  };
}

/** What opens is also worked out: a fault of the data is a finding, never a fault of the program. */
async function evaluatedMutants(long: boolean): Promise<Outcome> {
  const original = fs.readFileSync('demo/wrenfield.reef.json', 'utf8');
  const wrong: string[] = [];
  let evaluated = 0;
  for (const bytes of mutants(original, long ? 700 : 70, 11)) {
    const { project } = readProject(bytes.toString('utf8'));
    if (project === undefined) continue;
    evaluated++;
    try {
      evaluate(project, { today: '2027-01-04', seed: 1, schedules: 10, upright: evaluated % 5 === 0 });
    } catch (cause) {
      wrong.push(String(cause).slice(0, 200));
    }
    await Promise.resolve();
  }
  return {
    ok: wrong.length === 0 && evaluated > 0,
    words: `${evaluated} mutated documents that open were worked out, ${wrong.length} faults ${wrong.slice(0, 3).join('; ')}`,
  };
}

async function bombs(): Promise<Outcome> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-bombs-'));
  const file = path.join(folder, 'x.reef.json');
  const wrong: string[] = [];
  let worstTime = 0;
  let worstMemory = 0;
  let count = 0;
  for (const [name, make] of documentBombs) {
    fs.writeFileSync(file, make());
    globalThis.gc?.();
    const before = process.memoryUsage().rss;
    const begun = performance.now();
    const isOpened = await opens(file, wrong, name);
    const time = performance.now() - begun;
    const memory = process.memoryUsage().rss - before;
    worstTime = Math.max(worstTime, time);
    worstMemory = Math.max(worstMemory, memory);
    if (time > 1000 || memory > 100 * 1024 * 1024)
      wrong.push(`${name} took ${time.toFixed(0)} ms and ${(memory / 1024 / 1024).toFixed(0)} MB`);
    if (isOpened) wrong.push(`${name} was opened`);
    count++;
  }
  fs.rmSync(folder, { recursive: true, force: true });
  const megabytes = worstMemory / 1024 / 1024;
  return {
    ok: wrong.length === 0 && worstTime < 1000 && megabytes < 100,
    words: `${count} crafted documents refused, the longest in ${worstTime.toFixed(0)} ms and ${megabytes.toFixed(0)} MB ${wrong.slice(0, 6).join('; ')}`,
  };
}

async function opens(file: string, wrong: string[], name: string): Promise<boolean> {
  try {
    return readProject(await readDocument(file)).project !== undefined;
  } catch (cause) {
    if (!(cause instanceof HostProblem)) wrong.push(`${name}: raw fault ${String(cause)}`);
    return false;
  }
}

export const documentLegs: readonly Leg[] = [
  { name: 'mutated documents', run: mutatedDocuments },
  { name: 'mutated documents worked out', run: evaluatedMutants },
  { name: 'crafted documents', run: bombs },
];
