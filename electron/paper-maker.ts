import path from 'node:path';
import { evaluate } from '../core/evaluation';
import { readProject } from '../core/project';
import type { PaperMaker } from './paper-room';
import { HostProblem } from './problem';
import { EVERY_PAPER } from './papers/kinds';

/** Makes papers from the text of a document: the host evaluates it again, the same document and seed as the window. */
export function paperMaker(today: () => string): PaperMaker {
  return async ({ text, scenario, only }, folder) => {
    const { project, findings } = readProject(text);
    if (project === undefined) throw withheld(findings[0]?.message ?? 'The document cannot be read.');
    const options = { today: project.statusDate ?? today(), seed: 1 };
    const evaluation = evaluate(project, { ...options, scenario });
    const { comparedScenarios } = await import('./papers/compared');
    const isSimulated = ['report', 'workbook', 'json'].some(kind => only.includes(kind));
    const comparison = comparedScenarios(project, { today: options.today, isSimulated }, [evaluation]);
    const { writePapers } = await import('./papers/paper-set');
    const kinds = EVERY_PAPER.filter(kind => only.includes(kind));
    const written = await writePapers(evaluation, folder, kinds, comparison);
    if (written.files.length === 0) throw withheld(written.findings[0]?.message ?? 'Nothing was written.');
    return written.files.map(file => path.relative(folder, file));
  };
}

function withheld(message: string): HostProblem {
  return new HostProblem({
    code: 'papers/withheld',
    message,
    meaning: 'The paper was not written; the project is as it was.',
    remedy: 'Put right what Review lists first, then make the paper again.',
  });
}
