import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { lowerFirst, type Finding } from '../../core/base';
import { bidView, grantView, type Evaluation } from '../../core/evaluation';
import {
  bidWorkbook,
  calendarFile,
  csvFiles,
  estimateWorkbook,
  internalWorkbook,
  evaluationJson,
  paperStem,
  reportHtml,
  type ReportReader,
} from '../../core/papers';
import type { Comparison } from '../../core/scenario';
import type { PaperKind } from './kinds';
import { findChromium, printPdf } from './print';
import { writeWorkbook } from './write-workbook';

/** What was written, and what could not be. */
export interface WrittenPapers {
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

/** What the papers are made from: one scenario, and all of them side by side when they are known. */
interface PaperSource {
  readonly evaluation: Evaluation;
  readonly comparison: Comparison | undefined;
}

/**
 * Writes the papers of one scenario into a folder, which is made when it is not there.
 * @param comparison all scenarios side by side, for the papers that show alternatives.
 * @param onProgress told before each paper.
 */
export async function writePapers(
  evaluation: Evaluation,
  folder: string,
  kinds: readonly PaperKind[],
  comparison?: Comparison,
  onProgress: (words: string) => void = () => undefined,
): Promise<WrittenPapers> {
  mkdirSync(folder, { recursive: true });
  const source = { evaluation, comparison };
  const written: WrittenPapers[] = [];
  for (const [i, kind] of kinds.entries()) {
    onProgress(`writing ${kind}, ${i + 1} of ${kinds.length}`);
    written.push(await writers[kind](source, folder));
  }
  return {
    files: written.flatMap(({ files }) => files),
    findings: written.flatMap(({ findings }) => findings),
  };
}

type Writer = (source: PaperSource, folder: string) => Promise<WrittenPapers> | WrittenPapers;

const writers: Readonly<Record<PaperKind, Writer>> = {
  workbook: async (source, folder) => {
    const paper = estimateWorkbook(source.evaluation, source.comparison);
    if (paper === undefined) return nothing('workbook', source);
    return file(source, folder, 'estimate.xlsx', await writeWorkbook(paper));
  },
  report: (source, folder) => printed(source, folder, ['board', 'grant', 'bid']),
  'board-report': (source, folder) => printed(source, folder, ['board']),
  'grant-file': (source, folder) => printed(source, folder, ['grant']),
  'bid-print': (source, folder) => printed(source, folder, ['bid']),
  bid: async (source, folder) => {
    const paper = bidWorkbook(source.evaluation);
    return paper === undefined ? noBid(source) : file(source, folder, 'bid.xlsx', await writeWorkbook(paper));
  },
  internal: async (source, folder) => {
    const paper = internalWorkbook(source.evaluation);
    return paper === undefined
      ? noBid(source)
      : file(source, folder, 'internal-build-up.xlsx', await writeWorkbook(paper));
  },
  calendar: (source, folder) => {
    const text = calendarFile(source.evaluation);
    return text === undefined ? nothing('calendar', source) : file(source, folder, 'calendar.ics', text);
  },
  csv: (source, folder) => {
    const { estimate } = source.evaluation;
    if (estimate?.money === undefined) return nothing('CSV files', source);
    const csv = csvFiles(source.evaluation);
    const written = csv.map(({ name, text }) => file(source, folder, `${name}.csv`, text));
    return { files: written.flatMap(({ files }) => files), findings: [] };
  },
  json: (source, folder) => {
    const json = evaluationJson(source.evaluation, source.comparison);
    return file(source, folder, 'evaluation.json', JSON.stringify(json, null, 1) + '\n');
  },
};

/** The ends of the names of the reports. */
const REPORT_ENDS: Readonly<Record<ReportReader, string>> = {
  board: 'report.pdf',
  grant: 'grant-file.pdf',
  bid: 'bid-file.pdf',
};

/** The reports of a scenario; a reader whose matter is not there gets none, and is told so when nobody gets one. */
async function printed(
  source: PaperSource,
  folder: string,
  readers: readonly ReportReader[],
): Promise<WrittenPapers> {
  const { evaluation, comparison } = source;
  const pages = readers.flatMap(reader => {
    const html = reportHtml(evaluation, comparison, reader);
    const target = join(folder, `${paperStem(evaluation)}-${REPORT_ENDS[reader]}`);
    return html === undefined ? [] : [{ html, target }];
  });
  if (pages.length === 0) return withheld(source, readers);
  const chromium = findChromium();
  if (chromium === undefined) return { files: [], findings: [NO_CHROMIUM] };
  for (const { html, target } of pages) await printPdf(chromium, html, target);
  const files = pages.map(({ target }) => target).filter(target => existsSync(target));
  return {
    files,
    findings:
      files.length === pages.length
        ? []
        : [{ ...NO_CHROMIUM, message: 'The Chromium that was found did not print every report.' }],
  };
}

function file(
  { evaluation }: PaperSource,
  folder: string,
  end: string,
  text: string | Buffer,
): WrittenPapers {
  const target = join(folder, `${paperStem(evaluation)}-${end}`);
  writeFileSync(target, text);
  return { files: [target], findings: [] };
}

const NO_CHROMIUM: Finding = {
  code: 'papers/no-chromium',
  weight: 'warns',
  place: '--only report',
  message: 'The report was not written: there is no Chromium on the PATH to print it.',
  meaning: 'All other papers are written.',
  remedy: 'Install Chromium or Edge, or print the report from the window.',
};

/** Why nobody gets a report. */
function withheld(source: PaperSource, readers: readonly ReportReader[]): WrittenPapers {
  if (readers.includes('board') || source.evaluation.estimate?.money === undefined)
    return nothing('report', source);
  return readers.includes('bid') ? noBid(source) : noGrant(source);
}

/** No grant file without a budget of a grant. */
function noGrant({ evaluation }: PaperSource): WrittenPapers {
  const finding: Finding = {
    code: 'papers/no-grant',
    weight: 'warns',
    place: '/funding/sources',
    message: 'The grant file was not written: there is no budget of a grant.',
    meaning: 'No source of money is named, or something withholds the forms.',
    remedy: 'Name the sources of the money in Funding, then make the grant file again.',
  };
  return { files: [], findings: [finding, ...grantView(evaluation).findings] };
}

/** No bid file without a whole bid: what blocks it is told with it. */
function noBid(source: PaperSource): WrittenPapers {
  const own = bidView(source.evaluation).findings;
  const { files, findings } = nothing('bid', source, own);
  return { files, findings: [...findings, ...own] };
}

/** A paper that something withholds: what that is, first of all, and how much else. */
function nothing(paper: string, { evaluation }: PaperSource, own: readonly Finding[] = []): WrittenPapers {
  const [first, ...others] = [...evaluation.findings, ...own].filter(({ weight }) => weight === 'blocks');
  const finding: Finding = {
    code: 'papers/no-estimate',
    weight: 'warns',
    place: first?.place ?? '/',
    message: `The ${paper} could not be written: ${first === undefined ? 'there is no estimate' : lowerFirst(first.message.replace(/\.$/, ''))}.`,
    meaning:
      others.length === 0
        ? 'It would leave out what that withholds.'
        : `It would leave out what that withholds; ${others.length} more ${others.length === 1 ? 'finding withholds' : 'findings withhold'} figures.`,
    remedy: 'Put the findings that block right, then write the papers again.',
  };
  return { files: [], findings: [finding] };
}
