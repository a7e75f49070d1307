import { existsSync, writeFileSync } from 'node:fs';
import { shippedLibrary } from '../../../core/evaluation';
import { startingProject, writeProject, type Project } from '../../../core/project';
import { UsageError, type Command } from '../command';

const TEMPLATES: Readonly<Record<string, Project['reader']>> = {
  grant: 'grant',
  bid: 'bid',
  comparison: 'comparison',
};

export const newCommand: Command = {
  name: 'new',
  words: 'A starting project for a grant budget, a bid or a comparison.',
  usage: 'reefwright new --template grant|bid|comparison [--hull-type TYPE] --out FILE',
  options: {
    template: { type: 'string', words: 'what the project is for', sample: 'grant|bid|comparison' },
    'hull-type': { type: 'string', words: 'which kind of ship; rom --help lists them', sample: 'TYPE' },
    out: { type: 'string', words: 'the file to write; an existing one is left alone', sample: 'FILE' },
  },
  run: call => {
    const reader = TEMPLATES[call.option('template') ?? ''];
    if (reader === undefined)
      throw new UsageError(`--template takes one of: ${Object.keys(TEMPLATES).join(', ')}.`);
    const out = call.option('out');
    if (out === undefined)
      throw new UsageError('--out is needed: the file to write, such as my-reef.reef.json.');
    if (existsSync(out))
      throw new UsageError(`${out} is there already and was left alone. Choose another name.`);
    const library = shippedLibrary();
    const hullType = call.option('hull-type') ?? 'naval-auxiliary';
    if (!library.hullTypes.some(type => type.id === hullType))
      throw new UsageError(`--hull-type takes one of: ${library.hullTypes.map(type => type.id).join(', ')}.`);
    const project = startingProject(library, {
      reader,
      hullType,
      title: 'New reef project',
      start: call.today ?? call.machineDate,
    });
    writeFileSync(out, writeProject(project), { flag: 'wx' });
    return {
      json: { file: out },
      lines: [`Wrote ${out}. Its particulars are starting values: replace them by the ship’s own.`],
      findings: [],
    };
  },
};
