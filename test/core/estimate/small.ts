import { figureSchema, type Figure } from '../../../core/base';
import {
  moneySheet,
  workSheet,
  type EstimateInput,
  type GenerationPlan,
  type ItemTiming,
  type LineQuote,
} from '../../../core/estimate';
import { estimateInput, shippedLibrary } from '../../../core/evaluation';
import { indicesFile, rateBookFile, type RateBook } from '../../../core/rate-book';
import { driverSchema, workItemSchema, type Driver, type WorkItem } from '../../../core/work';
import { demoProject } from '../evaluation/demo';

/** A figure of 2025. */
export const figure = (value: string, unit: string, more: Partial<Figure> = {}): Figure =>
  figureSchema.parse({ value, unit, basis: 'published', source: 'A test', year: 2025, ...more });

/** Two trades, two crews, three machines, two streams and three mark-ups, all in round figures. */
function rates(): RateBook {
  const people = (trade: string, count: string) => ({ trade, people: figure(count, 'person') });
  const stream = {
    unitPrice: figure('50', 'USD/t'),
    containerTonnes: figure('10', 't/each'),
    containerFee: figure('100', 'USD/each'),
    haulPerContainer: figure('200', 'USD/each'),
    haulPerMetre: figure('0.01', 'USD/m'),
    profileFee: figure('30', 'USD'),
    manifestPerContainer: figure('5', 'USD/each'),
    countsReason: 'A test.',
    acute: false,
    index: 'disposal',
  };
  return rateBookFile.parse({
    id: 'small',
    title: 'Small',
    region: 'Nowhere',
    priceYear: 2025,
    locationFactor: figure('1.1', '1'),
    shiftHours: figure('8', 'h/work-day'),
    trades: [
      { id: 'hand', title: 'Hand', occupation: 'Hand', wage: figure('20', 'USD/h'), maritime: false },
      { id: 'diver', title: 'Diver', occupation: 'Diver', wage: figure('40', 'USD/h'), maritime: true },
    ],
    burdens: {
      fringeAndPayroll: figure('0.5', '1'),
      publicStaff: figure('0.25', '1'),
      longshorePremium: figure('0.1', '1'),
      smallTools: figure('1', 'USD/h'),
      protectiveGear: figure('2', 'USD/h'),
      overtimePremium: figure('0.5', '1'),
    },
    crews: [
      {
        ...{ id: 'gang', title: 'Gang', employer: 'contractor', available: figure('4', '1') },
        members: [people('hand', '3'), people('diver', '1')],
      },
      {
        ...{ id: 'staff', title: 'Staff', employer: 'owner', available: figure('1', '1') },
        members: [people('hand', '2')],
      },
    ],
    crewSizes: {
      sizes: [{ id: 'half', title: 'Half', share: figure('0.5', '1') }],
      crowding: figure('0.2', '1'),
      hireAndRelease: figure('10', 'h'),
    },
    equipment: [
      {
        ...{ id: 'crane', title: 'Crane', index: 'general' },
        ...{ rate: figure('100', 'USD/work-day'), mobilisation: figure('500', 'USD') },
      },
      { id: 'pump', title: 'Pump', index: 'fuel', rate: figure('10', 'USD/h') },
      { id: 'blade', title: 'Blade', index: 'general', rate: figure('2', 'USD/each') },
    ],
    streams: [
      { ...stream, id: 'debris', title: 'Debris', counts: false },
      {
        ...{ ...stream, id: 'sludge', title: 'Sludge', counts: true, unitPrice: figure('80', 'USD/t') },
        ...{ containerVolume: figure('8', 'm3/each'), minimumCharge: figure('5000', 'USD') },
        densityTonnesPerCubicMetre: figure('0.5', 't/m3'),
      },
    ],
    conditions: [
      { id: 'tight', title: 'Tight', factor: figure('1.25', '1') },
      { id: 'hot', title: 'Hot', factor: figure('1.5', '1') },
    ],
    scrap: [
      {
        ...{ id: 'steel', title: 'Steel', price: figure('200', 'USD/t') },
        ...{ freightAndProcessing: figure('40', 'USD/t'), shareReceived: figure('0.8', '1') },
      },
    ],
    markUps: [
      { id: 'overhead', title: 'Overhead', on: 'direct', share: figure('0.1', '1') },
      { id: 'profit', title: 'Profit', on: 'direct and before', share: figure('0.05', '1') },
      { id: 'bond', title: 'Bond', on: 'contract price', share: figure('0.02', '1') },
    ],
  });
}

