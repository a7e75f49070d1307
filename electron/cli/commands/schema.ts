import { z } from 'zod';
import { projectSchema } from '../../../core/project';
import { evaluationSchema } from '../../../core/papers';
import { UsageError, type Command } from '../command';

/** The JSON Schemas of the files, for other tools; `templates/schema` holds a copy of each. */
export const schemaCommand: Command = {
  name: 'schema',
  words: 'The JSON Schema (2020-12) of a project file, or of the JSON of an evaluation.',
  usage: 'reefwright schema [--of project|evaluation]',
  options: {
    of: { type: 'string', words: 'which file; the project unless given', sample: 'project|evaluation' },
  },
  run: call => {
    const of = call.option('of') ?? 'project';
    const schema = of === 'project' ? projectSchema : of === 'evaluation' ? evaluationSchema : undefined;
    if (schema === undefined) throw new UsageError(`--of takes project or evaluation, not "${of}".`);
    const json = {
      $id: `https://reefwright.example/schema/${of}-1.json`,
      ...z.toJSONSchema(schema, { io: 'input' }),
    };
    return { json, lines: [JSON.stringify(json, null, 2)], findings: [] };
  },
};
