import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding } from '../../core/base';
import type { Evaluation } from '../../core/evaluation';
import { estimateWorkbook } from '../../core/papers';
import type { PaperKind } from './kinds';
import { writeWorkbook } from './write-workbook';

/** What was written, and what could not be. */
export interface WrittenPapers {
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

/** Writes the papers of one scenario into a folder, which is made when it is not there. */
export async function writePapers(
  evaluation: Evaluation,
  folder: string,
  kinds: readonly PaperKind[],
): Promise<WrittenPapers> {
  mkdirSync(folder, { recursive: true });
  const files: string[] = [];
  for (const kind of kinds) files.push(...(await writers[kind](evaluation, folder)));
  return { files, findings: [] };
}

const writers: Readonly<Record<PaperKind, (evaluation: Evaluation, folder: string) => Promise<string[]>>> = {
  workbook: async (evaluation, folder) => {
    const paper = estimateWorkbook(evaluation);
    if (paper === undefined) return [];
    const file = join(folder, `${evaluation.scenario.id}-estimate.xlsx`);
    writeFileSync(file, await writeWorkbook(paper));
    return [file];
  },
};
