import type { Evaluation } from '../evaluate';
import { summarise } from '../summary';
import { lineWords } from './line-words';

/**
 * Finds line by line what the books say of each line, which takes most of their making: afterwards a book is made
 * without waiting for it, and an edit may come between two lines.
 */
export function* bookSteps({ estimate }: Evaluation): Generator<undefined, undefined, undefined> {
  const money = estimate?.money;
  if (estimate === undefined || money === undefined) return undefined;
  for (const line of summarise({ ...estimate, money }).lines) {
    if (line.total !== undefined) lineWords(line, money);
    yield undefined;
  }
  return undefined;
}
