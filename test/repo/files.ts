import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** A source file with its text and number of lines. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  readonly lines: number;
}

/** Every source file below a folder of the project, in order of path. */
export function sourceFiles(folder: string): SourceFile[] {
  return walk(folder)
    .filter(path => /\.(ts|tsx)$/.test(path))
    .sort()
    .map(path => {
      const text = readFileSync(path, 'utf8');
      return { path, text, lines: text.split('\n').length - 1 };
    });
}

function walk(folder: string): string[] {
  return readdirSync(folder).flatMap(name => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? walk(path) : [path];
  });
}
