import fs from 'node:fs';
import path from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import type { ChannelMap } from '../../electron/host';
import { backupOf } from '../../electron/files/backups';
import { documentFileName } from '../../electron/files/file-name';
import { newFolder, realChannels } from './support';

let folder: string;
let channels: ChannelMap;

beforeEach(() => {
  folder = newFolder();
  channels = realChannels(folder);
});

async function value(name: string, question: unknown): Promise<Record<string, unknown>> {
  const reply = await channels.get(name)?.answer(question);
  if (reply?.ok !== true) throw new Error(JSON.stringify(reply));
  return reply.value as Record<string, unknown>;
}

const inDocuments = (name: string) => path.join(folder, 'documents', name);

test('a document saved under a name lies in the documents folder and is listed, opened and saved again', async () => {
  const saved = await value('save-document-as', { name: 'Reef one', text: '{"a":1}', replace: false });
  expect(fs.readFileSync(inDocuments('Reef one.reef.json'), 'utf8')).toBe('{"a":1}');
  const list = await value('open-document', {});
  expect(list).toMatchObject({
    kind: 'choose',
    documents: [{ id: saved['id'], name: 'Reef one.reef.json', missing: false }],
  });
  const opened = await value('open-listed', { id: saved['id'] });
  expect(opened).toMatchObject({
    kind: 'opened',
    document: { name: 'Reef one.reef.json', text: '{"a":1}', readOnly: false },
  });
  await value('save-document', { id: saved['id'], text: '{"a":2}', overwrite: false });
  expect(fs.readFileSync(inDocuments('Reef one.reef.json'), 'utf8')).toBe('{"a":2}');
});

test('the version before the last save is kept beside the file, and no temporary file is left', async () => {
  const { id } = await value('save-document-as', { name: 'kept', text: 'one', replace: false });
  await value('save-document', { id, text: 'two', overwrite: false });
  expect(fs.readFileSync(backupOf(inDocuments('kept.reef.json')), 'utf8')).toBe('one');
  expect(fs.readdirSync(path.join(folder, 'documents')).sort()).toEqual([
    '.kept.reef.json.before-1',
    'kept.reef.json',
    '~$kept.reef.json.lock',
  ]);
});

test('a name that is taken is not replaced unless asked twice', async () => {
  await value('save-document-as', { name: 'twice', text: 'one', replace: false });
  expect(await value('save-document-as', { name: 'twice', text: 'two', replace: false })).toEqual({
    kind: 'name-taken',
  });
  expect(fs.readFileSync(inDocuments('twice.reef.json'), 'utf8')).toBe('one');
  expect(await value('save-document-as', { name: 'twice', text: 'two', replace: true })).toMatchObject({
    kind: 'saved',
  });
});

test('a file that someone else changed is not overwritten without asking', async () => {
  const { id } = await value('save-document-as', { name: 'shared', text: 'mine', replace: false });
  fs.writeFileSync(inDocuments('shared.reef.json'), 'theirs');
  expect(await value('save-document', { id, text: 'mine again', overwrite: false })).toEqual({
    kind: 'changed-outside',
  });
  expect(fs.readFileSync(inDocuments('shared.reef.json'), 'utf8')).toBe('theirs');
  expect(await value('save-document', { id, text: 'mine again', overwrite: true })).toMatchObject({
    kind: 'saved',
  });
});

test('a link is kept and its target is replaced', async () => {
  const { id } = await value('save-document-as', { name: 'linked', text: 'one', replace: false });
  const real = path.join(folder, 'elsewhere.reef.json');
  fs.renameSync(inDocuments('linked.reef.json'), real);
  fs.symlinkSync(real, inDocuments('linked.reef.json'));
  await value('save-document', { id, text: 'two', overwrite: false });
  expect(fs.lstatSync(inDocuments('linked.reef.json')).isSymbolicLink()).toBe(true);
  expect(fs.readFileSync(real, 'utf8')).toBe('two');
});

test('bytes that are not UTF-8 text are refused, not repaired', async () => {
  const { id } = await value('save-document-as', { name: 'bytes', text: 'x', replace: false });
  fs.writeFileSync(inDocuments('bytes.reef.json'), Buffer.from([0x7b, 0xff, 0xfe, 0x7d]));
  const reply = await channels.get('open-listed')?.answer({ id });
  expect(reply).toMatchObject({ ok: false, problem: { code: 'file/not-text' } });
});

test('unsaved work is kept, listed, read and let go', async () => {
  const key = 'a1b2c3d4e5f6';
  await channels.get('write-recovery')?.answer({ key, name: 'n.reef.json', text: '{"x":1}', id: '' });
  expect(await value('list-recovery', {})).toMatchObject([{ key, name: 'n.reef.json' }]);
  expect(await value('read-recovery', { key })).toMatchObject({ text: '{"x":1}', id: '' });
  await channels.get('discard-recovery')?.answer({ key });
  expect(await value('list-recovery', {})).toEqual([]);
});

test('settings come back as they were written, and damaged ones count as absent', async () => {
  const settings = {
    theme: 'dark',
    zoom: 125,
    measures: 'metric',
    ran: [{ plan: 'a1', scenarios: ['base'] }],
  };
  await value('write-settings', settings);
  expect(await value('read-settings', {})).toEqual(settings);
  fs.writeFileSync(
    path.join(folder, 'app', 'settings.json'),
    '{"theme":"dark","zoom":125,"measures":"metric"}',
  );
  expect(await value('read-settings', {})).toEqual({ ...settings, ran: [] });
  fs.writeFileSync(path.join(folder, 'app', 'settings.json'), '{"theme":"purple"');
  expect(await value('read-settings', {})).toEqual({ theme: 'system', zoom: 100, measures: 'us', ran: [] });
});

test.each([
  ['plain', 'plain.reef.json'],
  ['plain.reef.json', 'plain.reef.json'],
  ['../../etc/passwd', 'etc passwd.reef.json'],
  ['C:\\x\\y', 'C x y.reef.json'],
  ['con', 'project con.reef.json'],
  ['...', 'project.reef.json'],
  ['a\u0000b\u202egnp', 'a b gnp.reef.json'],
  ['é', 'é.reef.json'],
])('the name %j becomes the file %j', (name, file) => {
  expect(documentFileName(name)).toBe(file);
  expect(path.basename(documentFileName(name))).toBe(documentFileName(name));
});
