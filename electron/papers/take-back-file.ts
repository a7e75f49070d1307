import type { Finding } from '../../core/base';
import { evaluate, type Evaluation } from '../../core/evaluation';
import {
  cellsOfCsv,
  documentHash,
  estimateWorkbook,
  otherCells,
  otherVersion,
  readInputs,
  takeBack,
  type FileCell,
  type TakenBack,
  type WholeEvaluation,
} from '../../core/papers';
import type { Project } from '../../core/project';
import { comparedScenarios } from './compared';
import { readCsv } from '../imports/read-table';
import { readInWorker } from './workbook-worker';

/** A paper that came back: its bytes and its name, which tells its form. */
export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What came of reading a paper: the preview, or the findings that say why there is none. */
export interface TakeBackOutcome {
  readonly scenario?: string;
  readonly taken?: TakenBack;
  readonly findings: readonly Finding[];
}

/**
 * Reads a workbook or a CSV file of inputs that came back and works out what it would change in a project. Nothing is
 * changed: the caller shows the preview and takes `taken.project` when the user agrees.
 * @param reader where the built reader of workbooks lies.
 */
export async function takeBackFile(
  project: Project,
  paper: PaperFile,
  reader: URL | string | undefined,
  schedules?: number,
): Promise<TakeBackOutcome> {
  const isCsv = /\.csv$/i.test(paper.name);
  const cells = isCsv
    ? cellsOfCsv(readCsv(new TextDecoder().decode(paper.bytes)))
    : await workbookCells(paper, reader);
  if (!Array.isArray(cells)) return { findings: [cells] };
  const { stamp, rows, findings } = readInputs(cells);
  if (stamp === undefined) return { findings };
  if (!project.scenarios.some(({ id }) => id === stamp.scenario))
    return { findings: [noScenario(stamp.scenario)] };
  const options = { today: stamp.dated, seed: 1, ...(schedules !== undefined && { schedules }) };
  const evaluation = evaluate(project, { ...options, scenario: stamp.scenario });
  if (!isWhole(evaluation)) return { findings: evaluation.findings };
  const shownTotal = isCsv ? undefined : totalOf(cells);
  const taken = takeBack(evaluation, rows, {
    ...options,
    document: project,
    origin: { kind: isCsv ? 'CSV file' : 'workbook', dated: stamp.dated },
    ...(shownTotal !== undefined && { totalOfPaper: shownTotal }),
  });
  const hash = documentHash(evaluation.project);
  const beside = isCsv || hash !== stamp.document ? [] : besideInputs(evaluation, project, cells);
  const all = [...findings, ...otherVersion(stamp, hash), ...taken.findings, ...beside];
  return { scenario: stamp.scenario, taken: { ...taken, findings: all }, findings: all };
}

async function workbookCells(
  { name, bytes }: PaperFile,
  reader: URL | string | undefined,
): Promise<FileCell[] | Finding> {
  const message = await readInWorker(reader, bytes);
  if ('cells' in message) return [...message.cells];
  return {
    code: 'take-back/cannot-be-read',
    weight: 'blocks',
    place: name,
    message: `The workbook could not be read: ${message.refused}.`,
    meaning: 'Nothing was taken back.',
    remedy: 'Save it as xlsx in a spreadsheet, or write a new one and put the changes in there.',
  };
}

/** The workbook is written again, as it was handed out, and every cell beside the inputs is compared. */
function besideInputs(evaluation: Evaluation, project: Project, cells: readonly FileCell[]): Finding[] {
  const has = (name: string) => cells.some(({ sheet }) => sheet === name);
  const comparison =
    has('Comparison') || has('Risk')
      ? comparedScenarios(project, { today: evaluation.today, isSimulated: has('Risk') }, [evaluation])
      : undefined;
  const paper = estimateWorkbook(evaluation, comparison);
  return paper === undefined ? [] : otherCells(paper, cells);
}

/** The total on the cover, as the workbook last reckoned it. */
function totalOf(cells: readonly FileCell[]): number | undefined {
  const cell = cells.find(({ sheet, row, column }) => sheet === 'Cover' && row === 7 && column === 2);
  return cell?.content.kind === 'number' ? cell.content.value : undefined;
}

function isWhole(evaluation: Evaluation): evaluation is WholeEvaluation {
  return evaluation.estimate?.money !== undefined;
}

function noScenario(id: string): Finding {
  return {
    code: 'take-back/no-scenario',
    weight: 'blocks',
    place: 'Inputs!A4',
    message: `The paper is of scenario "${id}", which the project does not have.`,
    meaning: 'Nothing was taken back.',
    remedy: 'Open the project from which the paper was written.',
  };
}
