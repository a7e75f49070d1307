import { expect, it } from 'vitest';
import { bidPaper } from '../../../core/papers';

it('a bid item without a unit price is a lump sum wherever the bid file speaks of it', () => {
  const item = { number: 1, title: 'Clean-up', unit: 'lump sum', quantity: 1, amount: 99_600 };
  const { sheets } = bidPaper(
    { items: [item], baseBid: 99_600, alternates: [] },
    { title: 'Test', date: '2026-11-25', sample: false, offer: [] },
  );
  const texts = (sheets[0]?.cells ?? []).flatMap(({ row, content }) =>
    row === 5 && content.kind === 'text' ? [content.text] : [],
  );
  expect(texts).toEqual(['1', 'Clean-up', 'lump sum', 'lump sum']);
});
