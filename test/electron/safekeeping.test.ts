import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import type { ChannelMap } from '../../electron/host';
import { saveAtomically } from '../../electron/files/atomic-save';
import { backupOf, KEPT_VERSIONS } from '../../electron/files/backups';
import { difference, Journal, readJournal, replay } from '../../electron/files/journal';
import { holderOf, lockOf, STALE_AFTER } from '../../electron/files/lock';
import { newFolder, realChannels } from './support';

let folder: string;
let channels: ChannelMap;

beforeEach(() => {
  folder = newFolder();
  channels = realChannels(folder);
});

async function value(name: string, question: unknown, of = channels): Promise<Record<string, unknown>> {
  const reply = await of.get(name)?.answer(question);
  if (reply?.ok !== true) throw new Error(JSON.stringify(reply));
  return reply.value as Record<string, unknown>;
}

const inDocuments = (name: string) => path.join(folder, 'documents', name);
const textOf = (file: string) => fs.readFileSync(file, 'utf8');

describe('earlier versions', () => {
  test('the last five are kept, the newest first, and no sixth', async () => {
    const target = path.join(folder, 'a.reef.json');
    for (let n = 1; n <= 8; n++) await saveAtomically(target, `version ${n}`, 'versions');
    expect(textOf(target)).toBe('version 8');
    const kept = Array.from({ length: KEPT_VERSIONS }, (_, age) => textOf(backupOf(target, age + 1)));
    expect(kept).toEqual(['version 7', 'version 6', 'version 5', 'version 4', 'version 3']);
    expect(fs.existsSync(backupOf(target, KEPT_VERSIONS + 1))).toBe(false);
  });

  test('what an interrupted save left is cleared away when the document is opened, and nothing else', async () => {
    const { id } = await value('save-document-as', { name: 'x', text: 'one', replace: false });
    await value('close-document', { id });
    const target = inDocuments('x.reef.json');
    for (const left of [`${target}.123456`, `${backupOf(target)}.new`]) fs.writeFileSync(left, 'half');
    for (const mine of [`${target}.copy`, `${target}.2027a`, inDocuments('y.reef.json.77')])
      fs.writeFileSync(mine, 'mine');
    await value('open-listed', { id });
    expect(fs.readdirSync(path.join(folder, 'documents')).sort()).toEqual([
      'x.reef.json',
      'x.reef.json.2027a',
      'x.reef.json.copy',
      'y.reef.json.77',
      '~$x.reef.json.lock',
    ]);
  });

  test('the copy in an older format is kept for good when a newer one is saved over it', async () => {
    const target = path.join(folder, 'a.reef.json');
    await saveAtomically(target, '{"format":"reefwright-project","version": 1}', 'versions');
    for (let n = 0; n < 7; n++)
      await saveAtomically(target, `{"format":"reefwright-project","version": 2,"n":${n}}`, 'versions');
    expect(textOf(path.join(folder, '.a.reef.json.format-1'))).toContain('"version": 1');
  });
});

describe('two people and one document', () => {
  test('the second opens it for reading only and is told who has it', async () => {
    const { id } = await value('save-document-as', { name: 'x', text: 'one', replace: false });
    const second = realChannels(folder);
    const listed = await value('open-document', {}, second);
    const there = (listed['documents'] as { id: string }[])[0]?.id ?? '';
    const opened = await value('open-listed', { id: there }, second);
    expect(opened).toMatchObject({
      document: { readOnly: true, heldBy: `${os.userInfo().username} on ${os.hostname()}` },
    });
    expect(await value('save-document', { id: there, text: 'two', overwrite: false }, second)).toEqual({
      kind: 'changed-outside',
    });
    expect(textOf(inDocuments('x.reef.json'))).toBe('one');
    await value('close-document', { id });
    expect(await value('open-listed', { id: there }, second)).toMatchObject({
      document: { readOnly: false },
    });
  });

  test('a document that was taken over is not written by the first without asking', async () => {
    const { id } = await value('save-document-as', { name: 'x', text: 'one', replace: false });
    const second = realChannels(folder);
    const listed = await value('open-document', {}, second);
    const there = (listed['documents'] as { id: string }[])[0]?.id ?? '';
    expect(await value('take-over', { id: there }, second)).toMatchObject({ document: { readOnly: false } });
    fs.writeFileSync(
      lockOf(inDocuments('x.reef.json')),
      JSON.stringify({ user: 'second', host: os.hostname(), pid: process.pid, since: 'now' }),
    );
    expect(await value('save-document', { id, text: 'first again', overwrite: false })).toEqual({
      kind: 'changed-outside',
    });
    expect(textOf(inDocuments('x.reef.json'))).toBe('one');
  });

  test.each([
    ['of a program that ended', { pid: 2 ** 22 + 1 }, 0],
    ['not touched for a minute', { pid: process.pid }, STALE_AFTER + 1000],
  ])('a lock %s does not hold a document', (_words, { pid }, age) => {
    const target = path.join(folder, 'x.reef.json');
    const owner = { user: 'u', host: os.hostname(), pid, since: '2027-01-01' };
    fs.writeFileSync(lockOf(target), JSON.stringify(owner));
    expect(holderOf(target, Date.now() + age)).toBeUndefined();
  });

  test('a lock of another machine holds it while it is fresh; a damaged lock holds nothing', () => {
    const target = path.join(folder, 'x.reef.json');
    fs.writeFileSync(lockOf(target), JSON.stringify({ user: 'u', host: 'elsewhere', pid: 1, since: '' }));
    expect(holderOf(target)).toMatchObject({ user: 'u', host: 'elsewhere' });
    for (const damaged of ['', '{', '{"user":1}', '[]', '\u0000'.repeat(40)]) {
      fs.writeFileSync(lockOf(target), damaged);
      expect(holderOf(target)).toBeUndefined();
    }
  });
});

