import path from 'node:path';
import type * as Electron from 'electron';
import { AppFolder } from './files/app-folder';
import { HostDocuments } from './files/documents';
import { hostChannels, type ChannelMap } from './host';
import { localDate } from './local-date';
import { PaperRoom, type PaperMaker } from './paper-room';
import { pageFiles } from './page-files';
import { dialogDesk } from './window/dialog-desk';
import { PAGE_SCHEME, servePage } from './window/page-scheme';
import { guardContents, guardSession, PAGE_ORIGIN, windowOptions } from './window/policy';
import { handleChannels } from './window/secure-handle';

export interface MainOptions {
  /** `dist`, with `renderer`, `electron` and `demo` under it. */
  readonly dist: string;
  readonly version: string;
  readonly arguments: readonly string[];
  readonly papers?: PaperMaker;
  /** Where the built reader of tables lies. */
  readonly tableReader?: string;
  readonly paperReader?: string;
}

/** The document among the words of a command line. */
export function documentAmong(words: readonly string[]): string | undefined {
  return words.slice(1).find(word => word.endsWith('.reef.json') && !word.startsWith('-'));
}

/** The running desktop program: one window, one host. */
class Desktop {
  readonly #electron: typeof Electron;
  readonly #options: MainOptions;
  readonly #known = new Set<Electron.WebContents>();
  #window: Electron.BrowserWindow | undefined;
  #documents: HostDocuments | undefined;
  #waiting: string | undefined;

  constructor(electron: typeof Electron, options: MainOptions) {
    this.#electron = electron;
    this.#options = options;
    this.#waiting = documentAmong(options.arguments);
  }

  /** Everything that must stand before the program is ready. */
  prepare(): void {
    const { app, protocol } = this.#electron;
    app.enableSandbox();
    protocol.registerSchemesAsPrivileged([PAGE_SCHEME]);
    guardContents(app);
    app.on('open-file', (event, target) => {
      event.preventDefault();
      void this.#openFromOutside(target);
    });
    app.on('second-instance', (_event, words) => {
      this.#window?.focus();
      const target = documentAmong(words);
      if (target !== undefined) void this.#openFromOutside(target);
    });
    app.on('window-all-closed', () => app.quit());
    app.on('will-quit', () => this.#documents?.closeAll());
  }

  async open(): Promise<void> {
    const { app, protocol, session } = this.#electron;
    await app.whenReady();
    guardSession(session.defaultSession);
    servePage(protocol, pageFiles(path.join(this.#options.dist, 'renderer')));
    handleChannels(this.#electron.ipcMain, this.#channels(), this.#known);
    this.#showWindow();
  }

  #channels(): ChannelMap {
    const { app, dialog } = this.#electron;
    const folder = app.getPath('userData');
    const waiting = this.#waiting;
    const { tableReader, paperReader } = this.#options;
    this.#documents = new HostDocuments({
      desk: dialogDesk(dialog, app, () => this.#window),
      appFolder: new AppFolder(folder),
      samples: path.join(this.#options.dist, 'demo'),
      ...(waiting === undefined ? {} : { atStart: waiting }),
    });
    return hostChannels({
      documents: this.#documents,
      papers: new PaperRoom(path.join(app.getPath('temp'), 'reefwright-papers'), this.#options.papers),
      about: () => ({
        shell: 'electron',
        version: this.#options.version,
        platform: process.platform,
        today: localDate(new Date()),
      }),
      ...(tableReader === undefined ? {} : { tableReader }),
      ...(paperReader === undefined ? {} : { paperReader }),
    });
  }

  #showWindow(): void {
    const dist = this.#options.dist;
    const window = new this.#electron.BrowserWindow(
      windowOptions(path.join(dist, 'electron', 'preload.cjs'), path.join(dist, 'electron', 'icon.png')),
    );
    this.#window = window;
    const contents = window.webContents;
    this.#known.add(contents);
    window.on('closed', () => {
      this.#known.delete(contents);
      this.#window = undefined;
    });
    window.once('ready-to-show', () => window.show());
    contents.on('render-process-gone', () => contents.reload());
    void window.loadURL(`${PAGE_ORIGIN}/index.html`);
  }

  /** A document named by the desktop: opened now, or at the first question when the window is not there yet. */
  async #openFromOutside(target: string): Promise<void> {
    if (this.#documents === undefined || this.#window === undefined) {
      this.#waiting = target;
      return;
    }
    this.#window.webContents.send('opened', await this.#documents.openPath(target));
  }
}

/** Runs the desktop program. A second start hands its document to the first and ends. */
export async function runMain(electron: typeof Electron, options: MainOptions): Promise<void> {
  if (!electron.app.requestSingleInstanceLock()) {
    electron.app.quit();
    return;
  }
  const desktop = new Desktop(electron, options);
  desktop.prepare();
  await desktop.open();
}
