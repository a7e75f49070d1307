import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SearchProblem } from '../../../core/scheduling/search';
import { boundNetOf, criticalPath } from '../../../core/scheduling/search/bounds/bound-net';
import { readBounds, type KnownBounds } from './bounds-file';
import type { BenchOptions } from './options';
import { readSch } from './read-sch';
import { readSm } from './read-sm';

/** One instance with what is known of it. */
export interface Instance {
  readonly name: string;
  readonly problem: SearchProblem;
  readonly known: KnownBounds;
  /** What deviations are measured from: the optimum in j30, the critical path elsewhere. */
  readonly reference: number;
  readonly criticalPath: number;
}

/** The instances of the sets, each in natural order, or the folder that is missing. */
export function readInstances(options: BenchOptions): Instance[] | { readonly missing: string } {
  const all: Instance[] = [];
  for (const set of options.set.split(',')) {
    const some = readSet({ ...options, set });
    if ('missing' in some) return some;
    all.push(...spread(some, options.take));
  }
  return all;
}

/** At most so many of a list, at even distances. */
export function spread<T>(list: readonly T[], most: number): T[] {
  const step = Math.max(1, list.length / most);
  return list.filter((_, k) => Math.floor(k / step) !== Math.floor((k - 1) / step));
}

function readSet(options: BenchOptions): Instance[] | { readonly missing: string } {
  const folder = join(options.dir, options.set);
  if (!existsSync(folder)) return { missing: folder };
  const files = readdirSync(folder).filter(file => /\.(sm|sch)$/i.test(file));
  if (files.length === 0) return { missing: join(folder, '*.sm') };
  const known = knownBounds(options);
  return files
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .map(file => instanceOf(folder, file, known, options.set))
    .filter(instance => !options.isHardOnly || (instance.known.upper ?? Infinity) > instance.criticalPath)
    .filter((_, k) => k >= options.from && (k - options.from) % options.every === 0);
}

function knownBounds(options: BenchOptions): Map<string, KnownBounds> {
  const path = join(options.dir, 'bounds.csv');
  const sets = [options.set, `max-${options.set}`];
  const rows = existsSync(path) ? sets.flatMap(set => readBounds(path, set)) : [];
  return new Map(rows.map(row => [row.instance.replace(/\.sch$/, ''), row]));
}

function instanceOf(folder: string, file: string, known: Map<string, KnownBounds>, set: string): Instance {
  const name = file.replace(/\.(sm|sch)$/i, '');
  const text = readFileSync(join(folder, file), 'utf8');
  const hasLags = /\.sch$/i.test(file);
  const problem = hasLags ? readSch(text) : readSm(text);
  const bounds = known.get(name) ?? { instance: name };
  const path = hasLags ? (bounds.lower ?? 1) : criticalPath(boundNetOf(problem));
  return {
    name,
    problem,
    known: bounds,
    criticalPath: path,
    reference: set === 'j30' ? (bounds.upper ?? path) : path,
  };
}
