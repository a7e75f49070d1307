import { expect, test } from 'vitest';
import { CHANNEL_NAMES, newFolder, realChannels } from './support';

const channels = realChannels(newFolder());

test('the host serves exactly the closed list of channels', () => {
  expect([...channels.keys()]).toEqual(CHANNEL_NAMES);
});

const HOSTILE: readonly unknown[] = [
  undefined,
  null,
  42,
  'text',
  [],
  { path: '/etc/passwd' },
  { id: '../../etc/passwd' },
  { id: 'f'.repeat(24), path: '/etc/passwd' },
  JSON.parse('{"__proto__":{"polluted":true}}'),
  { constructor: {} },
];

test.each(CHANNEL_NAMES)(
  'channel %s refuses questions of another shape before its handler runs',
  async name => {
    for (const question of HOSTILE) {
      const reply = await channels.get(name)?.answer(question);
      expect(reply?.ok, JSON.stringify(question)).toBe(false);
    }
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  },
);

test('no question has a field for a path', async () => {
  for (const field of ['path', 'file', 'folder', 'directory', 'target']) {
    for (const name of CHANNEL_NAMES) {
      expect((await channels.get(name)?.answer({ [field]: '/tmp/x' }))?.ok).toBe(false);
    }
  }
});

test('an id that was never handed out opens and saves nothing', async () => {
  const id = '0'.repeat(24);
  const opened = await channels.get('open-listed')?.answer({ id });
  const saved = await channels.get('save-document')?.answer({ id, text: '{}', overwrite: true });
  expect([opened, saved]).toMatchObject([
    { ok: false, problem: { code: 'file/unknown' } },
    { ok: false, problem: { code: 'file/unknown' } },
  ]);
});

test('a sample is named by a key, never by a path', async () => {
  for (const sample of ['../secret', 'a/b', '..', 'A', '']) {
    expect((await channels.get('read-sample')?.answer({ sample }))?.ok).toBe(false);
  }
});
