import fs from 'node:fs';
import type { Protocol } from 'electron';
import { SAFE_HEADERS } from '../content-policy';
import type { PageFile } from '../page-files';
import { isOwnAddress } from './policy';

/** The privileges of the page's scheme. It must be registered once, before the program is ready. */
export const PAGE_SCHEME = {
  scheme: 'app',
  privileges: { standard: true, secure: true, supportFetchAPI: true },
};

/** Answers a request of the page: exactly the files of the page, everything else is not found. */
export async function answerPage(address: string, files: ReadonlyMap<string, PageFile>): Promise<Response> {
  const file = isOwnAddress(address) ? files.get(new URL(address).pathname) : undefined;
  if (file === undefined)
    return new Response('There is no such file.', { status: 404, headers: SAFE_HEADERS });
  const bytes = await fs.promises.readFile(file.path);
  return new Response(new Uint8Array(bytes), { headers: { ...SAFE_HEADERS, 'content-type': file.type } });
}

export function servePage(protocol: Protocol, files: ReadonlyMap<string, PageFile>): void {
  protocol.handle('app', request => answerPage(request.url, files));
}
