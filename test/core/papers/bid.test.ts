import { describe, expect, test } from 'vitest';
import { bidPaper, bidWorkbook, internalWorkbook, reportHtml } from '../../../core/papers';
import { bookOfBid } from '../../../core/bid';
import { bidJson, bidView, bookBasis, tabulationView } from '../../../core/evaluation';
import { demoProject, evaluated } from '../evaluation/demo';

const evaluation = evaluated(demoProject());
const view = bidView(evaluation);

describe('the bid file', () => {
  const paper = bidWorkbook(evaluation);
  const [values, alternates] = paper?.sheets ?? [];

  test('is the bid sheet: items, base bid and alternates at their prices, the base bid as a live sum', () => {
    const inColumn = (column: number, sheet = values) =>
      (sheet?.cells ?? []).flatMap(({ column: own, content }) => {
        if (own !== column) return [];
        if (content.kind === 'money') return [Math.round(content.value * 100)];
        return content.kind === 'formula' && typeof content.result === 'number'
          ? [Math.round(content.result * 100)]
          : [];
      });
    const amounts = (view.sheet?.items ?? []).map(item => item.amount);
    expect(amounts.length).toBeGreaterThan(5);
    expect(inColumn(6)).toEqual([...amounts, view.sheet?.baseBid]);
    expect(amounts.reduce((a, b) => a + b, 0)).toBe(view.sheet?.baseBid);
    expect(inColumn(4, alternates)).toEqual(view.sheet?.alternates.map(one => one.amount));
    const total = values?.cells.findLast(({ content }) => content.kind === 'formula')?.content;
    expect(total).toMatchObject({ result: (view.sheet?.baseBid ?? 0) / 100 });
  });

  test('prints a unit price times its quantity as a live formula, and an allowance as set by the owner', () => {
    const sheet = {
      items: [
        { number: 1, title: 'Oily water', unit: 'gal', quantity: 1200, unitPrice: 83, amount: 99_600 },
        {
          number: 2,
          title: 'Permits',
          unit: 'allowance',
          quantity: 1,
          amount: 500_000,
          isAllowance: true,
        },
      ],
      baseBid: 599_600,
      alternates: [],
    };
    const { sheets } = bidPaper(sheet, { title: 'Test', date: '2026-11-25', sample: false, offer: [] });
    expect(sheets.map(({ name }) => name)).toEqual(['Schedule of values', 'Offer']);
    const cells = sheets[0]?.cells ?? [];
    const at = (row: number, column: number) =>
      cells.find(cell => cell.row === row && cell.column === column)?.content;
    expect(at(5, 6)).toMatchObject({ formula: 'ROUND(D5*E5,2)', result: 996 });
    expect(at(6, 2)).toEqual({ kind: 'text', text: 'Permits (allowance, as set by the owner)' });
    expect(at(6, 5)).toEqual({ kind: 'text', text: 'allowance' });
  });

  test('says of an alternate without an amount that it has no price, and never counts it as zero', () => {
    const bid = evaluation.project.bid;
    if (bid === undefined) throw new Error('the demo has a bid');
    const [priced] = bid.alternates;
    if (priced === undefined) throw new Error('the demo has an alternate');
    const alternates = [{ id: 'rail', title: 'Add: a rail' }, priced];
    const asked = { ...evaluation, project: { ...evaluation.project, bid: { ...bid, alternates } } };
    const { sheet, findings } = bidView(asked);
    expect(sheet?.alternates[0]).toEqual({ number: 1, title: 'Add: a rail' });
    expect(sheet?.baseBid).toBe(view.sheet?.baseBid);
    expect(findings.map(({ code, place }) => [code, place])).toEqual([
      ['bid/alternate-without-price', '/bid/alternates/rail'],
    ]);
    const rows = bidWorkbook(asked)?.sheets[1]?.cells.filter(({ row }) => row === 5) ?? [];
    expect(rows.map(({ content }) => content)).toEqual(
      ['1', 'Add: a rail', 'no price'].map(text => ({ kind: 'text', text })),
    );
    expect(reportHtml(asked, undefined, 'bid')).toMatch(/1\. Add: a rail<\/th><td[^>]*>no price<\/td>/);
    const json = bidJson(asked, bidView(asked), tabulationView(asked));
    expect(json['alternates']).toMatchObject([{ id: 'rail', title: 'Add: a rail' }, { amount: 18500 }]);
    expect(JSON.stringify(json['alternates'])).not.toContain('"amount":0');
    const book = sheet && bookOfBid(sheet).entries.map(({ key }) => key);
    expect(book?.filter(key => key.startsWith('alternates'))).toEqual(['alternates/2']);
  });

  test('is not written while a contract line is in no item: a part would pass for the price', () => {
    const bid = evaluation.project.bid;
    if (bid === undefined) throw new Error('the demo has bid items');
    const short = { ...evaluation.project, bid: { ...bid, items: bid.items.slice(1) } };
    expect(bidWorkbook({ ...evaluation, project: short })).toBeUndefined();
  });
});

describe('the internal sheet', () => {
  const lines = bookBasis(evaluation).basis?.lines ?? [];
  const sourceOf = (id: string, of = view) =>
    of.internal?.items.flatMap(item => item.lines).find(line => line.lineId === id)?.source;

  test('says of a line where its rate comes from, not the ship’s figure that it is scaled by', () => {
    for (const id of ['mobilisation', 'training', 'health-safety-plan', 'yard-permits']) {
      const rate = evaluation.library.items.find(item => item.id === id)?.hoursPerUnit;
      expect(rate?.source).toMatch(/\S/);
      expect(sourceOf(id)).toContain(rate?.source);
      expect(sourceOf(id)).not.toContain('booklet');
      // The books go on telling the weakest basis of all that the line is worked out from, with the source of it.
      expect(lines.find(line => line.id === id)?.source).toContain('booklet');
    }
  });

  const text = JSON.stringify(internalWorkbook(evaluation));

  test('holds every amount, hour, wage and supplier of the build-up, and says that it stays in the house', () => {
    const { internal } = view;
    const lines = internal?.items.flatMap(item => item.lines) ?? [];
    const missing = lines.flatMap(line => [
      ...Object.values(line.amounts).filter(amount => !text.includes(`"value":${amount / 100}`)),
      ...line.facts.filter(fact => !text.includes(JSON.stringify(fact.value))).map(fact => fact.value),
    ]);
    expect(lines.length).toBeGreaterThan(50);
    expect(missing).toEqual([]);
    expect((internal?.rates ?? []).filter(rate => !text.includes(`"value":${rate.value}`))).toEqual([]);
    expect(text).toContain('does not leave the house');
  });
});
