import fs from 'node:fs';
import path from 'node:path';
import { expect, test, vi } from 'vitest';
import { chooseWindow, readStartWords, type Surroundings } from '../../electron/launch/choice';
import { chromiumSwitches } from '../../electron/launch/chromium';
import { watchPresence } from '../../electron/launch/presence';
import { electronOnDisk, rememberRefusal, wasRefused } from '../../electron/launch/runtime';
import { newFolder } from './support';

function around(part: Partial<Surroundings> = {}): Surroundings & { said: string[]; done: string[] } {
  const said: string[] = [];
  const done: string[] = [];
  return {
    electron: () => undefined,
    wasRefused: () => false,
    fetch: () => done.push('fetch'),
    remember: () => done.push('remember'),
    chromium: () => '/usr/bin/chromium',
    say: line => said.push(line),
    said,
    done,
    ...part,
  };
}

test('the Electron runtime is taken when it is on disk', () => {
  const here = around({ electron: () => '/e' });
  expect(chooseWindow(readStartWords([]), here)).toMatchObject({ kind: 'electron', program: '/e' });
  expect(here.done).toEqual([]);
});

test('a missing runtime is fetched once, says so, and falls back to a Chromium window', () => {
  const here = around();
  expect(chooseWindow(readStartWords([]), here)).toMatchObject({ kind: 'chromium' });
  expect(here.done).toEqual(['fetch', 'remember']);
  expect(here.said.join(' ')).toMatch(/Trying once to fetch/);
});

test('a refusal within a day is not tried again', () => {
  const here = around({ wasRefused: () => true });
  expect(chooseWindow(readStartWords([]), here)).toMatchObject({ kind: 'chromium' });
  expect(here.done).toEqual([]);
});

test('a runtime that was fetched is used', () => {
  let isThere = false;
  const here = around({ electron: () => (isThere ? '/e' : undefined), fetch: () => (isThere = true) });
  expect(chooseWindow(readStartWords([]), here)).toMatchObject({
    kind: 'electron',
    why: 'the Electron runtime was fetched',
  });
});

test('--browser skips the fetch and --no-open opens nothing', () => {
  const here = around({ electron: () => '/e' });
  expect(chooseWindow(readStartWords(['--browser']), here)).toMatchObject({ kind: 'chromium' });
  expect(chooseWindow(readStartWords(['--no-open']), here)).toMatchObject({ kind: 'address-only' });
  expect(here.done).toEqual([]);
});

test('without any Chromium the system’s own browser is asked', () => {
  expect(chooseWindow(readStartWords(['--browser']), around({ chromium: () => undefined })).kind).toBe(
    'default-browser',
  );
});

test('the words of the command line name a file and a folder', () => {
  expect(readStartWords(['--folder', '/docs', 'a.reef.json', '--no-open'])).toEqual({
    browser: false,
    open: false,
    file: 'a.reef.json',
    folder: '/docs',
  });
});

test('a file alone is opened', () => {
  expect(readStartWords(['a.reef.json'])).toMatchObject({
    file: 'a.reef.json',
    folder: undefined,
    open: true,
  });
  expect(readStartWords(['--browser', 'a.reef.json']).file).toBe('a.reef.json');
  expect(readStartWords(['--folder', '/docs']).file).toBeUndefined();
});

test('a refusal is remembered for a day, and one from the future is not believed', () => {
  const memory = path.join(newFolder(), 'deep', 'refused.json');
  const now = 1_800_000_000_000;
  expect(wasRefused(memory, now)).toBe(false);
  rememberRefusal(memory, now);
  expect(wasRefused(memory, now + 86_399_000)).toBe(true);
  expect(wasRefused(memory, now + 86_401_000)).toBe(false);
  expect(wasRefused(memory, now - 1000)).toBe(false);
  fs.writeFileSync(memory, 'damaged');
  expect(wasRefused(memory, now)).toBe(false);
});

test('the runtime is looked for on disk and named by the environment', () => {
  const folder = newFolder();
  expect(electronOnDisk(folder, {})).toBeUndefined();
  fs.writeFileSync(path.join(folder, 'electron'), '');
  if (process.platform === 'linux') {
    expect(electronOnDisk('/nowhere', { ELECTRON_OVERRIDE_DIST_PATH: folder })).toBe(
      path.join(folder, 'electron'),
    );
  }
});

test('the sandbox of Chromium is off for root only', () => {
  expect(chromiumSwitches('http://127.0.0.1:1/', '/p', false)).not.toContain('--no-sandbox');
  expect(chromiumSwitches('http://127.0.0.1:1/', '/p', true)).toContain('--no-sandbox');
  expect(chromiumSwitches('http://127.0.0.1:1/', '/p', false)).toContain('--user-data-dir=/p');
});

test('the host ends soon after a goodbye, late after silence, and not when the page is loaded again', () => {
  vi.useFakeTimers();
  const ended = vi.fn();
  const presence = watchPresence(ended, 150_000, 6_000);
  vi.advanceTimersByTime(1_000_000);
  expect(ended).not.toHaveBeenCalled();
  presence.note('here');
  vi.advanceTimersByTime(149_000);
  presence.note('gone');
  vi.advanceTimersByTime(3_000);
  presence.note('here');
  vi.advanceTimersByTime(149_000);
  expect(ended).not.toHaveBeenCalled();
  presence.note('gone');
  vi.advanceTimersByTime(6_001);
  expect(ended).toHaveBeenCalledOnce();
  vi.useRealTimers();
});
