import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { createPackage, listPackage } from '@electron/asar';
import { expect, test } from 'vitest';
import { newFolder } from './support';

const ROOT = path.join(import.meta.dirname, '../..');
const isBuilt = fs.existsSync(path.join(ROOT, 'dist/electron/entry.cjs'));

/** A stand-in for Electron's own distribution: enough for the packer, nothing to run. */
async function standIn(): Promise<string> {
  const folder = newFolder();
  const resources = path.join(folder, 'resources');
  const app = path.join(folder, 'empty');
  fs.mkdirSync(resources);
  fs.mkdirSync(app);
  fs.writeFileSync(path.join(app, 'main.js'), '');
  await createPackage(app, path.join(resources, 'default_app.asar'));
  fs.rmSync(app, { recursive: true });
  for (const name of ['LICENSE', 'LICENSES.chromium.html', 'version'])
    fs.writeFileSync(path.join(folder, name), '45.4.1');
  fs.writeFileSync(path.join(folder, 'electron'), '', { mode: 0o755 });
  return folder;
}

test.skipIf(!isBuilt || process.platform !== 'linux')(
  'the packer takes the configuration and packs exactly what was built (skipped unless built, on Linux)',
  async () => {
    const output = newFolder();
    // The stand-in has no fuses to turn: their block is left out here and read below.
    const config = path.join(newFolder(), 'builder.yml');
    fs.writeFileSync(
      config,
      fs
        .readFileSync(path.join(ROOT, 'electron/electron-builder.yml'), 'utf8')
        .replace(/electronFuses:\n( .*\n)+/, ''),
    );
    const words = [
      '--dir',
      '--linux',
      '--config',
      config,
      `-c.electronDist=${await standIn()}`,
      `-c.directories.output=${output}`,
    ];
    const ran = spawnSync(process.execPath, ['node_modules/electron-builder/cli.js', ...words], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(ran.status, ran.stdout + ran.stderr).toBe(0);
    const archive = path.join(output, 'linux-unpacked/resources/app.asar');
    const files = listPackage(archive, { isPack: false }).filter(name => path.extname(name) !== '');
    expect(
      files.filter(
        name =>
          !/^\/(package\.json|dist\/(electron\/(entry\.cjs|preload\.cjs|table-reader\.cjs|paper-reader\.cjs|icon\.png)|renderer\/.+|demo\/.+))$/.test(
            name,
          ),
      ),
    ).toEqual([]);
    expect(files).toContain('/dist/electron/entry.cjs');
    expect(files).toContain('/dist/electron/table-reader.cjs');
    expect(files).toContain('/dist/electron/paper-reader.cjs');
    expect(files).toContain('/dist/renderer/index.html');
    expect(fs.statSync(archive).size).toBeLessThan(10 * 1024 * 1024);
  },
  120_000,
);

test('the configuration turns off every way to run something else with the program', () => {
  const text = fs.readFileSync(path.join(ROOT, 'electron/electron-builder.yml'), 'utf8');
  for (const line of [
    'runAsNode: false',
    'enableNodeOptionsEnvironmentVariable: false',
    'enableNodeCliInspectArguments: false',
    'enableEmbeddedAsarIntegrityValidation: true',
    'onlyLoadAppFromAsar: true',
    'grantFileProtocolExtraPrivileges: false',
    'asar: true',
    'ext: reef.json',
  ]) {
    expect(text).toContain(line);
  }
  expect(text).not.toContain('disableAsarIntegrity');
});
