import fs from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import {
  launchBrowser,
  openPage,
  OUT,
  serveHost,
  type OpenPage,
  type PageChoices,
  type ServedHost,
} from './window';

/** What the tests of one file share: a Chromium and a host. */
export interface OwnWindow {
  /** Opens the window of the host in a page of its own. */
  readonly open: (choices?: PageChoices) => Promise<OpenPage>;
  /** The documents folder of the host. */
  readonly folder: () => string;
}

/**
 * Starts a Chromium and a host before the first test of a file and ends them after its last.
 * @param document makes a document that is open from the start, and says where it lies.
 */
export function ownWindow(document?: () => string): OwnWindow {
  let browser: Browser | undefined;
  let host: ServedHost | undefined;
  beforeAll(async () => {
    fs.mkdirSync(OUT, { recursive: true });
    browser = await launchBrowser();
    host = await serveHost(document === undefined ? [] : [document()]);
  });
  afterAll(async () => {
    await browser?.close();
    host?.stop();
  });
  const started = () => {
    if (browser === undefined || host === undefined) throw new Error('the window is not started yet');
    return { browser, host };
  };
  return {
    open: choices => openPage(started().browser, started().host.address, choices),
    folder: () => started().host.folder,
  };
}
