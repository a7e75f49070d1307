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

const LIBRARY = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false"><library:element library:name="Rows"/></library:library>`;
const LIBRARIES = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:libraries PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "libraries.dtd">
<library:libraries xmlns:library="http://openoffice.org/2000/library" xmlns:xlink="http://www.w3.org/1999/xlink"><library:library library:name="Standard" xlink:href="$(USER)/basic/Standard/script.xlb/" xlink:type="simple" library:link="false"/></library:libraries>`;

/**
 * Lets LibreOffice itself insert an empty row above a row and fill cells of it, as a person would; returns the path of
 * the saved workbook. Columns and rows count from 1.
 */
export function insertRow(
  folder: string,
  file: string,
  sheet: string,
  above: number,
  cells: readonly (readonly [number, number | string])[],
): string {
  const target = file.replace('.xlsx', '-inserted.xlsx');
  const filled = cells.map(([column, value]) => {
    const cell = `sheet.getCellByPosition(${column - 1}, ${above - 1})`;
    return typeof value === 'number' ? `${cell}.Value = ${value}` : `${cell}.String = "${value}"`;
  });
  const macro = [
    'Sub Insert',
    'Dim hidden(0) As New com.sun.star.beans.PropertyValue',
    'hidden(0).Name = "Hidden" : hidden(0).Value = True',
    `book = StarDesktop.loadComponentFromURL("file://${file}", "_blank", 0, hidden())`,
    `sheet = book.Sheets.getByName("${sheet}")`,
    'sheet.unprotect("")',
    `sheet.Rows.insertByIndex(${above - 1}, 1)`,
    ...filled,
    'book.calculateAll()',
    'Dim form(0) As New com.sun.star.beans.PropertyValue',
    'form(0).Name = "FilterName" : form(0).Value = "Calc MS Excel 2007 XML"',
    `book.storeToURL("file://${target}", form())`,
    'book.close(True)',
    'End Sub',
  ].join('\n');
  const profile = profileIn(folder);
  // The first start of a profile writes its own library over ours.
  execFileSync('soffice', [profile, '--headless', '--norestore', '--terminate_after_init'], {
    stdio: 'ignore',
  });
  const standard = join(folder, 'profile', 'user', 'basic', 'Standard');
  mkdirSync(standard, { recursive: true });
  writeFileSync(join(standard, 'script.xlb'), LIBRARY);
  writeFileSync(join(folder, 'profile', 'user', 'basic', 'script.xlc'), LIBRARIES);
  writeFileSync(
    join(standard, 'Rows.xba'),
    `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Rows" script:language="StarBasic">${macro.replaceAll('&', '&amp;').replaceAll('"', '&quot;')}</script:module>`,
  );
  execFileSync('soffice', [profile, '--headless', '--norestore', 'macro:///Standard.Rows.Insert'], {
    stdio: 'ignore',
    timeout: 60_000,
  });
  return target;
}
