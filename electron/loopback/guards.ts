import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** A refusal with its HTTP status, or `undefined` when the request may pass. */
export type Refusal = { readonly status: number; readonly reason: string } | undefined;

/** Only requests that name this very address: another name that resolves here is a rebinding attack. */
export function hostGuard(request: IncomingMessage, authority: string): Refusal {
  return request.headers.host === authority ? undefined : { status: 421, reason: 'Not this host.' };
}

/** Only questions from the page this host served. */
export function originGuard(request: IncomingMessage, authority: string): Refusal {
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin') return { status: 403, reason: 'Not from this page.' };
  return request.headers.origin === `http://${authority}`
    ? undefined
    : { status: 403, reason: 'Not from this page.' };
}

/** Only JSON, so that no form of another page can send a question without being asked first. */
export function typeGuard(request: IncomingMessage): Refusal {
  const type = request.headers['content-type'] ?? '';
  return /^application\/json(;|$)/.test(type) ? undefined : { status: 415, reason: 'JSON only.' };
}

/** Only the holder of the token of this launch, compared without telling how much of it was right. */
export function tokenGuard(request: IncomingMessage, token: string): Refusal {
  const given = Buffer.from(request.headers.authorization ?? '');
  const wanted = Buffer.from(`Bearer ${token}`);
  const same = given.length === wanted.length && timingSafeEqual(given, wanted);
  return same ? undefined : { status: 401, reason: 'Unknown token.' };
}

/** The body as text, or a refusal when it is longer than the limit, by header or by count. */
export async function limitedBody(
  request: IncomingMessage,
  limit: number,
): Promise<{ text: string } | { refusal: Refusal }> {
  const tooLong = { refusal: { status: 413, reason: 'Too long.' } };
  if (Number(request.headers['content-length'] ?? '0') > limit) return tooLong;
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request) {
    if (!Buffer.isBuffer(part)) continue;
    length += part.length;
    if (length > limit) return tooLong;
    parts.push(part);
  }
  return { text: Buffer.concat(parts).toString('utf8') };
}
