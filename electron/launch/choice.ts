/** What a person asked for on the command line of `npm start`. */
export interface StartWords {
  readonly browser: boolean;
  readonly open: boolean;
  readonly file: string | undefined;
  readonly folder: string | undefined;
}

export function readStartWords(words: readonly string[]): StartWords {
  const folderAt = words.indexOf('--folder');
  const folder = folderAt >= 0 ? words[folderAt + 1] : undefined;
  return {
    browser: words.includes('--browser'),
    open: !words.includes('--no-open'),
    file: words.find((word, at) => !word.startsWith('-') && (folderAt < 0 || at !== folderAt + 1)),
    folder,
  };
}

export interface Surroundings {
  readonly electron: () => string | undefined;
  readonly wasRefused: () => boolean;
  readonly fetch: () => void;
  readonly remember: () => void;
  readonly chromium: () => string | undefined;
  readonly say: (line: string) => void;
}

export type WindowChoice =
  | { readonly kind: 'electron'; readonly program: string; readonly why: string }
  | { readonly kind: 'chromium'; readonly program: string; readonly why: string }
  | { readonly kind: 'default-browser'; readonly why: string }
  | { readonly kind: 'address-only'; readonly why: string };

/** Chooses the window and says why: Electron when its runtime is on disk, else a Chromium window, else the browser. */
export function chooseWindow(words: StartWords, around: Surroundings): WindowChoice {
  if (!words.open) return { kind: 'address-only', why: 'no window was asked for (--no-open)' };
  if (words.browser) return browserWindow(around, 'a browser window was asked for (--browser)');
  const present = around.electron();
  if (present !== undefined)
    return { kind: 'electron', program: present, why: 'the Electron runtime is on disk' };
  if (around.wasRefused()) {
    return browserWindow(
      around,
      'the Electron runtime is missing and could not be fetched within the last day',
    );
  }
  around.say(
    'The Electron runtime is missing. Trying once to fetch it with its own installer; this may take a minute.',
  );
  around.fetch();
  const fetched = around.electron();
  if (fetched !== undefined)
    return { kind: 'electron', program: fetched, why: 'the Electron runtime was fetched' };
  around.remember();
  return browserWindow(around, 'the Electron runtime could not be fetched; the next attempt is tomorrow');
}

function browserWindow(around: Surroundings, why: string): WindowChoice {
  const program = around.chromium();
  return program === undefined ? { kind: 'default-browser', why } : { kind: 'chromium', program, why };
}
