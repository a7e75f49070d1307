import fs from 'node:fs';
import http from 'node:http';
import net from 'node:net';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveLoopback, type Loopback } from '../../electron/loopback/serve';
import { pageFiles } from '../../electron/page-files';
import { newFolder, realChannels } from './support';

let loopback: Loopback;
let token: string;
let authority: string;

beforeAll(async () => {
  const folder = newFolder();
  const page = path.join(folder, 'page');
  fs.mkdirSync(path.join(page, 'assets'), { recursive: true });
  fs.writeFileSync(path.join(page, 'index.html'), '<!doctype html><title>page</title>');
  fs.writeFileSync(path.join(page, 'assets', 'a.js'), 'export {}');
  fs.writeFileSync(path.join(folder, 'secret.json'), '{"secret":true}');
  fs.symlinkSync(path.join(folder, 'secret.json'), path.join(page, 'assets', 'link.json'));
  loopback = await serveLoopback({ channels: realChannels(folder), files: pageFiles(page), bodyLimit: 1000 });
  token = new URL(loopback.address).hash.slice(1);
  authority = `127.0.0.1:${loopback.port}`;
});
afterAll(() => loopback.close());

interface Sent {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

interface Got {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly body: string;
}

/** One request with exactly these headers; `undefined` entries of the right set are left out. */
function send(sent: Sent): Promise<Got> {
  const body = sent.body ?? '{}';
  const headers = sent.headers ?? right();
  return new Promise((resolve, reject) => {
    const request = http.request(
      {
        port: loopback.port,
        host: '127.0.0.1',
        method: sent.method ?? 'POST',
        path: sent.path ?? '/api/about',
        headers: { host: authority, ...headers },
      },
      response => {
        let text = '';
        response.on('data', (part: Buffer) => (text += part.toString()));
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
        );
      },
    );
    request.on('error', reject);
    request.end(sent.method === 'GET' ? undefined : body);
  });
}

function right(without: readonly string[] = [], other: Record<string, string> = {}): Record<string, string> {
  const all = {
    'content-type': 'application/json',
    origin: `http://${authority}`,
    authorization: `Bearer ${token}`,
    ...other,
  };
  return Object.fromEntries(Object.entries(all).filter(([name]) => !without.includes(name)));
}

test('a question with token, host and origin is answered', async () => {
  const got = await send({});
  expect(got.status).toBe(200);
  expect(JSON.parse(got.body)).toMatchObject({ ok: true, value: { shell: 'browser' } });
});

test('the token stands in the fragment, is long, and differs at every launch', async () => {
  const other = await serveLoopback({ channels: new Map(), files: new Map() });
  const otherToken = new URL(other.address).hash.slice(1);
  await other.close();
  expect(Buffer.from(token, 'base64url')).toHaveLength(32);
  expect(otherToken).not.toBe(token);
  expect(new URL(loopback.address).search).toBe('');
});

test.each([
  ['no token', 401, () => right(['authorization'])],
  ['a wrong token of the same length', 401, () => right([], { authorization: `Bearer ${'x'.repeat(43)}` })],
  ['a part of the token', 401, () => right([], { authorization: `Bearer ${token.slice(0, 20)}` })],
  ['another host name (rebinding)', 421, () => right([], { host: 'evil.example' })],
  ['the right name and another port', 421, () => right([], { host: '127.0.0.1:1' })],
  ['localhost', 421, () => right([], { host: `localhost:${loopback.port}` })],
  ['another origin', 403, () => right([], { origin: 'https://evil.example' })],
  ['no origin', 403, () => right(['origin'])],
  ['a null origin', 403, () => right([], { origin: 'null' })],
  ['an origin that begins alike', 403, () => right([], { origin: `http://${authority}.evil.example` })],
  ['a cross-site fetch', 403, () => right([], { 'sec-fetch-site': 'cross-site' })],
  ['a form', 415, () => right([], { 'content-type': 'application/x-www-form-urlencoded' })],
  ['plain text', 415, () => right([], { 'content-type': 'text/plain' })],
])('%s is refused with %i', async (_name, status, headers) => {
  const got = await send({ headers: headers() });
  expect(got.status).toBe(status);
  expect(got.body).not.toContain('browser');
});

test.each(['PUT', 'DELETE', 'OPTIONS', 'PATCH'])('the method %s is refused', async method => {
  expect((await send({ method })).status).toBe(405);
});

test('a body beyond the limit is refused, by header and by count', async () => {
  expect((await send({ body: JSON.stringify({ x: 'y'.repeat(2000) }) })).status).toBe(413);
  const headers = right([], { 'transfer-encoding': 'chunked' });
  expect((await send({ headers, body: JSON.stringify({ x: 'y'.repeat(2000) }) })).status).toBe(413);
});

test('what is not JSON is told, not thrown', async () => {
  const got = await send({ body: '{"a":' });
  expect(JSON.parse(got.body)).toMatchObject({ ok: false, problem: { code: 'host/question' } });
});

test.each([
  '/api/unknown',
  '/api/',
  '/api/about/',
  '/api/../about',
  '/about',
  '/api/constructor',
  '/api/__proto__',
])('there is no channel at %s', async address => {
  expect((await send({ path: address })).status).toBe(404);
});

test.each([
  '/../secret.json',
  '/..%2fsecret.json',
  '/%2e%2e/secret.json',
  '/assets/../../secret.json',
  '/assets/link.json',
  '/assets/..%5c..%5csecret.json',
  '/index.html%00.js',
  '//etc/passwd',
  '/assets',
  '/index.html?x=1',
])('GET %s finds nothing', async address => {
  const got = await send({ method: 'GET', path: address, headers: {} });
  expect(got.status).toBe(404);
  expect(got.body).not.toContain('secret');
});

test('the page is served with a policy that allows its own files only', async () => {
  const got = await send({ method: 'GET', path: '/', headers: {} });
  expect(got.status).toBe(200);
  const policy = String(got.headers['content-security-policy']);
  const directives = Object.fromEntries(
    policy.split('; ').map(part => [part.split(' ')[0] ?? '', part.split(' ').slice(1).join(' ')]),
  );
  expect(directives['default-src']).toBe("'none'");
  expect(directives['script-src']).toBe("'self'");
  expect(directives['style-src']).toBe("'self'");
  expect(policy.replace("style-src-attr 'unsafe-inline'", '')).not.toMatch(/unsafe|\*|https?:/);
  expect(got.headers['x-content-type-options']).toBe('nosniff');
  expect(got.headers['cache-control']).toBe('no-store');
});

test('the host listens on this machine only', async () => {
  const isOpen = await new Promise(resolve => {
    const socket = net.connect({ port: loopback.port, host: '127.0.0.2' });
    socket.on('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.on('error', () => resolve(false));
  });
  expect(isOpen).toBe(false);
});
