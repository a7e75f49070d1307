import { PAPERS, type PaperKind } from '../../papers/kinds';
import { UsageError, type Call, type Command } from '../command';
import { evaluated } from '../load';
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
    only: { type: 'string', words: 'which papers, by comma; all unless given', sample: PAPERS.join(',') },
  },
  run: call => {
    const out = call.option('out');
    if (out === undefined) throw new UsageError('--out is needed: the folder to write into.');
    const kinds = kindsOf(call);
    return evaluated(call, async evaluation => {
      const { writePapers } = await import('../../papers/paper-set');
      const written = await writePapers(evaluation, out, kinds);
      const findings = [...evaluation.findings, ...written.findings];
      return { json: { files: written.files, findings }, lines: written.files, findings };
    });
  },
};

function kindsOf(call: Call): PaperKind[] {
  const only = call.option('only');
  if (only === undefined) return [...PAPERS];
  return only.split(',').map(word => {
    const kind = PAPERS.find(candidate => candidate === word.trim());
    if (kind === undefined) throw new UsageError(`--only takes ${PAPERS.join(', ')}, not "${word}".`);
    return kind;
  });
}
