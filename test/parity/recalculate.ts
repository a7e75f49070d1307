import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';

const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

/** Where LibreOffice is, or nothing. */
export function findSoffice(): string | undefined {
  try {
    return execFileSync('which', ['soffice'], { encoding: 'utf8' }).trim() || undefined;
  } catch (cause) {
    if (cause instanceof Error) return undefined;
    throw cause;
  }
}

/** A folder of its own for files and the LibreOffice profile. */
export function workFolder(): string {
  return mkdtempSync(join(tmpdir(), 'sheet-parity-'));
}

/** The profile that always recalculates, so that a cached result is never believed. */
function profileIn(folder: string): string {
  const user = join(folder, 'profile', 'user');
  mkdirSync(user, { recursive: true });
  writeFileSync(join(user, 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
  return `-env:UserInstallation=file://${join(folder, 'profile')}`;
}

/** Converts files in one run of LibreOffice; returns the paths in the order given. */
export function convert(folder: string, form: string, files: readonly string[], to = 'out'): string[] {
  const out = join(folder, to);
  mkdirSync(out, { recursive: true });
  const args = [
    profileIn(folder),
    '--headless',
    '--norestore',
    '--convert-to',
    form,
    '--outdir',
    out,
    ...files,
  ];
  execFileSync('soffice', args, { stdio: 'ignore' });
  const [extension = ''] = form.split(':');
  return files.map(file => join(out, `${basename(file).replace(/\.[^.]+$/, '')}.${extension}`));
}

/**
 * Recalculates workbooks in LibreOffice with a profile that always recalculates. Returns the paths of the
 * recalculated files, in the order given.
 */
export function recalculate(folder: string, files: readonly string[]): string[] {
  return convert(folder, 'xlsx', files);
}

/** The total on the cover of each workbook, as LibreOffice reckons it: the first sheet alone is written, as CSV. */
export function coverTotals(folder: string, files: readonly string[]): (number | undefined)[] {
  return convert(folder, 'csv:Text - txt - csv (StarCalc):9,34,76,1,,0,false,false', files, 'totals').map(
    file => {
      const row = readFileSync(file, 'utf8')
        .split('\n')
        .find(line => line.startsWith('Total, the owner'));
      const amount = row?.split('\t')[1];
      return amount === undefined ? undefined : Number(amount.replace(/[",]/g, ''));
    },
  );
}
