import path from 'node:path';
import { evaluate, evaluatedWithRuns } from '../../core/evaluation';
import { readProject } from '../../core/project';
import type { Request } from '../channels';
import { HostProblem } from '../problem';
import { comparedScenarios } from './compared';
import { COMPARING_PAPERS, EVERY_PAPER } from './kinds';
import { writePapers } from './paper-set';

/**
 * Makes papers from the text of a document into a folder.
 * @param today the date without a status date, YYYY-MM-DD.
 * @returns the names of the files.
 */
export async function makePapers(
  { text, scenario, only }: Request<'make-papers'>,
  folder: string,
  today: string,
): Promise<readonly string[]> {
  const { project, findings } = readProject(text);
  if (project === undefined) throw withheld(findings[0]?.message ?? 'The document cannot be read.');
  const options = { today: project.statusDate ?? today, seed: 1 };
  const isSimulated = COMPARING_PAPERS.some(kind => only.includes(kind));
  const evaluation = (isSimulated ? evaluatedWithRuns : evaluate)(project, { ...options, scenario });
  const comparison = comparedScenarios(project, { today: options.today, isSimulated }, [evaluation]);
  const kinds = EVERY_PAPER.filter(kind => only.includes(kind));
  const written = await writePapers(evaluation, folder, kinds, comparison);
  if (written.files.length === 0) throw withheld(written.findings[0]?.message ?? 'Nothing was written.');
  return written.files.map(file => path.relative(folder, file));
}

function withheld(message: string): HostProblem {
  return new HostProblem({
    code: 'papers/withheld',
    message,
    meaning: 'The paper was not written; the project is as it was.',
    remedy: 'Put right what Review lists first, then make the paper again.',
  });
}
