import {
  COMPARING_PAPERS,
  EVERY_PAPER,
  INTERNAL_PAPER,
  PAPERS,
  PRINTED_PAPERS,
  type PaperKind,
} from '../../papers/kinds';
import { UsageError, type Call, type Command } from '../command';
import type { Evaluation } from '../../../core/evaluation';
import type { Comparison } from '../../../core/scenario';
import { comparedScenarios } from '../../papers/compared';
import { evaluated, fileOf, loadProject } from '../load';
import { SCENARIO_OPTION } from './estimate';

export const documentsCommand: Command = {
  name: 'documents',
  words: 'Writes the papers of one scenario into a folder.',
  usage: `reefwright documents FILE --out DIR [--scenario ID] [--only ${PAPERS.join(',')}] [--json]`,
  options: {
    ...SCENARIO_OPTION,
    out: {
      type: 'string',
      words: 'the folder to write into; it is made when it is not there',
      sample: 'DIR',
    },
    only: {
      type: 'string',
      words: `which papers, by comma; all of these unless given; ${PRINTED_PAPERS.join(', ')}, the report of one reader, and ${INTERNAL_PAPER}, the build-up of the bid, only when named`,
      sample: PAPERS.join(','),
    },
  },
  run: call => {
    const out = call.option('out');
    if (out === undefined) throw new UsageError('--out is needed: the folder to write into.');
    const kinds = kindsOf(call);
    return evaluated(call, async evaluation => {
      const { writePapers } = await import('../../papers/paper-set');
      const written = await writePapers(
        evaluation,
        out,
        kinds,
        alternatives(call, kinds, evaluation),
        told(call),
      );
      const findings = [...evaluation.findings, ...written.findings];
      return { json: { files: written.files, findings }, lines: written.files, findings };
    });
  },
};

/** All scenarios of the file side by side, simulated with the same luck, where a paper shows them. */
function alternatives(call: Call, kinds: readonly PaperKind[], chosen: Evaluation): Comparison | undefined {
  if (!kinds.some(kind => COMPARING_PAPERS.includes(kind))) return undefined;
  const { project } = loadProject(fileOf(call));
  if (project === undefined) return undefined;
  const options = { today: chosen.today, isSimulated: true, onProgress: told(call) };
  return comparedScenarios(project, options, [chosen]);
}

/** Tells how far the work has come, on standard error; not with --json. */
function told(call: Call): (words: string) => void {
  return call.flag('json') ? () => undefined : words => process.stderr.write(`${words}\n`);
}

function kindsOf(call: Call): PaperKind[] {
  const only = call.option('only');
  if (only === undefined) return [...PAPERS];
  return only.split(',').map(word => {
    const kind = EVERY_PAPER.find(candidate => candidate === word.trim());
    if (kind === undefined) throw new UsageError(`--only takes ${EVERY_PAPER.join(', ')}, not "${word}".`);
    return kind;
  });
}
