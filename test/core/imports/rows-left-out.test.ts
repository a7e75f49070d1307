import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { importMappingSchema, importTable } from '../../../core/project';
import { importView } from '../../../core/views';
import { readCsv } from '../../../electron/imports/read-table';
import { demoProject } from '../evaluation/demo';

const library = shippedLibrary();
const project = { ...demoProject(), quotes: [] };
const wages = importMappingSchema.parse({
  id: 'letter',
  title: 'Letter of wages (invented)',
  kind: 'wages',
  columns: { trade: 'Trade', wage: 'Wage' },
});
const prices = importMappingSchema.parse({
  id: 'offers',
  title: 'Offers (invented)',
  kind: 'prices',
  columns: { item: 'Item', unit: 'Unit', price: 'Price' },
  constants: { vendor: 'Tern Industrial (invented)', dated: '2026-10-01', validUntil: '2027-01-31' },
});
const [first, second] = library.rateBook.trades;

describe('a row that cannot be taken is left out, and the others are taken', () => {
  test('a wage below zero or beyond what can be meant', () => {
    const table = readCsv(`Trade,Wage\n${first?.id},-5\n${second?.id},31.50\nburner,99999\n`);
    const { project: next, left, findings } = importTable(project, library, table, wages);
    expect(next.rates.wages.slice(project.rates.wages.length).map(row => row.trade)).toEqual([second?.id]);
    expect(left.map(({ code }) => code)).toEqual(['imports/beyond-limits', 'imports/beyond-limits']);
    expect(left[0]?.message).toMatch(
      /^Wage of .* is given as −\$5 per h; it must be 0 or more and at most \$[\d,]+ per h\.$/,
    );
    expect(findings.filter(({ weight }) => weight === 'blocks')).toEqual([]);
  });

  test('a price or an offer below zero', () => {
    const table = readCsv(
      'Item,Unit,Price\nstreams/used-oil/unitPrice,t,-1\nocean-tow,each,-2\nanchoring,each,3\ncable-stripping,m,4\n',
    );
    const { project: next, left, findings } = importTable(project, library, table, prices);
    expect(left.map(({ code }) => code).filter(code => code === 'imports/beyond-limits')).toHaveLength(2);
    expect(next.quotes.flatMap(({ covers }) => covers.map(({ item }) => item))).toContain('cable-stripping');
    expect(next.rates.overrides).toEqual(project.rates.overrides);
    expect(findings.filter(({ weight }) => weight === 'blocks')).toEqual([]);
  });

  test('a number with a comma before its decimals is told how it is read', () => {
    const table = readCsv(`Trade,Wage\n${first?.id},"31,50"\n${second?.id},ask later\n`);
    const { left } = importTable(project, library, table, wages);
    expect(left.map(({ remedy }) => /comma/.test(remedy))).toEqual([true, false]);
    const told = importTable(project, library, table, { ...wages, decimals: 'comma' });
    expect(told.project.rates.wages.find(row => row.trade === first?.id)?.figure.value).toBe('31.50');
  });
});

test('a price list that comes again keeps what is relied on, and which work a quote covers', () => {
  const csv = (price: string) => readCsv(`Item,Unit,Price\ncable-stripping,lump sum,${price}\n`);
  const { project: first } = importTable(project, library, csv('90000'), prices);
  const quotes = first.quotes.map(quote => ({ ...quote, chosen: true, exclusions: ['scaffolding'] }));
  expect(quotes.map(({ amount }) => amount.unit)).toEqual(['USD']);
  const { project: again } = importTable({ ...first, quotes }, library, csv('95000'), prices);
  expect(again.quotes.map(({ chosen, exclusions, amount }) => [chosen, exclusions, amount.value])).toEqual([
    [true, ['scaffolding'], '95000'],
  ]);
});

describe('what a price is for one of', () => {
  const read = (unit: string) =>
    importTable(project, library, readCsv(`Item,Unit,Price\ncable-stripping,${unit},4\n`), prices);

  test.each(['m', '$/m', 'USD/m', 'per m', 'US$ per m', 'metres', '$ / m'])('%s is a metre', unit => {
    expect(read(unit).project.quotes.map(({ amount }) => amount.unit)).toEqual(['USD/m']);
  });

  test.each(['bucket', '$/bucket', '$', 'USD/USD', 'm/h'])('%s is no unit of a price', unit => {
    const { project: next, left, notes } = read(unit);
    expect(next.quotes).toEqual([]);
    expect(left.map(({ code }) => code)).toEqual(['imports/unit-not-known']);
    expect(left[0]?.remedy).toMatch(/ t, long-ton, short-ton/);
    expect(notes).toEqual([]);
  });
});

test('quotes that were brought in are said not to be relied on yet', () => {
  const table = (lines: string) => readCsv(`Item,Unit,Price\n${lines}`);
  const one = table('cable-stripping,m,4\n');
  expect(importTable(project, library, one, prices).notes).toEqual([
    '1 quote is there to be relied on: the estimate does not use it until it is chosen.',
  ]);
  const ask = {
    kind: 'prices',
    title: 'Offers',
    table: table('cable-stripping,m,4\nocean-tow,each,9\n'),
    mapping: prices,
  } as const;
  expect(importView(project, library, ask).summary).toContain('2 quotes are there to be relied on');
});
