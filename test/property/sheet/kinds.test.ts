import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Step } from '../../../core/sheet';
import { randomPair } from '../../core/sheet/random-sheet';

const KINDS = resolve(import.meta.dirname, '../../../core/sheet/kinds');

/** The operations that the records of kinds declare. */
function declared(): string[] {
  const text = readdirSync(KINDS)
    .map(file => readFileSync(join(KINDS, file), 'utf8'))
    .join('\n');
  const plain = [...text.matchAll(/operation: '([^']+)'/g)].map(match => match[1] ?? '');
  const chosen = [...text.matchAll(/operation: \w+ \? '([^']+)' : '([^']+)'/g)].flatMap(m => [
    m[1] ?? '',
    m[2] ?? '',
  ]);
  const named = [...text.matchAll(/record\('(\w+)', \w+\)/g)].map(match => match[1] ?? '');
  return [...new Set([...plain, ...chosen, ...named])].sort();
}

describe('the random sheets that parity and columns are tested on', () => {
  it('hold every kind of step there is, many times', () => {
    const counts = new Map<string, number>(declared().map(operation => [operation, 0]));
    for (let seed = 1; seed <= 60; seed++) {
      const pair = randomPair(seed);
      const seen = new Set<Step>();
      const visit = (step: Step): void => {
        if (seen.has(step)) return;
        seen.add(step);
        counts.set(step.kind.operation, (counts.get(step.kind.operation) ?? 0) + 1);
        step.inputs.forEach(visit);
      };
      for (const { sheet } of [pair.work, pair.money]) {
        for (const table of sheet.tables) table.placed.forEach(visit);
        for (const block of sheet.blocks) block.entries().forEach(visit);
      }
    }
    expect([...counts].filter(([, count]) => count < 20)).toEqual([]);
    expect([...counts.keys()].sort()).toEqual(declared());
    expect(declared().length).toBeGreaterThan(20);
  });
});
