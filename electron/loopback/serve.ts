import { randomBytes } from 'node:crypto';
import fs from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { SAFE_HEADERS } from '../content-policy';
import type { ChannelMap } from '../host';
import type { PageFile } from '../page-files';
import { hostGuard, limitedBody, originGuard, tokenGuard, typeGuard, type Refusal } from './guards';

/** The longest question: a document of 50 MB and its envelope. */
const BODY_LIMIT = 52 * 1024 * 1024;

export interface LoopbackOptions {
  readonly channels: ChannelMap;
  readonly files: ReadonlyMap<string, PageFile>;
  readonly bodyLimit?: number;
  /** Called when the page says it is there, and when it says it goes. */
  readonly onPresence?: (presence: 'here' | 'gone') => void;
}

export interface Loopback {
  readonly port: number;
  /** With the token in the fragment, which is never sent to a server or in a referrer. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Serves the page and its channels on 127.0.0.1 at a port the system chooses, for the holder of a one-time token. */
export async function serveLoopback(options: LoopbackOptions): Promise<Loopback> {
  const token = randomBytes(32).toString('base64url');
  const server = createServer((request, response) => {
    void respond(request, response, { ...options, token, authority: authorityOf(server) });
  });
  server.headersTimeout = 10_000;
  server.requestTimeout = 60_000;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  return {
    port: portOf(server),
    address: `http://${authorityOf(server)}/#${token}`,
    close: () =>
      new Promise(resolve => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function portOf(server: Server): number {
  const address = server.address();
  return address !== null && typeof address === 'object' ? address.port : 0;
}

function authorityOf(server: Server): string {
  return `127.0.0.1:${portOf(server)}`;
}

interface Context extends LoopbackOptions {
  readonly token: string;
  readonly authority: string;
}

async function respond(request: IncomingMessage, response: ServerResponse, context: Context): Promise<void> {
  try {
    const wrongHost = hostGuard(request, context.authority);
    if (wrongHost !== undefined) refuse(response, wrongHost);
    else if (request.method === 'GET' || request.method === 'HEAD') givePage(request, response, context);
    else if (request.method === 'POST') await answerQuestion(request, response, context);
    else refuse(response, { status: 405, reason: 'GET and POST only.' });
  } catch {
    if (!response.headersSent) refuse(response, { status: 400, reason: 'The request could not be read.' });
    else response.destroy();
  }
}

function refuse(response: ServerResponse, refusal: NonNullable<Refusal>): void {
  response.writeHead(refusal.status, {
    ...SAFE_HEADERS,
    'content-type': 'text/plain; charset=utf-8',
    connection: 'close',
  });
  response.end(refusal.reason);
}

function givePage(request: IncomingMessage, response: ServerResponse, context: Context): void {
  const file = context.files.get(request.url ?? '');
  if (file === undefined) {
    refuse(response, { status: 404, reason: 'There is no such file.' });
    return;
  }
  response.writeHead(200, { ...SAFE_HEADERS, 'content-type': file.type });
  if (request.method === 'HEAD') response.end();
  else fs.createReadStream(file.path).pipe(response);
}

async function answerQuestion(
  request: IncomingMessage,
  response: ServerResponse,
  context: Context,
): Promise<void> {
  const refusal =
    originGuard(request, context.authority) ?? typeGuard(request) ?? tokenGuard(request, context.token);
  if (refusal !== undefined) {
    refuse(response, refusal);
    return;
  }
  const body = await limitedBody(request, context.bodyLimit ?? BODY_LIMIT);
  if ('refusal' in body) {
    if (body.refusal !== undefined) refuse(response, body.refusal);
    return;
  }
  await answerChannel(request.url ?? '', body.text, response, context);
}

async function answerChannel(
  url: string,
  body: string,
  response: ServerResponse,
  context: Context,
): Promise<void> {
  const name = /^\/api\/([a-z-]+)$/.exec(url)?.[1] ?? '';
  if (name === 'here' || name === 'gone') {
    context.onPresence?.(name);
    giveJson(response, null);
    return;
  }
  const channel = context.channels.get(name);
  if (channel === undefined) refuse(response, { status: 404, reason: 'There is no such channel.' });
  else giveJson(response, await channel.answer(parsed(body)));
}

/** The question, or `undefined` for what is not JSON; the channel then says what it wanted. */
function parsed(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return undefined;
  }
}

function giveJson(response: ServerResponse, value: unknown): void {
  response.writeHead(200, { ...SAFE_HEADERS, 'content-type': 'application/json; charset=utf-8' });
  response.end(JSON.stringify(value));
}
