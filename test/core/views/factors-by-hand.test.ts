import { expect, test } from 'vitest';
import { WhyDesk, type WhyRow } from '../../../core/views';
import { awkward } from './awkward';

const numberIn = (text: string) => Number(text.replaceAll(',', '').replace('−', '-').replace('$', ''));

/** What the rows right under a figure give when they are multiplied by hand as they are shown. */
function byHand(rows: readonly WhyRow[]): number | undefined {
  const own = rows.filter(row => row.depth === 0);
  const isProduct = own.length > 1 && own.slice(1).every(({ operator }) => operator === '×');
  const numbers = own.map(row => numberIn(row.value.text));
  return isProduct && !numbers.some(Number.isNaN) ? numbers.reduce((a, b) => a * b) : undefined;
}

test('factors of a derivation, multiplied by hand as they are shown, give its value to the last digit', () => {
  const example = awkward('the example');
  const desk = new WhyDesk(example, 'us');
  const { estimate } = example;
  if (estimate === undefined) throw new Error('the example is estimated');
  const open = ['sums/total'];
  const seen = new Set(open);
  const wrong: string[] = [];
  let told = 0;
  for (let id = open.pop(); id !== undefined && seen.size < 2500; id = open.pop()) {
    const answer = desk.answer(id);
    for (const row of answer?.rows ?? []) {
      const { why } = row.value;
      if (why !== undefined && !seen.has(why)) {
        seen.add(why);
        open.push(why);
      }
    }
    const hand = byHand(answer?.rows ?? []);
    if (answer === undefined || hand === undefined) continue;
    const { text, unit } = answer.value;
    const last = unit === '$' || unit === 'USD' ? 0.01 : 10 ** -(/\.(\d+)$/.exec(text)?.[1]?.length ?? 0);
    told += 1;
    if (Math.abs(hand - numberIn(text)) > last * 1.01) wrong.push(`${id}: ${text} and not ${hand}`);
  }
  expect(told).toBeGreaterThan(100);
  expect(wrong).toEqual([]);
});
