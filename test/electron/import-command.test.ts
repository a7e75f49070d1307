import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Call } from '../../electron/cli/command';
import { importCommand } from '../../electron/cli/commands/import';
import { loadProject } from '../../electron/cli/load';
import { newFolder } from './support';

const DEMO = 'demo/wrenfield.reef.json';
const call = (files: readonly string[], options: Readonly<Record<string, string>>): Call => ({
  files,
  option: name => options[name],
  flag: () => false,
  today: undefined,
  machineDate: '2026-11-24',
});
const table = (text: string | Uint8Array, name = 'results.csv') => {
  const file = path.join(newFolder(), name);
  fs.writeFileSync(file, text);
  return file;
};
const RESULTS = 'Sample,Material,Analyte,Result,Unit,Date\nC-09,pcb-cable,PCB,77,mg/kg,2026-09-20\n';

describe('the command import', () => {
  test('without --out shows what would change and writes nothing', async () => {
    const before = fs.readFileSync(DEMO);
    const { json, lines } = await importCommand.run(call([DEMO, table(RESULTS)], { as: 'laboratory' }));
    expect(json).toMatchObject({ added: 1, changed: 0, same: 0, mapping: { id: 'results' } });
    expect(json).not.toHaveProperty('file');
    expect(lines.join('\n')).toMatch(/new +Sample C-09, pcb-cable: PCB 77 mg\/kg/);
    expect(lines.at(-1)).toMatch(/^Nothing was written/);
    expect(fs.readFileSync(DEMO)).toEqual(before);
  });

  test('with --out writes a project that opens, with the mapping in it, and leaves an existing file alone', async () => {
    const out = path.join(newFolder(), 'with-results.reef.json');
    const options = { as: 'laboratory', mapping: 'harbour-lab', out };
    await importCommand.run(call([DEMO, table(RESULTS)], options));
    const { project, findings } = loadProject(out);
    expect(findings).toEqual([]);
    expect(project?.imports?.map(mapping => mapping.id)).toEqual(['harbour-lab']);
    expect(project?.survey.laboratory.at(-1)?.sample).toBe('C-09');
    await expect(async () => importCommand.run(call([DEMO, table(RESULTS)], options))).rejects.toThrow(
      /there already/,
    );
  });

  test('reads semicolons, decimal commas and old Windows letters as it is told', async () => {
    const text = new Uint8Array([
      ...new TextEncoder().encode('Nr;Art;Wert;Tag\nC-09;Kabelm'),
      0xe4, // ä in Windows-1252
      ...new TextEncoder().encode('ntel;1.250,5;20.09.2026\n'),
    ]);
    const { json } = await importCommand.run(
      call([DEMO, table(text)], {
        as: 'laboratory',
        columns: 'sample=Nr;material=Art;result=Wert;date=Tag',
        constants: 'analyte=PCB;unit=mg/kg',
        words: 'Kabelmäntel=pcb-cable',
        dates: 'DD.MM.YYYY',
        decimals: 'comma',
      }),
    );
    expect(json).toMatchObject({ changes: [{ after: 'PCB 1250.5 mg/kg' }] });
  });

  test('a column that is missing blocks: nothing is written even with --out', async () => {
    const out = path.join(newFolder(), 'not-written.reef.json');
    const { findings } = await importCommand.run(
      call([DEMO, table('A,B\n1,2\n')], { as: 'laboratory', out }),
    );
    expect(findings.some(finding => finding.weight === 'blocks')).toBe(true);
    expect(fs.existsSync(out)).toBe(false);
  });

  test('rows that cannot be taken are listed with the reason, and counted', async () => {
    const { lines } = await importCommand.run(
      call([DEMO, table('Trade,Wage\nForeman,abc\nJuggler,30\nBurner,41.20\n')], { as: 'wages' }),
    );
    const shown = lines.join('\n');
    expect(shown).toMatch(/left out +The row "Foreman · abc" has no number where one is needed/);
    expect(shown).toMatch(/left out +The rate book has no trade "Juggler"/);
    expect(shown).toMatch(/1 new, 0 changed, 0 the same, 2 left out/);
  });

  test('wrong use is told: no kind, no table, a mapping for something else', async () => {
    const used = async (files: readonly string[], options: Readonly<Record<string, string>>) =>
      importCommand.run(call(files, options));
    await expect(used([DEMO, table(RESULTS)], {})).rejects.toThrow(/--as takes one of/);
    await expect(used([DEMO], { as: 'wages' })).rejects.toThrow(/Name the project file and the table/);
    await expect(used([DEMO, '/no/such.csv'], { as: 'wages' })).rejects.toThrow(/no table/);
    await expect(used([DEMO, table(RESULTS)], { as: 'laboratory', dates: 'tomorrow' })).rejects.toThrow(
      /mapping does not fit: dates/,
    );
  });
});
