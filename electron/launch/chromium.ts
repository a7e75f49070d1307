import { spawn, type ChildProcess } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'brave-browser',
];

const PLACES: Readonly<Record<string, readonly string[]>> = {
  win32: [
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  ],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
};

/** A Chromium of any make: named by the environment, on the path, or in its usual place. */
export function findChromium(environment: NodeJS.ProcessEnv): string | undefined {
  const given = environment['REEFWRIGHT_CHROMIUM'];
  const folders = (environment['PATH'] ?? '').split(path.delimiter).filter(folder => folder !== '');
  const onPath = NAMES.flatMap(name => folders.map(folder => path.join(folder, name)));
  const candidates = [
    ...(given === undefined ? [] : [given]),
    ...onPath,
    ...(PLACES[process.platform] ?? []),
  ];
  return candidates.find(candidate => fs.existsSync(candidate));
}

/** The switches of the window: its own profile, no network of its own, and no sandbox only where root forbids one. */
export function chromiumSwitches(address: string, profile: string, isRoot: boolean): readonly string[] {
  return [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-quic',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--window-size=1280,800',
    ...(isRoot ? ['--no-sandbox'] : []),
  ];
}

/** Opens the address in a window without browser bars, with a profile of the program's own. */
export function openChromium(program: string, address: string, appFolder: string): ChildProcess {
  const profile = path.join(appFolder, 'window');
  fs.mkdirSync(profile, { recursive: true });
  const isRoot = process.getuid?.() === 0;
  return spawn(program, chromiumSwitches(address, profile, isRoot), { stdio: 'ignore', detached: true });
}

const OPENERS: Readonly<Record<string, string>> = { win32: 'explorer.exe', darwin: 'open' };

/** Hands the address to the system's own way of opening pages. */
export function openByDefault(address: string): ChildProcess {
  const command = OPENERS[process.platform] ?? 'xdg-open';
  return spawn(command, [address], { stdio: 'ignore', detached: true });
}
