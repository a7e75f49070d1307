import type * as Electron from 'electron';

type Listener = (...given: never[]) => unknown;

interface Asking {
  readonly frame?: 'null' | 'sub';
  readonly url?: string;
  readonly sender?: 'stranger';
}

export interface FakeElectron {
  readonly module: typeof Electron;
  readonly calls: string[];
  readonly schemes: unknown[];
  readonly windows: Electron.BrowserWindowConstructorOptions[];
  readonly loaded: string[];
  readonly sent: unknown[][];
  readonly handlers: Map<string, Listener>;
  asksPermission(permission: string): boolean;
  checksPermission(permission: string): boolean;
  asksDevice(): boolean;
  navigates(event: string, address: string): boolean;
  opensWindow(): string;
  attachesWebview(): boolean;
  asks(channel: string, how: Asking): Promise<unknown>;
  emitApp(event: string, ...given: unknown[]): void;
}

const run = (listener: Listener | undefined, ...given: unknown[]): unknown =>
  listener?.(...(given as never[]));

/** A stand-in for Electron that records what the program asks of it and lets a test fire its events. */
export function fakeElectron(userData: string, { isFirst = true } = {}): FakeElectron {
  const calls: string[] = [];
  const schemes: unknown[] = [];
  const windows: Electron.BrowserWindowConstructorOptions[] = [];
  const loaded: string[] = [];
  const sent: unknown[][] = [];
  const handlers = new Map<string, Listener>();
  const appListeners = new Map<string, Listener>();
  const contentsListeners = new Map<string, Listener>();
  const session = new Map<string, Listener>();
  let openHandler: Listener | undefined;

  const contents = {
    on: (event: string, listener: Listener) => contentsListeners.set(event, listener),
    setWindowOpenHandler: (listener: Listener) => (openHandler = listener),
    reload: () => calls.push('reload'),
    send: (...given: unknown[]) => sent.push(given),
  };
  class BrowserWindow {
    readonly webContents = contents;
    constructor(options: Electron.BrowserWindowConstructorOptions) {
      windows.push(options);
      run(appListeners.get('web-contents-created'), {}, contents);
    }
    on() {}
    once() {}
    show() {}
    focus() {}
    setTitle() {}
    setDocumentEdited() {}
    loadURL(address: string) {
      loaded.push(address);
      return Promise.resolve();
    }
  }
  const keep = (name: string) => (listener: Listener) => session.set(name, listener);
  const module = {
    app: {
      requestSingleInstanceLock: () => (calls.push('lock'), isFirst),
      quit: () => calls.push('quit'),
      enableSandbox: () => calls.push('enableSandbox'),
      whenReady: () => (calls.push('whenReady'), Promise.resolve()),
      on: (event: string, listener: Listener) => appListeners.set(event, listener),
      getPath: () => userData,
    },
    protocol: {
      registerSchemesAsPrivileged: (given: unknown[]) => (
        calls.push('registerSchemes'),
        schemes.push(...given)
      ),
      handle: () => calls.push('protocol'),
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: keep('request'),
        setPermissionCheckHandler: keep('check'),
        setDevicePermissionHandler: keep('device'),
        setDisplayMediaRequestHandler: keep('display'),
        webRequest: { onBeforeRequest: keep('before') },
      },
    },
    ipcMain: { handle: (channel: string, listener: Listener) => handlers.set(channel, listener) },
    dialog: {
      showOpenDialog: () => Promise.resolve({ canceled: true, filePaths: [] }),
      showSaveDialog: () => Promise.resolve({ canceled: true, filePath: '' }),
    },
    BrowserWindow,
  };
  return {
    module: module as unknown as typeof Electron,
    calls,
    schemes,
    windows,
    loaded,
    sent,
    handlers,
    asksPermission: permission => {
      let answer = true;
      run(session.get('request'), {}, permission, (given: boolean) => (answer = given));
      return answer;
    },
    checksPermission: permission => run(session.get('check'), {}, permission) === true,
    asksDevice: () => run(session.get('device')) === true,
    navigates: (event, address) => {
      let isPrevented = false;
      run(contentsListeners.get(event), { url: address, preventDefault: () => (isPrevented = true) });
      return !isPrevented;
    },
    opensWindow: () => (run(openHandler, {}) as { action: string }).action,
    attachesWebview: () => {
      let isPrevented = false;
      run(contentsListeners.get('will-attach-webview'), { preventDefault: () => (isPrevented = true) });
      return !isPrevented;
    },
    asks: (channel, how) => {
      const main = { url: how.url ?? 'app://reefwright/index.html', parent: how.frame === 'sub' ? {} : null };
      const event = {
        senderFrame: how.frame === 'null' ? null : main,
        sender: how.sender === 'stranger' ? {} : contents,
      };
      return Promise.resolve(run(handlers.get(channel), event, {}));
    },
    emitApp: (event, ...given) => run(appListeners.get(event), ...given),
  };
}
