import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { CONTENT_POLICY, SAFE_HEADERS } from '../../electron/content-policy';
import { isLoadable, isOwnAddress, windowOptions } from '../../electron/window/policy';
import { PAGE_SCHEME } from '../../electron/window/page-scheme';

const ROOT = path.join(import.meta.dirname, '../..');

function filesUnder(folder: string): readonly { name: string; text: string }[] {
  return fs
    .readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter(name => /\.(ts|tsx|html|css|mjs|yml)$/.test(name))
    .map(name => ({
      name: path.join(folder, name),
      text: fs.readFileSync(path.join(ROOT, folder, name), 'utf8'),
    }));
}

const shell = filesUnder('electron');
const page = filesUnder('renderer');
const all = [...shell, ...page, ...filesUnder('core')];
const naming = (files: readonly { name: string; text: string }[], pattern: RegExp) =>
  files.filter(({ text }) => pattern.test(text)).map(({ name }) => name);

const options = windowOptions('/preload.cjs', '/icon.png').webPreferences ?? {};
const policy = new Map(
  CONTENT_POLICY.split('; ').map(part => {
    const [name = '', ...values] = part.split(' ');
    return [name, values];
  }),
);

// The twenty recommendations of Electron's own security tutorial (docs/tutorial/security.md, version 45), in order.
describe('1 only secure content is loaded', () => {
  test.each([
    'http://a.example',
    'https://a.example',
    'ws://a.example',
    'ftp://a.example',
    'file:///etc/passwd',
    'app://other/index.html',
    'app://reefwright.evil/',
    'app://user@reefwright/',
    'app://reefwright:8080/',
    'javascript:alert(1)',
    'data:text/html,x',
    'blob:https://a.example/1',
    'about:blank',
    'chrome://settings',
    'view-source:app://reefwright/',
  ])('%s is not loaded', address => expect(isLoadable(address)).toBe(false));

  test('no address of another machine stands in the page or its styles', () => {
    const addresses = /(https?|wss?):\/\/(?!127\.0\.0\.1|reefwright\.example|www\.w3\.org)/;
    expect(naming(page, addresses)).toEqual([]);
  });
});

describe('2, 3, 4, 6, 8 to 11 the window has no more than it needs', () => {
  test.each([
    ['nodeIntegration', false],
    ['nodeIntegrationInWorker', false],
    ['nodeIntegrationInSubFrames', false],
    ['contextIsolation', true],
    ['sandbox', true],
    ['webSecurity', true],
    ['webviewTag', false],
    ['navigateOnDragDrop', false],
  ])('%s is %s', (name, value) => expect(Reflect.get(options, name)).toBe(value));

  test.each([
    'allowRunningInsecureContent',
    'experimentalFeatures',
    'enableBlinkFeatures',
    'allowpopups',
    'bypassCSP',
    'disableWebSecurity',
    'ignore-certificate-errors',
  ])('%s is named nowhere', word => expect(naming([...shell, ...page], new RegExp(word))).toEqual([]));

  test('the sandbox of Chromium is switched off for root only, wherever it is started', () => {
    const switched = shell.flatMap(({ text }) =>
      text.split('\n').filter(line => line.includes('no-sandbox')),
    );
    expect(switched.length).toBeGreaterThan(0);
    expect(switched.filter(line => !/isRoot \?|getuid\?\.\(\) === 0/.test(line))).toEqual([]);
  });

  test('there is no web view', () => expect(naming([...page, ...shell], /<webview/)).toEqual([]));

  test('the preload takes nothing but Electron and types', () => {
    const preload = shell.find(({ name }) => name === 'electron/preload.ts')?.text ?? '';
    const taken = [...preload.matchAll(/^import (type )?.* from '(.+)';$/gm)].filter(
      found => found[1] === undefined,
    );
    expect(taken.map(found => found[2])).toEqual(['electron']);
  });
});

