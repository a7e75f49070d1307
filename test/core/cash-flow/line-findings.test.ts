import { describe, expect, it } from 'vitest';
import { byFiscalYear, checkDrawdown, checkLines } from '../../../core/cash-flow';
import { line } from './lines';

const meaning = 'the books would not add up to the estimate, so none is made';

describe('a line that cannot be put into books', () => {
  const whole = line({
    id: 'clean',
    amounts: { labour: 500, equipment: 0, material: 100, disposal: 0, subcontract: 0, fee: 0, markUp: 0 },
  });

  it('is told with what is off by how much, and what to do', () => {
    expect(checkLines([whole])).toEqual([]);
    expect(checkLines([{ ...whole, total: 700, months: [{ month: '2027-03', amount: 700 }] }])).toEqual([
      {
        code: 'books/line-elements',
        weight: 'blocks',
        place: '/lines/clean',
        message: 'the elements of clean add up to $6.00, its total is $7.00',
        meaning,
        remedy: 'correct the element or the total that is off',
      },
    ]);
    expect(checkLines([{ ...whole, months: [{ month: '2027-03', amount: 599 }] }])).toEqual([
      {
        code: 'books/line-months',
        weight: 'blocks',
        place: '/lines/clean',
        message: 'the months of clean add up to $5.99, its total is $6.00',
        meaning,
        remedy: 'spread the whole total over the months of the line',
      },
    ]);
  });

  it('has a fringe part above its labour; all of the labour may be fringe', () => {
    const codes = (fringe: number) => checkLines([{ ...whole, fringe }]).map(({ code }) => code);
    expect([codes(500), codes(501)]).toEqual([[], ['books/line-fringe']]);
  });
});

it('fiscal years stand in the order of time, whatever the order of the months', () => {
  const months = [
    { month: '2028-11', amount: 4 },
    { month: '2026-09', amount: 1 },
    { month: '2026-10', amount: 2 },
    { month: '2028-09', amount: 8 },
  ];
  // A federal fiscal year begins on October 1 and has the number of the year in which it ends (31 USC 1102).
  expect(byFiscalYear(months, 10)).toEqual([
    { fiscalYear: 2026, amount: 1 },
    { fiscalYear: 2027, amount: 2 },
    { fiscalYear: 2028, amount: 8 },
    { fiscalYear: 2029, amount: 4 },
  ]);
});

it('a grant that is drawn ahead of its match is told with what may come of it', () => {
  const plan = [{ month: '2027-03', draw: 301, matchSpent: 100, drawn: 301 }];
  expect(checkDrawdown(plan, 300, 100)).toEqual([
    {
      code: 'cash/drawn-ahead-of-match',
      weight: 'warns',
      place: '/drawdown/2027-03',
      message: 'by the end of 2027-03 $3.01 of the grant is drawn against $1.00 of match spent',
      meaning: 'the grantor may ask for the money back, with interest',
      remedy: 'draw later, or spend the match earlier',
      rule: '50 CFR 80.96',
    },
  ]);
});
