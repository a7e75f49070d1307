import fs from 'node:fs';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { AppFolder } from '../../../electron/files/app-folder';
import { folderDesk } from '../../../electron/files/desk';
import { HostDocuments } from '../../../electron/files/documents';
import { hostChannels } from '../../../electron/host';
import { serveLoopback, type Loopback } from '../../../electron/loopback/serve';
import { pageFiles } from '../../../electron/page-files';
import { PaperRoom } from '../../../electron/paper-room';
import type { Leg, Outcome } from '../leg';

interface Host {
  readonly loopback: Loopback;
  readonly token: string;
  readonly authority: string;
  readonly folder: string;
}

async function startHost(): Promise<Host> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-host-'));
  const page = path.join(folder, 'page');
  fs.mkdirSync(page);
  fs.writeFileSync(path.join(page, 'index.html'), '<!doctype html><title>page</title>');
  fs.writeFileSync(path.join(folder, 'secret.txt'), 'the secret');
  const documents = new HostDocuments({
    desk: folderDesk(path.join(folder, 'documents')),
    appFolder: new AppFolder(path.join(folder, 'app')),
    samples: folder,
  });
  const channels = hostChannels({
    documents,
    papers: new PaperRoom(path.join(folder, 'papers'), undefined),
    about: () => ({ shell: 'browser', version: '0', platform: 'test', today: '2027-01-04' }),
  });
  const loopback = await serveLoopback({ channels, files: pageFiles(page), bodyLimit: 100_000 });
  const authority = `127.0.0.1:${loopback.port}`;
  return { loopback, authority, folder, token: new URL(loopback.address).hash.slice(1) };
}

/** Sends exactly these bytes and gives what comes back until the host closes, or nothing within the time. */
function exchange(port: number, bytes: string | Buffer, wait = 500): Promise<string> {
  return new Promise(resolve => {
    const socket = net.connect(port, '127.0.0.1', () => socket.write(bytes));
    let got = '';
    const end = () => {
      socket.destroy();
      resolve(got);
    };
    socket.on('data', part => {
      got += part.toString('latin1');
      if (got.includes('\r\n\r\n')) setTimeout(end, 5);
    });
    socket.on('error', end);
    socket.on('close', end);
    setTimeout(end, wait);
  });
}

interface Parts {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Readonly<Record<string, string | undefined>>;
  readonly body?: string;
}

/** A request that would be answered, but for what is changed in it. */
function written({ authority, token }: Host, parts: Parts): string {
  const body = parts.body ?? '{}';
  const headers: Record<string, string | undefined> = {
    host: authority,
    origin: `http://${authority}`,
    authorization: `Bearer ${token}`,
    'content-type': 'application/json',
    'content-length': String(Buffer.byteLength(body)),
    ...parts.headers,
  };
  const lines = Object.entries(headers).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}: ${value}`],
  );
  return [`${parts.method ?? 'POST'} ${parts.path ?? '/api/about'} HTTP/1.1`, ...lines, '', body].join(
    '\r\n',
  );
}

const names = (count: number, make: (n: number) => Parts): Parts[] =>
  Array.from({ length: count }, (_, n) => make(n));

/** Two hundred requests that must not be answered. */
function hostile({ token, authority }: Host): Parts[] {
  const port = authority.split(':')[1] ?? '';
  const hosts = [
    'evil.example',
    `evil.example:${port}`,
    `localhost:${port}`,
    '127.0.0.1',
    `127.0.0.1:1`,
    `[::1]:${port}`,
    `127.0.0.1:${port}.`,
    `127.0.0.1:${port}@evil.example`,
    `127.1:${port}`,
    `0.0.0.0:${port}`,
  ];
  const origins = [
    'null',
    'http://evil.example',
    `https://${authority}`,
    `http://${authority}.evil.example`,
    `http://localhost:${port}`,
    'file://',
    'app://reefwright',
    `http://${authority}/`,
    `HTTP://${authority} `.trimEnd().replace('HTTP', 'ftp'),
    '',
  ];
  const tokens = [
    '',
    'Bearer ',
    `Bearer ${token.slice(0, -1)}`,
    `Bearer ${token}x`,
    `bearer ${token}`,
    token,
    `Basic ${token}`,
    `Bearer  ${token}`,
    `Bearer ${token.split('').reverse().join('')}`,
    `Bearer ${'A'.repeat(token.length)}`,
  ];
  const types = [
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/jsonp',
    '',
  ];
  const paths = [
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/....//secret.txt',
    '/..\\secret.txt',
    '/..%5csecret.txt',
    '/page/../../secret.txt',
    '/%00',
    '/index.html%00.js',
    '/./secret.txt',
    '//etc/passwd',
    '/etc/passwd',
    '/index.html/..',
    '/INDEX.HTML',
    '/documents/',
    '/app/settings.json',
    'http://evil.example/',
    '/api/',
    '/api/../secret.txt',
    '/.git/config',
  ];
  const methods = ['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'CONNECT', 'PROPFIND'];
  const channels = [
    'nothing',
    'about%20',
    'About',
    'about/',
    '__proto__',
    'constructor',
    'toString',
    'save-document/..',
    'read_settings',
    'eval',
  ];
  return [
    ...hosts.map(host => ({ headers: { host } })),
    ...hosts.map(host => ({ method: 'GET', path: '/', headers: { host } })),
    ...origins.map(origin => ({ headers: { origin: origin === '' ? undefined : origin } })),
    ...tokens.map(authorization => ({
      headers: { authorization: authorization === '' ? undefined : authorization },
    })),
    ...types.map(type => ({ headers: { 'content-type': type === '' ? undefined : type } })),
    ...['cross-site', 'same-site', 'none'].map(site => ({ headers: { 'sec-fetch-site': site } })),
    ...paths.map(path => ({ method: 'GET', path })),
    ...methods.map(method => ({ method })),
    ...channels.map(name => ({ path: `/api/${name}` })),
    ...names(10, n => ({ body: `{"x":"${'x'.repeat(100_000 + n)}"}` })),
    ...names(10, n => ({ headers: { 'content-length': String(200_000 * 10 ** n) } })),
    ...names(20, n => ({
      headers: { authorization: `Bearer ${token.slice(0, n)}${'B'.repeat(token.length - n)}` },
    })),
    ...names(30, n => ({ path: `/api/about?token=${n}`, headers: { authorization: undefined } })),
    ...names(15, n => ({ headers: { origin: `http://127.0.0.1:${Number(port) + n + 1}` } })),
    ...names(15, n => ({ headers: { host: `127.0.0.${n + 2}:${port}` } })),
  ];
}

