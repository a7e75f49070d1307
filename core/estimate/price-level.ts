import { at, type Figure } from '../base';
import { dayOf, monthOf } from '../calendar';
import {
  bareGiven,
  givenFrom,
  link,
  lookUp,
  notApplying,
  over,
  power,
  rounded,
  scaled,
  sum,
  unity,
  type Block,
  type Given,
  type LookUp,
  type Recipe,
  type Sheet,
  type SheetUnit,
  type Step,
  type Table,
} from '../sheet';
import type { Unit } from '../units';
import type { EstimateInput, PriceChoices } from './inputs';

/** How prices of other years are brought to the price date, and what escalates from there. */
export interface PriceLevel {
  readonly years: Table<{ readonly factor: Step<'1'> }>;
  readonly block: Block;
  readonly outlook: Readonly<Record<EscalationClass, Step<'1'>>>;
  readonly monthsAYear: Step<'1'>;
}

export type EscalationClass = 'labour' | 'fuel' | 'disposal' | 'general';
const CLASSES: readonly (readonly [EscalationClass, string])[] = [
  ['labour', 'Yearly change of labour'],
  ['fuel', 'Yearly change of fuel'],
  ['disposal', 'Yearly change of disposal'],
  ['general', 'Yearly change of other prices'],
];

/** The year in which a price index ends, and how many of its months are published. */
interface Newest {
  readonly year: number;
  readonly months: number;
}

/**
 * The price level: factors from the year a figure speaks of to the price date, by the consumer price index; past its
 * last published month by the yearly rate for other prices (a judgement, not an index).
 */
export function priceLevel(sheet: Sheet, input: EstimateInput): PriceLevel {
  const index = at(input.library.indices.indices, 0);
  const entries = index.years.map(row => ({
    key: String(row.year),
    title: row.months === 12 ? `${row.year}` : `${row.year}, mean of ${row.months} months`,
    given: {
      value: row.value,
      unit: '1' as const,
      basis: index.basis,
      source: index.source,
      year: row.year,
    },
  }));
  const table = sheet.lookUpTable('cpi', {
    title: index.title,
    keyUnit: 'year',
    unit: '1',
    entries,
  });
  const block = sheet.block('prices', 'Price level');
  const outlook = Object.fromEntries(
    CLASSES.map(([id, title]) => [
      id,
      block.given(
        `outlook-${id}`,
        title,
        '1',
        bareGiven(input.library.indices.outlook[id], `templates/indices/outlook/${id}`),
      ),
    ]),
  ) as Record<EscalationClass, Step<'1'>>;
  const newest = at(index.years, index.years.length - 1);
  const level = levelAtPriceDate(block, table, outlook.general, input.prices, newest);
  return {
    block,
    outlook,
    years: yearTable(sheet, table, level, newest.year),
    monthsAYear: block.given('months-a-year', 'Months in a year', '1', calendarGiven('12', '1')),
  };
}

/** A number that the calendar gives. */
function calendarGiven(value: string, unit: Unit): Given {
  return { value, unit, basis: 'common practice', source: 'the calendar', neutral: true };
}

function levelAtPriceDate(
  block: Block,
  table: LookUp<'year', '1'>,
  general: Step<'1'>,
  prices: PriceChoices,
  newest: Newest,
): Step<'1'> {
  const year = prices.fixedYear ?? Math.min(Number(prices.priceDate.slice(0, 4)), newest.year);
  const published = block.place(
    'index-published',
    'Price index of the price date',
    lookUp(
      table,
      block.given('price-year', 'Year of the prices', 'year', calendarGiven(String(year), 'year')),
      0,
      'absent',
    ),
  );
  const beyond = block.given(
    'years-beyond',
    'Years past the index',
    '1',
    calendarGiven(yearsBeyond(prices, newest), '1'),
  );
  const growth = block.place(
    'growth-beyond',
    'Growth past the index',
    rounded(power(sum(unity('1'), general), beyond), 6),
  );
  return block.place(
    'index-at-price-date',
    'Price level of the price date',
    rounded(scaled(published, growth), 4),
  );
}

/** Years from the middle of the last published months to the price date; none where the index still covers it. */
function yearsBeyond(prices: PriceChoices, newest: Newest): string {
  if (prices.fixedYear !== undefined) return '0';
  const year = Number(prices.priceDate.slice(0, 4));
  if (year < newest.year) return '0';
  const past = (year - newest.year) * 12 + Number(prices.priceDate.slice(5, 7)) - (newest.months + 1) / 2;
  return (Math.max(0, past) / 12).toFixed(4);
}

const FIRST_YEAR = 1985;

function yearTable(
  sheet: Sheet,
  table: LookUp<'year', '1'>,
  level: Step<'1'>,
  newest: number,
): PriceLevel['years'] {
  const last = newest + 4;
  const rows = Array.from({ length: last - FIRST_YEAR + 1 }, (_, i) => FIRST_YEAR + i);
  return sheet.table(
    'years',
    { heading: 'Price year', of: rows, key: year => yearKey(year), title: year => `Prices of ${year}` },
    t => {
      const year = t.field('year', 'Year', 'year', y => calendarGiven(String(y), 'year'));
      const index = t.place('index', 'Price index', lookUp(table, year, 0, 'hold the last'));
      return { factor: t.place('factor', 'To the price date', rounded(over(level, index), 6)) };
    },
  );
}

/** The row of a price year; a figure without a year is taken at the rate book's own. */
export function yearKey(year: number): string {
  return `y${year}`;
}

/** A figure of money with where it is held. */
export interface MoneyFigure {
  readonly figure: Figure;
  readonly place: string;
}

/**
 * Places a rate or amount of money and brings it from its own year to the price date. The reader looks at the row, the
 * overrides and the library alone.
 */
export function atPriceDate<R, U extends SheetUnit>(
  t: Recipe<R>,
  level: PriceLevel,
  input: EstimateInput,
  key: string,
  title: string,
  unit: U,
  read: (row: R) => { readonly money: MoneyFigure | undefined; readonly unit: Unit },
): Step<U> {
  const from = [input.overrides, input.library];
  const amount = t.field(
    key,
    title,
    unit,
    row => {
      const { money, unit: own } = read(row);
      return money === undefined ? notApplying('0', own) : givenFrom(money.figure, own, money.place);
    },
    from,
  );
  const year = t.key(
    `${key}-year`,
    `Price year of ${title}`,
    row => yearKey(read(row).money?.figure.year ?? input.library.rateBook.priceYear),
    from,
  );
  return t.place(
    `${key}-level`,
    `${title} at the price date`,
    rounded(scaled(amount, link(year, level.years.columns.factor)), 4),
  );
}

/** Months from the price date to a day of spending: 0 where prices are held. */
export function monthsFrom(prices: PriceChoices, day: string): number {
  if (prices.fixedYear !== undefined) return 0;
  return monthNumber(day) - monthNumber(prices.priceDate);
}

function monthNumber(iso: string): number {
  const month = monthOf(dayOf(iso));
  return Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7));
}

/** The factor of escalation of a class over months: (1 + yearly rate)^(months ÷ 12). */
export function escalation(level: PriceLevel, kind: EscalationClass, months: Step<'1'>): Step<'1'> {
  const years = rounded(over(months, level.monthsAYear), 6);
  return rounded(power(sum(unity('1'), level.outlook[kind]), years), 6);
}
