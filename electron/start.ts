import { spawn } from 'node:child_process';
import os from 'node:os';
import path from 'node:path';
import { version } from '../package.json';
import { AppFolder, appFolder } from './files/app-folder';
import { folderDesk } from './files/desk';
import { HostDocuments } from './files/documents';
import { hostChannels } from './host';
import { chooseWindow, readStartWords, type StartWords, type WindowChoice } from './launch/choice';
import { findChromium, openByDefault, openChromium } from './launch/chromium';
import { watchPresence } from './launch/presence';
import { electronOnDisk, fetchRuntime, rememberRefusal, wasRefused } from './launch/runtime';
import { serveLoopback } from './loopback/serve';
import { localDate } from './local-date';
import { pageFiles } from './page-files';
import { paperMaker } from './paper-maker';
import { PaperRoom } from './paper-room';

const dist = path.join(import.meta.dirname, '..');
const modules = path.join(dist, '..', 'node_modules');

/** What ends the program from outside; documents are let go before. */
const END_SIGNALS: readonly NodeJS.Signals[] = ['SIGINT', 'SIGTERM', 'SIGHUP'];

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** Where the loopback host keeps documents: the folder given, that of the document given, or the user's documents. */
function documentsFolder(words: StartWords): string {
  if (words.folder !== undefined) return path.resolve(words.folder);
  if (words.file !== undefined) return path.dirname(path.resolve(words.file));
  return path.join(os.homedir(), 'Documents', 'Reefwright');
}

function choose(words: StartWords, folder: string): WindowChoice {
  const memory = path.join(folder, 'runtime-refused.json');
  return chooseWindow(words, {
    electron: () => electronOnDisk(modules, process.env),
    wasRefused: () => wasRefused(memory, Date.now()),
    fetch: () => fetchRuntime(modules),
    remember: () => rememberRefusal(memory, Date.now()),
    chromium: () => findChromium(process.env),
    say,
  });
}

function openElectron(program: string, words: StartWords): void {
  const entry = path.join(dist, 'electron', 'entry.cjs');
  const file = words.file === undefined ? [] : [path.resolve(words.file)];
  spawn(program, [entry, ...file], { stdio: 'inherit' }).on('exit', code => process.exit(code ?? 0));
}

async function serve(words: StartWords, choice: WindowChoice, folder: string): Promise<void> {
  const documents = new HostDocuments({
    desk: folderDesk(documentsFolder(words)),
    appFolder: new AppFolder(folder),
    samples: path.join(dist, 'demo'),
    ...(words.file === undefined ? {} : { atStart: path.resolve(words.file) }),
  });
  process.on('exit', () => documents.closeAll());
  for (const signal of END_SIGNALS) process.on(signal, () => process.exit(0));
  const about = () => ({
    shell: 'browser' as const,
    version,
    platform: process.platform,
    today: localDate(new Date()),
  });
  const papers = new PaperRoom(
    path.join(os.tmpdir(), 'reefwright-papers'),
    paperMaker(() => localDate(new Date())),
  );
  const presence = watchPresence(() => process.exit(0));
  const loopback = await serveLoopback({
    channels: hostChannels({
      documents,
      papers,
      about,
      tableReader: path.join(dist, 'electron', 'table-reader.cjs'),
      paperReader: path.join(dist, 'electron', 'paper-reader.cjs'),
    }),
    files: pageFiles(path.join(dist, 'renderer')),
    ...(choice.kind === 'address-only' ? {} : { onPresence: presence.note }),
  });
  show(choice, loopback.address, folder);
}

function show(choice: WindowChoice, address: string, folder: string): void {
  if (choice.kind === 'chromium') {
    say(`Opening a Chromium window, because ${choice.why}.`);
    openChromium(choice.program, address, folder);
  } else if (choice.kind === 'default-browser') {
    say(`Opening your browser, because ${choice.why}, and no Chromium was found.`);
    openByDefault(address).on('error', () =>
      say('No browser could be opened; open the address below yourself.'),
    );
  } else {
    say(`Serving without a window, because ${choice.why}. End with Ctrl+C.`);
  }
  say(address);
}

async function start(): Promise<void> {
  const words = readStartWords(process.argv.slice(2));
  const folder = appFolder();
  const choice = choose(words, folder);
  if (choice.kind === 'electron') {
    say(`Opening the desktop window, because ${choice.why}.`);
    openElectron(choice.program, words);
    return;
  }
  await serve(words, choice, folder);
}

await start();