/** Index 100 in 2024 and 110 in the whole of 2025; from then on four rates of change a year. */
export const indices = (months = 12) =>
  indicesFile.parse({
    indices: [
      {
        ...{ id: 'cpi', title: 'Index', basis: 'published', source: 'A test' },
        years: [
          { year: 2024, value: '100', months: 12 },
          { year: 2025, value: '110', months },
        ],
      },
    ],
    outlook: {
      labour: figure('0.04', '1'),
      fuel: figure('0.1', '1'),
      disposal: figure('0.21', '1'),
      general: figure('0.05', '1'),
    },
  });

const driver = (id: string, base: string, unit: string, amount: string, more: object = {}): Driver =>
  driverSchema.parse({
    ...{ id, title: id, unit, base, decimals: 0 },
    ...{ atReference: figure(amount, unit), reference: figure('1', unit), ...more },
  });

/** 200 m² of deck, and the coats on it: 5 m × (200 ÷ 100)² + 2.04 m = 22.04 m, to a tenth 22.0 m. */
export const drivers = (): readonly Driver[] => [
  driver('deck', 'one', 'm2', '200'),
  driver('coats', 'deck', 'm', '5', {
    ...{ reference: figure('100', 'm2'), exponent: figure('2', '1'), fixed: figure('2.04', 'm') },
    decimals: 1,
  }),
];

/** An item of contract work that scales from the 200 m² of deck. */
export const item = (id: string, more: object = {}): WorkItem =>
  workItemSchema.parse({
    ...{ id, stage: 'clean-up', title: `The ${id}`, does: 'It is done.', contract: true, driver: 'deck' },
    ...{ decimals: 0, place: 'hold', calendar: 'yard', bidItem: 'none' },
    ...{ formLine: { construction: '1', objectClass: 'h' }, ...more },
  });

const given = (value: string, unit: '1' | 'h/work-day' | 'm') =>
  ({ value, unit, basis: 'published', source: 'A test' }) as const;

/** Shifts of eight hours without overtime, prices held at 2025, ten kilometres of road. */
export function small(change: Partial<EstimateInput> = {}, book: Partial<RateBook> = {}): EstimateInput {
  const shipped = shippedLibrary();
  const input = estimateInput(demoProject(), shipped, new Set());
  return {
    ...input,
    library: { ...shipped, rateBook: { ...rates(), ...book }, indices: indices(), drivers: drivers() },
    ship: { ...input.ship, yardDistance: given('10000', 'm') },
    ...{ measured: new Map(), adjustments: new Map(), overrides: new Map() },
    ...{ shiftHours: given('8', 'h/work-day'), overtimeShare: given('0', '1'), shiftFactor: given('1', '1') },
    prices: { priceDate: '2025-07-15', fixedYear: 2025 },
    contingencyShare: given('0.1', '1'),
    ...change,
  };
}

/** The work sheet of a few items, with readers of its figures by item. */
export function worked(items: readonly WorkItem[], input = small()) {
  const work = workSheet(input, input.library.drivers, items);
  const of = (column: 'quantity' | 'hours' | 'crews' | 'people' | 'days') => (id: string) =>
    work.result.number(work.items.columns[column], id);
  return { work, quantity: of('quantity'), hours: of('hours'), crews: of('crews'), days: of('days') };
}

export interface Priced {
  readonly input?: EstimateInput;
  readonly timing?: Readonly<Record<string, ItemTiming>>;
  readonly quotes?: Readonly<Record<string, LineQuote>>;
  readonly plan?: GenerationPlan;
}

type Element = 'labour' | 'equipment' | 'material' | 'disposal' | 'subcontract' | 'fee' | 'direct' | 'total';

/** The money sheet of a few items; an item without a timing is spent in the month of the price date, in ten days. */
export function priced(items: readonly WorkItem[], { input = small(), timing, quotes, plan }: Priced = {}) {
  const { work } = worked(items, input);
  const timings = items.map(({ id }) => [id, timing?.[id] ?? { months: '0', days: '10' }] as const);
  const money = moneySheet(input, work, new Map(timings), new Map(Object.entries(quotes ?? {})), plan);
  const { lines, result, sums, stages } = money;
  return {
    money,
    line: (id: string, element: Element | 'markUp') => cents(result.money(lines.columns[element], id)),
    sum: (name: keyof typeof sums) => cents(result.money(sums[name])),
    stage: (id: string) => cents(result.money(stages.columns.total, id)),
  };
}

/** Dollars of an amount, or nothing. */
const cents = (amount: { readonly cents: number } | undefined) => amount && amount.cents / 100;
