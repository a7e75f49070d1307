/**
 * How long the workbook of 5,000 lines takes to write, against the bare writer given the same values and formulas, and
 * how much memory it needs.
 */
import ExcelJS from 'exceljs';
import { evaluate } from '../../core/evaluation';
import { estimateWorkbook, type PaperWorkbook } from '../../core/papers';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { TODAY, largeProject } from './large-project';

/** The same cells without any look, check or chart. */
async function bare(paper: PaperWorkbook): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  for (const { name, cells } of paper.sheets) {
    const sheet = book.addWorksheet(name);
    for (const { row, column, content } of cells) {
      const cell = sheet.getCell(row, column);
      if (content.kind === 'formula') cell.value = { formula: content.formula, result: content.result };
      else if (content.kind === 'date') cell.value = new Date(`${content.iso}T00:00:00Z`);
      else cell.value = 'text' in content ? content.text : content.value;
    }
  }
  return Buffer.from(await book.xlsx.writeBuffer());
}

async function timed(work: () => Promise<Buffer>): Promise<{ seconds: number; bytes: number }> {
  const started = performance.now();
  const { length } = await work();
  return { seconds: (performance.now() - started) / 1000, bytes: length };
}

export async function workbook(): Promise<number> {
  const project = largeProject(5000);
  const evaluation = evaluate(project, { today: TODAY, seed: 1, schedules: 1, upright: false });
  const started = performance.now();
  const paper = estimateWorkbook(evaluation);
  if (paper === undefined) throw new Error('the large project has no estimate');
  const model = (performance.now() - started) / 1000;
  const lines = evaluation.estimate?.work.rows.length ?? 0;
  const cells = paper.sheets.reduce((sum, sheet) => sum + sheet.cells.length, 0);
  const plain = await timed(() => bare(paper));
  const ours = await timed(() => writeWorkbook(paper));
  const peak = process.resourceUsage().maxRSS / 1024;
  process.stdout.write(
    [
      `workbook of ${lines} lines, ${cells} cells`,
      `cells made ready ${model.toFixed(1)} s`,
      `bare writer ${plain.seconds.toFixed(1)} s, ours ${ours.seconds.toFixed(1)} s: ${(ours.seconds / plain.seconds).toFixed(2)} times`,
      `${(ours.bytes / 2 ** 20).toFixed(1)} MB written, at most ${peak.toFixed(0)} MB of memory, evaluation and bare writer included`,
      '',
    ].join('\n'),
  );
  return 0;
}
