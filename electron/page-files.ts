import fs from 'node:fs';
import path from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.json': 'application/json; charset=utf-8',
};

export interface PageFile {
  readonly path: string;
  readonly type: string;
}

/**
 * The files of the page, by the exact address each is served under. An address that is not in the list does not
 * exist: no path is ever built from a request. Links are not followed.
 */
export function pageFiles(folder: string): ReadonlyMap<string, PageFile> {
  const found = new Map<string, PageFile>();
  for (const entry of fs.readdirSync(folder, { withFileTypes: true, recursive: true })) {
    const type = TYPES[path.extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const target = path.join(entry.parentPath, entry.name);
    found.set(`/${path.relative(folder, target).split(path.sep).join('/')}`, { path: target, type });
  }
  const page = found.get('/index.html');
  if (page !== undefined) found.set('/', page);
  return found;
}
