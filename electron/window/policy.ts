import type { App, BrowserWindowConstructorOptions, Session, WebContents } from 'electron';

/** The page's own origin: a scheme of its own, never `file:`. */
export const PAGE_ORIGIN = 'app://reefwright';

/** How the window is made: no Node, its own world, a sandbox. */
export function windowOptions(preload: string, icon: string): BrowserWindowConstructorOptions {
  return {
    width: 1280,
    height: 800,
    minWidth: 640,
    minHeight: 480,
    show: false,
    title: 'Reefwright',
    icon,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  };
}

/** Whether an address belongs to the page, compared by its parsed parts. */
export function isOwnAddress(address: string): boolean {
  try {
    const url = new URL(address);
    return url.protocol === 'app:' && url.host === 'reefwright' && url.username === '' && url.password === '';
  } catch {
    return false;
  }
}

interface Preventable {
  preventDefault(): void;
}

/** Every web content of the program stays on the page, opens no window and holds no other page. */
export function guardContents(app: App): void {
  app.on('web-contents-created', (_event, contents) => guard(contents));
}

function guard(contents: WebContents): void {
  const stay = (event: Preventable, address: string) => {
    if (!isOwnAddress(address)) event.preventDefault();
  };
  contents.on('will-navigate', event => stay(event, event.url));
  contents.on('will-frame-navigate', event => stay(event, event.url));
  contents.on('will-redirect', event => stay(event, event.url));
  contents.on('will-attach-webview', event => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

const PERMITTED = new Set(['clipboard-sanitized-write']);

/** Permissions are refused but one, devices and screens always, and nothing is loaded but the page. */
export function guardSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, decide) => decide(PERMITTED.has(permission)));
  session.setPermissionCheckHandler((_contents, permission) => PERMITTED.has(permission));
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, decide) => decide({}));
  session.webRequest.onBeforeRequest((details, decide) => decide({ cancel: !isLoadable(details.url) }));
}

/** Whether the page may load an address: its own, pictures written into it, and the developer tools. */
export function isLoadable(address: string): boolean {
  return isOwnAddress(address) || /^(data:image\/|blob:app:\/\/reefwright\/|devtools:)/.test(address);
}
