import { spawn, type ChildProcess } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';

export const ROOT = path.join(import.meta.dirname, '..', '..', '..');
export const OUT = path.join(ROOT, 'test', 'e2e', 'out');

const SWITCHES = [
  '--headless',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A Chromium for the tests; as root it needs its sandbox off. */
export function launchBrowser(): Promise<Browser> {
  const isRoot = process.getuid?.() === 0;
  return chromium.launch({
    executablePath: process.env['REEFWRIGHT_CHROMIUM'] ?? '/usr/bin/chromium',
    args: isRoot ? [...SWITCHES, '--no-sandbox'] : SWITCHES,
  });
}

export interface ServedHost {
  readonly address: string;
  /** The documents folder of this host. */
  readonly folder: string;
  readonly stop: () => void;
}

/** A host that is ended by its process alone; its folders stay. */
export interface RunningHost {
  readonly child: ChildProcess;
  readonly address: string;
  readonly folder: string;
}

function addressFrom(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stdout?.on('data', (part: Buffer) => {
      said += part.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/#\S+/.exec(said);
      if (found !== null) resolve(found[0]);
    });
    child.on('exit', code => reject(new Error(`the host ended with ${code}: ${said}`)));
  });
}

/** Starts the loopback host without a window over the folders of `base`. */
export async function hostOver(base: string, words: readonly string[] = []): Promise<RunningHost> {
  const folder = path.join(base, 'documents');
  const child = spawn(
    process.execPath,
    ['dist/electron/start.js', '--no-open', '--folder', folder, ...words],
    {
      cwd: ROOT,
      env: { ...process.env, REEFWRIGHT_FOLDER: path.join(base, 'app') },
    },
  );
  return { child, address: await addressFrom(child), folder };
}

/** Folders of its own for a host; `seed` documents are laid in its folder first. */
export function newBase(seed: readonly string[] = []): string {
  const base = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-e2e-'));
  const folder = path.join(base, 'documents');
  fs.mkdirSync(folder);
  for (const file of seed) fs.copyFileSync(file, path.join(folder, path.basename(file)));
  return base;
}

/** Starts the loopback host without a window, with folders of its own; `seed` documents are laid in its folder first. */
export async function serveHost(
  words: readonly string[] = [],
  seed: readonly string[] = [],
): Promise<ServedHost> {
  const base = newBase(seed);
  const { child, address, folder } = await hostOver(base, words);
  return {
    address,
    folder,
    stop: () => {
      child.kill();
      fs.rmSync(base, { recursive: true, force: true });
    },
  };
}

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Everything the page complained of: console errors and uncaught faults. */
  readonly complaints: string[];
  /** Addresses asked for that are not the program's own, by the page, its frames and its workers. */
  readonly foreign: string[];
}

export interface PageChoices {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  readonly forcedColours?: boolean;
  readonly reducedMotion?: boolean;
}

/** Opens the window of a host in a page of its own. */
export async function openPage(
  browser: Browser,
  address: string,
  choices: PageChoices = {},
): Promise<OpenPage> {
  const context = await browser.newContext({
    viewport: { width: choices.width ?? 1280, height: choices.height ?? 720 },
    colorScheme: choices.theme ?? 'light',
    forcedColors: choices.forcedColours === true ? 'active' : 'none',
    reducedMotion: choices.reducedMotion === true ? 'reduce' : 'no-preference',
    acceptDownloads: true,
  });
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: new URL(address).origin });
  const own = new URL(address).origin;
  const foreign: string[] = [];
  context.on('request', request => {
    if (!/^(data|blob|about):/.test(request.url()) && new URL(request.url()).origin !== own)
      foreign.push(request.url());
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', message => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', error => complaints.push(error.message));
  await page.goto(address);
  await page.getByRole('navigation', { name: 'Views' }).waitFor();
  return { page, context, complaints, foreign };
}
