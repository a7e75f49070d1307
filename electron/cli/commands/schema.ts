import { z } from 'zod';
import { projectSchema } from '../../../core/project';
import type { Command } from '../command';

/** The JSON Schema of the document, for other tools; `templates/schema/project.schema.json` is its copy in the project. */
export const schemaCommand: Command = {
  name: 'schema',
  words: 'The JSON Schema (2020-12) of a project file.',
  usage: 'reefwright schema',
  options: {},
  run: () => {
    const json = {
      $id: 'https://reefwright.example/schema/project-1.json',
      ...z.toJSONSchema(projectSchema, { io: 'input' }),
    };
    return { json, lines: [JSON.stringify(json, null, 2)], findings: [] };
  },
};
