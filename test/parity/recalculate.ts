import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

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

/**
 * Recalculates workbooks in LibreOffice with a profile that always recalculates, so that a cached result is
 * never believed. Returns the paths of the recalculated files, in the order given.
 */
export function recalculate(folder: string, files: readonly string[]): string[] {
  const user = join(folder, 'profile', 'user');
  const out = join(folder, 'out');
  mkdirSync(user, { recursive: true });
  mkdirSync(out, { recursive: true });
  writeFileSync(join(user, 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
  const args = [profile, '--headless', '--norestore', '--convert-to', 'xlsx', '--outdir', out, ...files];
  execFileSync('soffice', args, { stdio: 'ignore' });
  return files.map(file => join(out, file.slice(file.lastIndexOf('/') + 1)));
}
