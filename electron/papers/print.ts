import { execFile } from 'node:child_process';
import { accessSync, constants, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';

/** What a Chromium is called on the PATH, the usual name first. */
const NAMES = ['chromium', 'chromium-browser', 'chrome', 'google-chrome', 'google-chrome-stable', 'msedge'];

/** How long a print may take, in milliseconds. */
const LONGEST_PRINT = 60_000;

/** The Chromium on the PATH, or nothing. */
export function findChromium(path = process.env['PATH'] ?? ''): string | undefined {
  const places = path.split(delimiter).filter(folder => folder !== '');
  return NAMES.flatMap(name => places.map(folder => join(folder, name))).find(mayRun);
}

function mayRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch (cause) {
    if (cause instanceof Error) return false;
    throw cause;
  }
}

/**
 * Prints a page of HTML as a tagged PDF with a Chromium that shows nothing and keeps nothing.
 * @throws Error when the Chromium ends without a PDF.
 */
export async function printPdf(chromium: string, html: string, target: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'reefwright-print-'));
  try {
    const page = join(folder, 'page.html');
    writeFileSync(page, html);
    const isRoot = process.getuid?.() === 0;
    await promisify(execFile)(
      chromium,
      [
        '--headless',
        ...(isRoot ? ['--no-sandbox'] : []),
        '--disable-gpu',
        '--disable-extensions',
        '--no-first-run',
        `--user-data-dir=${join(folder, 'profile')}`,
        '--no-pdf-header-footer',
        `--print-to-pdf=${target}`,
        pathToFileURL(page).href,
      ],
      { timeout: LONGEST_PRINT },
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
