import type { Answer, ChannelName, Host, Reply, Request } from '../../electron/channels';

declare global {
  interface Window {
    /** Set by the preload of the desktop window. */
    readonly host?: Host;
  }
}

const TOKEN = 'reefwright-token';

/** The token of this launch: from the address at first, then from this tab's own memory; never left in the address bar. */
function takeToken(): string {
  const given = window.location.hash.slice(1);
  if (given.length > 20) {
    window.sessionStorage.setItem(TOKEN, given);
    window.history.replaceState(null, '', window.location.pathname);
  }
  return window.sessionStorage.getItem(TOKEN) ?? '';
}

const unreachable: Reply<never> = {
  ok: false,
  problem: {
    code: 'host/unreachable',
    message: 'The program behind this window does not answer.',
    meaning: 'Your edits stay open here but cannot be saved by it.',
    remedy: 'Keep a copy of the document from the menu, then start the program again.',
  },
};

function post(token: string, name: string, body: unknown, keepalive = false): Promise<Response> {
  return fetch(`/api/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
    body: JSON.stringify(body),
    keepalive,
  });
}

/** How the window of the loopback host asks: the same channels over HTTP on this machine. */
export function httpHost(): Host {
  const token = takeToken();
  const ask = async <C extends ChannelName>(name: C, body: Request<C>): Promise<Reply<Answer<C>>> => {
    try {
      const response = await post(token, name, body);
      if (!response.ok) return unreachable;
      return (await response.json()) as Reply<Answer<C>>;
    } catch {
      return unreachable;
    }
  };
  sayPresence(token);
  return {
    about: () => ask('about', {}),
    readSettings: () => ask('read-settings', {}),
    writeSettings: body => ask('write-settings', body),
    openedAtStart: () => ask('opened-at-start', {}),
    openDocument: () => ask('open-document', {}),
    openListed: body => ask('open-listed', body),
    recentDocuments: () => ask('recent-documents', {}),
    clearRecent: () => ask('clear-recent', {}),
    readSample: body => ask('read-sample', body),
    saveDocument: body => ask('save-document', body),
    saveDocumentAs: body => ask('save-document-as', body),
    takeOver: body => ask('take-over', body),
    closeDocument: body => ask('close-document', body),
    writeRecovery: body => ask('write-recovery', body),
    discardRecovery: body => ask('discard-recovery', body),
    listRecovery: () => ask('list-recovery', {}),
    readRecovery: body => ask('read-recovery', body),
    makePapers: body => ask('make-papers', body),
    readPaper: body => ask('read-paper', body),
    readTable: body => ask('read-table', body),
    takeBack: body => ask('take-back', body),
    markEdited: body => ask('mark-edited', body),
    onCommand: () => () => undefined,
    onOpened: () => () => undefined,
  };
}

/** Tells the host that the page is there, and that it goes, so that the host ends with its window. */
function sayPresence(token: string): void {
  const here = () => void post(token, 'here', {}).catch(() => undefined);
  here();
  window.setInterval(here, 20_000);
  window.addEventListener('pagehide', () => void post(token, 'gone', {}, true).catch(() => undefined));
}

let kept: Host | undefined;

/** The host behind this window. */
export function host(): Host {
  kept ??= window.host ?? httpHost();
  return kept;
}