describe('7 the content policy', () => {
  test.each([
    ['default-src', "'none'"],
    ['script-src', "'self'"],
    ['worker-src', "'self'"],
    ['style-src', "'self'"],
    ['connect-src', "'self'"],
    ['font-src', "'self'"],
    ['form-action', "'none'"],
    ['frame-ancestors', "'none'"],
    ['base-uri', "'none'"],
    ['object-src', "'none'"],
  ])('%s is %s', (name, value) => expect(policy.get(name)?.join(' ')).toBe(value));

  test('its one exception is the style attribute', () => {
    const unsafe = [...policy].filter(([, values]) => values.some(value => value.includes('unsafe')));
    expect(unsafe).toEqual([['style-src-attr', ["'unsafe-inline'"]]]);
    expect(CONTENT_POLICY).not.toMatch(/\*|https?:|unsafe-eval/);
  });

  test('it goes out with every answer, and types are not guessed', () => {
    expect(SAFE_HEADERS['content-security-policy']).toBe(CONTENT_POLICY);
    expect(SAFE_HEADERS['x-content-type-options']).toBe('nosniff');
  });

  test('the page has no script, style or handler written into it', () => {
    const html = page.find(({ name }) => name === 'renderer/index.html')?.text ?? '';
    expect(html).not.toMatch(/<script(?![^>]*src=)|<style|\son[a-z]+=/);
  });

  test('nothing is made into code from text', () => {
    expect(
      naming(all, /\beval\(|new Function\(|setTimeout\(['"`]|dangerouslySetInnerHTML|\.innerHTML\s*=/),
    ).toEqual([]);
  });
});

describe('13 and 18 the page stays on its own origin', () => {
  test.each([
    ['app://reefwright/index.html', true],
    ['app://reefwright/assets/a.js', true],
    ['app://reefwright.evil/index.html', false],
    ['app://reefwright@evil/index.html', false],
    ['app://xn--reefwright-x/', false],
    ['APP://REEFWRIGHT.EVIL/', false],
    ['apps://reefwright/', false],
    ['not an address', false],
    ['', false],
  ])('%s is own: %s', (address, own) => expect(isOwnAddress(address)).toBe(own));

  test('the scheme is standard and secure and does not go round the policy', () => {
    expect(PAGE_SCHEME.privileges).toMatchObject({ standard: true, secure: true });
    expect(Object.keys(PAGE_SCHEME.privileges)).not.toContain('bypassCSP');
  });

  test('no file address and no loadFile', () => {
    expect(naming(shell, /loadFile\(|['"`]file:\/\//)).toEqual([]);
  });
});

describe('15 nothing outside is opened', () => {
  test.each(['openExternal', 'openPath', 'showItemInFolder', 'trashItem'])('shell.%s is not called', word => {
    expect(
      naming([...shell, ...page], new RegExp(`shell\\.${word}\\(|\\{[^}]*\\bshell\\b[^}]*\\} = .*electron`)),
    ).toEqual([]);
  });
});

describe('16 Electron is one that is still maintained', () => {
  // Majors get about eight months of fixes; 45 was the newest stable one when this was last looked at.
  const LAST_LOOK = { major: 45, on: '2026-11-25' };
  test('the major version is at most two behind the newest of the last look', () => {
    const { version } = JSON.parse(
      fs.readFileSync(path.join(ROOT, 'node_modules/electron/package.json'), 'utf8'),
    ) as { version: string };
    const age = Math.round((Date.now() - Date.parse(LAST_LOOK.on)) / 86_400_000);
    console.log(`Electron ${version}; last look at the newest major ${age} days ago`);
    expect(Number(version.split('.')[0])).toBeGreaterThanOrEqual(LAST_LOOK.major - 2);
  });
});

describe('17 and 20 channels', () => {
  test('every channel is registered through the one door that checks the sender', () => {
    expect(naming(shell, /ipc(Main)?\.(handle|on)\(/)).toEqual(['electron/window/secure-handle.ts']);
  });

  test('the page gets one frozen object of named functions and nothing of Electron', () => {
    const preload = shell.find(({ name }) => name === 'electron/preload.ts')?.text ?? '';
    expect(preload.match(/exposeInMainWorld/g)).toHaveLength(1);
    expect(preload).toContain("exposeInMainWorld('host', Object.freeze(host))");
    expect(preload).not.toMatch(/: ipcRenderer[,\s}]|ipcRenderer\.(send|sendSync|postMessage)/);
    const invoked = [...preload.matchAll(/invoke\(([^,)]+)/g)].map(found => found[1] ?? '');
    expect(invoked.filter(name => !/^'[a-z-]+'$/.test(name))).toEqual([]);
  });
});

describe('no network', () => {
  test.each(['node:https', 'node:net', 'node:dgram', 'node:tls', 'node:http2', 'node:dns'])(
    '%s is used nowhere in the shell',
    name => expect(naming(shell, new RegExp(`from '${name}'`))).toEqual([]),
  );

  test('only the loopback host speaks HTTP', () => {
    expect(naming(shell, /from 'node:http'/)).toEqual([
      'electron/loopback/guards.ts',
      'electron/loopback/serve.ts',
    ]);
  });

  test('the page asks its own host only, in one place', () => {
    expect(naming(page, /\bfetch\(/)).toEqual(['renderer/host/bridge.ts']);
    expect(naming(page, /XMLHttpRequest|WebSocket|EventSource|sendBeacon|RTCPeerConnection/)).toEqual([]);
  });

  test('crash reports go nowhere', () => {
    expect(naming(shell, /crashReporter/)).toEqual([]);
  });
});