/** Bytes that are no request at all, or never end. */
const MALFORMED: readonly string[] = [
  '\r\n\r\n\r\n',
  'GET\r\n\r\n',
  'GET / HTTP/9.9\r\n\r\n',
  `GET ${'/'.repeat(100_000)} HTTP/1.1\r\n\r\n`,
  `GET / HTTP/1.1\r\n${'x: y\r\n'.repeat(5000)}\r\n`,
  `GET / HTTP/1.1\r\nx: ${'y'.repeat(100_000)}\r\n\r\n`,
  'POST /api/about HTTP/1.1\r\ntransfer-encoding: chunked\r\ncontent-length: 5\r\n\r\n0\r\n\r\n',
  'POST /api/about HTTP/1.1\r\ncontent-length: 5\r\ncontent-length: 6\r\n\r\nhello',
  'POST /api/about HTTP/1.1\r\ncontent-length: -1\r\n\r\n',
  '\u0016\u0003\u0001\u0002',
  '\u0000'.repeat(1000),
  'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n',
  'GET / HTTP/1.1\r\nhost: a\r\nhost: b\r\n\r\n',
  'GET / HTTP/1.1\nhost: evil\n\n',
  'G',
  '',
];

async function hostileRequests(): Promise<Outcome> {
  const host = await startHost();
  const wrong: string[] = [];
  const requests = hostile(host);
  for (const parts of requests) {
    const got = await exchange(host.loopback.port, written(host, parts));
    const status = Number(/^HTTP\/1\.1 (\d+)/.exec(got)?.[1] ?? 0);
    if ((status >= 200 && status < 400) || got.includes('the secret') || got.includes('"ok":true'))
      wrong.push(`${JSON.stringify(parts).slice(0, 80)}: ${status}`);
  }
  for (const bytes of MALFORMED) {
    const got = await exchange(host.loopback.port, bytes, 150);
    if (/^HTTP\/1\.1 2/.test(got)) wrong.push(`malformed ${JSON.stringify(bytes.slice(0, 30))} was answered`);
  }
  const idle = Array.from({ length: 50 }, () => net.connect(host.loopback.port, '127.0.0.1'));
  for (const socket of idle) socket.on('error', () => undefined).write('POST /api/about HTTP/1.1\r\nhost: ');
  const alive = await exchange(host.loopback.port, written(host, {}));
  if (!alive.includes('"ok":true')) wrong.push('the host does not answer a right request any more');
  for (const socket of idle) socket.destroy();
  await host.loopback.close();
  fs.rmSync(host.folder, { recursive: true, force: true });
  const count = requests.length + MALFORMED.length;
  return {
    ok: wrong.length === 0 && count >= 200,
    words: `${count} hostile requests refused beside 50 that never end, then a right one answered; ${wrong.length} wrong ${wrong.slice(0, 3).join('; ')}`,
  };
}

export const hostLegs: readonly Leg[] = [{ name: 'hostile requests', run: hostileRequests }];
