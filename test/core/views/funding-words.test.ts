import { describe, expect, test } from 'vitest';
import type { Reconciliation } from '../../../core/cash-flow';
import { grantView } from '../../../core/evaluation';
import { WhyDesk, type TableRows } from '../../../core/views';
import { reconciliationTable } from '../../../core/views/funding/sources';
import { awkward, DEMO, type AwkwardName } from './awkward';

const fundingOf = (name: AwkwardName = 'the example') => {
  const found = new WhyDesk(awkward(name), 'us').opened('funding');
  if (found === undefined) throw new Error('the document has a grant');
  return found;
};
const told = (table: TableRows | undefined, key: string) => table?.rows.map(row => row.cells[key]?.text);
const amountIn = (text = '') =>
  text === '–' ? 0 : Number(text.replaceAll(',', '').replace('−', '-').replace('$', ''));

describe('the sources of the grant', () => {
  test('are told with when each pays, their shares of the whole, and a last row of all', () => {
    const { sources } = fundingOf();
    expect(sources.rows.map(({ id, kind }) => [id, kind])).toEqual([
      ...(DEMO.funding?.sources ?? []).map(({ id }) => [id, 'line']),
      ['total', 'total'],
    ]);
    // Paid back after two months; given in kind; after three months; the county's own money.
    expect(told(sources, 'pays')?.slice(0, 4)).toEqual([
      ...['after 2 months', 'no cash'],
      ...['after 3 months', 'in hand'],
    ]);
    const last = sources.rows.at(-1);
    expect([last?.cells['title']?.text, last?.cells['share']?.text]).toEqual(['All', '100.0']);
    const sum = (key: string) =>
      sources.rows.slice(0, -1).reduce((all, row) => all + amountIn(row.cells[key]?.text), 0);
    expect(sum('amount')).toBe(amountIn(last?.cells['amount']?.text));
    expect(sum('share')).toBeCloseTo(100, 6);
    expect([sources.id, sources.caption]).toEqual(['sources', 'Sources']);
  });

  test('say a month alone in the singular, and an advance', () => {
    expect(told(fundingOf('with all that a document may hold').sources, 'pays')?.[0]).toBe('after 1 month');
    expect(told(fundingOf('with a grant paid in advance').sources, 'pays')?.[0]).toBe('in advance');
  });
});

describe('from one figure to another', () => {
  const reconciliation = (difference: number): Reconciliation => ({
    id: 'forms',
    from: { id: 'estimate', title: 'The estimate', amount: 123_456 },
    steps: [{ id: 'contingency', title: 'Contingency', amount: 50 }],
    to: { id: 'forms', title: 'The forms', amount: 123_506 },
    ...{ difference, closes: difference === 0 },
  });

  test('steps are told to the cent, with whether they tie out', () => {
    const { id, caption, rows } = reconciliationTable(reconciliation(0));
    expect([id, caption]).toEqual(['steps-forms', 'From the estimate to the forms']);
    expect(rows.map(row => [row.id, row.kind, row.cells['title']?.text, row.cells['amount']?.text])).toEqual([
      ['estimate', 'line', 'The estimate', '1,234.56'],
      ['contingency', 'line', 'Contingency', '0.50'],
      ['forms', 'total', 'The forms', '1,235.06'],
      ['difference', 'line', 'Difference: it ties out', '0.00'],
    ]);
    expect(rows.at(-1)?.cells['amount']).not.toHaveProperty('accent');
  });

  test('a difference that is left says so and draws the eye', () => {
    const { rows } = reconciliationTable(reconciliation(-7));
    expect(rows.at(-1)?.cells['title']?.text).toBe('Difference: it does not tie out');
    expect(rows.at(-1)?.cells['amount']).toMatchObject({ text: '−0.07', accent: true });
  });

  test('are called after what they lead to', () => {
    const captions = ['forms', 'bid', 'payments'].map(
      id => reconciliationTable({ ...reconciliation(0), id }).caption,
    );
    expect(captions).toEqual([
      'From the estimate to the forms',
      'From the estimate to the base bid',
      'From the estimate to the payments',
    ]);
  });
});

describe('the cash of the grant', () => {
  test('is drawn on an axis of three to six steps that reaches what is paid', () => {
    const picture = fundingOf().cash;
    const most = Math.max(...(picture?.points ?? []).map(point => Math.max(point.paidSoFar, point.inSoFar)));
    const ticks = picture?.ticks ?? [];
    expect(ticks.length).toBeGreaterThanOrEqual(3);
    expect(ticks.length).toBeLessThanOrEqual(7);
    expect(Number(ticks[0]?.text)).toBe(0);
    expect(ticks.at(-1)?.at).toBeGreaterThanOrEqual(most);
    const size = ticks[1]?.at ?? Number.NaN;
    for (const [step, { at, text }] of ticks.entries()) {
      expect(at).toBe(step * size);
      expect(Number(text) * 1_000_000).toBeCloseTo(at, 6);
    }
  });

  test('ties out line by line: form lines with the estimate lines under them', () => {
    const [award] = grantView(awkward('the example')).book?.awards ?? [];
    const table = fundingOf().awards[0]?.tieOut;
    if (award === undefined || table === undefined) throw new Error('an award with its table');
    expect([table.id, table.caption]).toEqual([
      `tie-out-${award.source.id}`,
      `Line by line, ${award.source.title}`,
    ]);
    const groups = table.rows.filter(row => row.kind === 'group');
    expect(groups.map(row => row.id)).toEqual(award.tieOut.map(line => `class-${line.classId}`));
    for (const group of groups) {
      const own = table.rows.filter(row => row.under === group.id);
      expect(group.cells['sentence']?.text).toBe(`${own.length} sentences`);
      expect(own.every(row => row.kind === 'line' && row.cells['sentence']?.text !== '')).toBe(true);
      const sum = own.reduce((all, row) => all + amountIn(row.cells['form']?.text), 0);
      expect(sum).toBeCloseTo(amountIn(group.cells['form']?.text), 2);
      expect(group.cells['difference']?.text).toBe('0.00');
    }
  });
});
