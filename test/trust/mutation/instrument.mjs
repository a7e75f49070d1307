import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

/** The tool that finds the places to change; fetched beside the copy, no package of the project. */
export const TOOL = '@stryker-mutator/instrumenter@9.6.1';

const silent = {
  isDebugEnabled: () => false,
  debug: () => undefined,
  info: () => undefined,
  warn: () => undefined,
};

/** Writes every change into the files of a copy, each behind a switch, and gives what they are. */
export async function instrument(shop, copy, files) {
  const entry = createRequire(path.join(shop, 'package.json')).resolve('@stryker-mutator/instrumenter');
  const { Instrumenter, createInstrumenter } = await import(pathToFileURL(entry).href);
  const made = [];
  const injector = {
    provideValue: (_token, value) => (made.push(value), injector),
    injectClass: () => new Instrumenter(silent, made[1], made[0], made[2]),
  };
  const sources = files.map(name => ({
    name: path.join(copy, name),
    mutate: true,
    content: fs.readFileSync(path.join(copy, name), 'utf8'),
  }));
  const options = { plugins: null, excludedMutations: [], ignorers: [], noHeader: false };
  const { files: written, mutants } = await createInstrumenter(injector).instrument(sources, options);
  for (const { name, content } of written) fs.writeFileSync(name, `// @ts-nocheck\n${content}`);
  return mutants.map(({ id, fileName, location, replacement }) => {
    const { content } = sources.find(({ name }) => name === fileName);
    return { id, file: path.relative(copy, fileName), ...placeOf(location, content), put: replacement };
  });
}

function placeOf({ start, end }, source) {
  const lines = source.split('\n').slice(start.line, end.line + 1);
  const line = lines[0].trim();
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column);
  lines[0] = lines[0].slice(start.column);
  return { at: start.line + 1, line, was: lines.join('\n') };
}
