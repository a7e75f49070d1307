import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import JSZip from 'jszip';
import { describe, expect, test } from 'vitest';
import {
  estimateWorkbook,
  inputCells,
  otherCells,
  readInputs,
  takeBack,
  type InputCell,
  type PaperWorkbook,
  type TypedRow,
} from '../../core/papers';
import { dollarsOf } from '../../core/money';
import { readWorkbook } from '../../electron/papers/read-workbook';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { demoProject, estimated, evaluated } from '../core/evaluation/demo';
import { coverTotals, findSoffice, recalculate, workFolder } from './recalculate';

/** Cells of each kind that are changed in turn: 50 when the long run is asked for, a sample otherwise. */
const OF_EACH_KIND = process.env['REEFWRIGHT_LONG'] === '1' ? 50 : 4;
/** `REEFWRIGHT_PART=2/5` changes the second of five parts of them, so that the long run can be made in pieces. */
const [PART, PARTS] = (process.env['REEFWRIGHT_PART'] ?? '1/1').split('/').map(Number);

const project = demoProject();
const first = evaluated(project);
const whole = { ...first, estimate: estimated(first) };
const cells = inputCells(whole);
const paper = estimateWorkbook(first);
if (paper === undefined) throw new Error('the example has no estimate');

/** Sheets of words and pictures do not reckon; without them LibreOffice is done in half the time. */
const SILENT = [
  'Assumptions',
  'Sources',
  'Time chart',
  'Schedule',
  'Findings',
  'Cautions',
  'Glossary',
  'Charts',
];

function reckoning({ sheets, ...rest }: PaperWorkbook): PaperWorkbook {
  return { ...rest, sheets: sheets.filter(({ name }) => !SILENT.includes(name)) };
}

/** Another amount for a cell: a tenth more, or something where nothing stands. */
function otherAmount({ kind, key, value, unit }: InputCell): number {
  if (kind === 'rate' && unit === '1' && Number(value) === 0) return 0.02;
  if (kind === 'quote') return key.endsWith('/share') ? 0.25 : 12_345.67;
  if (value === undefined || Number(value) === 0) return kind === 'survey result' ? 37 : 12;
  return Number((Number(value) * 1.1).toFixed(6));
}

/** Some of each kind, spread over all of the kind. */
function chosen(): InputCell[] {
  const kinds = [...new Set(cells.map(cell => cell.kind))];
  return kinds.flatMap(kind => {
    const own = cells.filter(cell => cell.kind === kind);
    const count = Math.min(OF_EACH_KIND, own.length);
    return Array.from(
      { length: count },
      (_, i) => own[Math.floor((i * own.length) / count)] ?? own[0],
    ).flatMap(cell => cell ?? []);
  });
}

function typed(cell: InputCell, value: number): TypedRow {
  const row = cells.indexOf(cell) + 6;
  return {
    address: `Inputs!C${row}`,
    key: cell.key,
    value: { kind: 'number', value },
    unit: cell.unit,
    basis: '',
    source: '',
  };
}

const OPTIONS = {
  document: project,
  origin: { kind: 'workbook', dated: '2026-11-24' },
  seed: 1,
  schedules: 1,
} as const;

describe.skipIf(findSoffice() === undefined)('figures changed in the workbook', () => {
  test('come back: with each changed cell the program gives the total that LibreOffice reckons, to the cent', async () => {
    const folder = workFolder();
    const bytes = await writeWorkbook(reckoning(paper));
    const changes = chosen()
      .filter((_, i) => i % (PARTS ?? 1) === (PART ?? 1) - 1)
      .map(cell => ({ cell, value: otherAmount(cell) }));
    const files = await Promise.all(
      changes.map(async ({ cell, value }, i) => {
        const file = join(folder, `copy-${i}.xlsx`);
        writeFileSync(file, await withAmount(bytes, cells.indexOf(cell) + 6, value));
        return file;
      }),
    );
    const totals = coverTotals(folder, files);
    const before = dollarsOf(totalOf(whole.estimate));
    const wrong: string[] = [];
    let moved = 0;
    changes.forEach(({ cell, value }, i) => {
      const { edits, totals: ours, findings } = takeBack(whole, [typed(cell, value)], OPTIONS);
      const held = ours.atSameDates && dollarsOf(ours.atSameDates);
      if (edits.length !== 1 || held !== totals[i])
        wrong.push(
          `${cell.key} ${value}: ${held ?? 'absent'}, LibreOffice ${totals[i] ?? 'absent'} ${JSON.stringify(findings.filter(f => f.code !== 'take-back/rows-missing'))}`,
        );
      if (totals[i] !== before) moved++;
    });

    const told = `${changes.length} changed cells, ${changes.length - wrong.length} equal, ${moved} move the total`;
    process.stdout.write(`${told}\n`);
    expect(wrong).toEqual([]);
    expect(moved).toBeGreaterThan(changes.length * 0.7);
  }, 1_400_000);

  test('a workbook that LibreOffice saved again without a change asks for none', async () => {
    const folder = workFolder();
    const file = join(folder, 'same.xlsx');
    writeFileSync(file, await writeWorkbook(paper));
    const [saved = ''] = recalculate(folder, [file]);
    const read = await readWorkbook(readFileSync(saved));
    const { rows, stamp, findings } = readInputs(read);
    expect(stamp?.scenario).toBe(first.scenario.id);
    expect(rows.length).toBe(cells.length);
    const taken = takeBack(whole, rows, OPTIONS);
    expect([...findings, ...taken.findings, ...otherCells(paper, read)]).toEqual([]);
    expect(taken.edits).toEqual([]);
  }, 120_000);
});

function totalOf({ money }: typeof whole.estimate) {
  const total = money.result.money(money.sums.total);
  if (total === undefined) throw new Error('the example has a total');
  return total;
}

/** The workbook with another amount in one cell of the sheet of inputs. */
async function withAmount(bytes: Buffer, row: number, value: number): Promise<Buffer> {
  const zip = await JSZip.loadAsync(bytes);
  const index =
    reckoning(paper ?? { title: '', date: '', sheets: [], names: [] }).sheets.findIndex(
      ({ name }) => name === 'Inputs',
    ) + 1;
  const part = `xl/worksheets/sheet${index}.xml`;
  const sheet = (await zip.file(part)?.async('string')) ?? '';
  const cell = new RegExp(`<c r="C${row}"( s="\\d+")?[^>]*?(/>|>.*?</c>)`);
  if (!cell.test(sheet)) throw new Error(`there is no cell C${row}`);
  zip.file(part, sheet.replace(cell, `<c r="C${row}"$1><v>${value}</v></c>`));
  return zip.generateAsync({ type: 'nodebuffer', compression: 'STORE' });
}
