import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { projectSchema } from '../../core/project';

test('the published JSON Schema is the one the program reads documents with', () => {
  const { $id: id, ...published } = JSON.parse(
    readFileSync('templates/schema/project.schema.json', 'utf8'),
  ) as { $id: string };
  expect(id).toMatch(/project-1/);
  expect(published).toEqual(JSON.parse(JSON.stringify(z.toJSONSchema(projectSchema, { io: 'input' }))));
});