describe('the journal of unsaved work', () => {
  const origin = { place: '', base: '' };

  test('any sequence of texts is read back as its last one', async () => {
    const texts = fc.array(fc.string({ unit: 'grapheme', maxLength: 60 }), { minLength: 1, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(texts, async sequence => {
        const file = path.join(newFolder(), 'a.journal');
        const journal = new Journal(file);
        for (const text of sequence) await journal.keep('n', text, origin);
        expect(readJournal(file)).toMatchObject({ text: sequence.at(-1), torn: false });
      }),
      { numRuns: 60 },
    );
  });

  test('the difference of two texts, applied, gives the second', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', '😀'), maxLength: 12 });
    fc.assert(
      fc.property(text, text, (old, fresh) => {
        const { from, cut, put } = difference(old, fresh);
        expect(old.slice(0, from) + put + old.slice(from + cut)).toBe(fresh);
      }),
      { numRuns: 2000 },
    );
  });

  test('cut at any byte it loses at most the entry that was torn, and never fails', async () => {
    const file = path.join(folder, 'a.journal');
    const journal = new Journal(file);
    const ends: number[] = [];
    const texts = ['{"é":1}', '{"é":12}', '{"é":12,"b":"😀"}', '{"b":"😀"}'];
    for (const text of texts) {
      await journal.keep('n', text, origin);
      ends.push(fs.statSync(file).size);
    }
    const bytes = fs.readFileSync(file);
    for (let length = 0; length <= bytes.length; length++) {
      const whole = ends.filter(end => end <= length).length;
      const got = replay(bytes.subarray(0, length).toString('utf8'));
      expect(got?.text, `${length} bytes`).toBe(texts[whole - 1]);
      expect(got?.torn ?? false, `${length} bytes`).toBe(whole > 0 && !ends.includes(length));
    }
  });

  test('one altered byte anywhere gives an earlier state or nothing, never a mixture', async () => {
    const file = path.join(folder, 'a.journal');
    const journal = new Journal(file);
    const texts = ['{"a":1}', '{"a":12}', '{"a":123}'];
    for (const text of texts) await journal.keep('n', text, origin);
    const bytes = fs.readFileSync(file);
    for (let at = 0; at < bytes.length; at++) {
      const altered = Buffer.from(bytes);
      altered[at] = (altered[at] ?? 0) ^ 1;
      const text = replay(altered.toString('utf8'))?.text;
      expect([undefined, ...texts], `byte ${at}`).toContain(text);
    }
  });

  test('it stays short: after many edits it starts again from the whole text', async () => {
    const file = path.join(folder, 'a.journal');
    const journal = new Journal(file);
    let largest = 0;
    for (let n = 0; n < 400; n++) {
      await journal.keep('n', `${n} ${'x'.repeat(n % 2 === 0 ? 2000 : 2500)}`, origin);
      largest = Math.max(largest, fs.statSync(file).size);
    }
    expect(readJournal(file)?.text.startsWith('399 ')).toBe(true);
    expect(largest).toBeLessThan(4 * 2600 + 65_536 + 6000);
  });

  test('work that was saved in the meantime is not offered; a file someone changed is told', async () => {
    const { id } = await value('save-document-as', { name: 'x', text: '{"a":1}', replace: false });
    const key = 'a1b2c3d4e5f6';
    await value('write-recovery', { key, name: 'x', text: '{"a":2}', id });
    expect(await value('list-recovery', {})).toMatchObject([{ key, changedSince: false }]);
    fs.writeFileSync(inDocuments('x.reef.json'), '{"theirs":1}');
    expect(await value('list-recovery', {})).toMatchObject([{ key, changedSince: true }]);
    fs.writeFileSync(inDocuments('x.reef.json'), '{"a":2}');
    expect(await value('list-recovery', {})).toEqual([]);
  });

  test('work that is let go lies in the program’s folder for two weeks', async () => {
    const key = 'a1b2c3d4e5f6';
    await value('write-recovery', { key, name: 'x', text: '{"a":2}', id: '' });
    await value('discard-recovery', { key });
    const kept = path.join(folder, 'app', 'recovery', 'let-go', `${key}.journal`);
    expect(readJournal(kept)?.text).toBe('{"a":2}');
    const old = new Date(Date.now() - 15 * 24 * 3600 * 1000);
    fs.utimesSync(kept, old, old);
    realChannels(folder);
    expect(fs.existsSync(kept)).toBe(false);
  });
});
