import type { Figure } from '../base';
import {
  atLeast,
  carried,
  difference,
  givenFrom,
  link,
  maximum,
  none,
  over,
  priced,
  rounded,
  scaled,
  sum,
  totalWhere,
  unity,
  when,
  type Block,
  type Given,
  type Recipe,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import type { EstimateInput } from './inputs';
import { atPriceDate, type PriceLevel } from './price-level';
import type { WorkSheet } from './work-sheet';

/** Hazardous waste by calendar month as the schedule makes it, with the figures that decide what it costs. */
export interface GenerationPlan {
  readonly months: readonly {
    readonly month: string;
    readonly category: string;
    readonly pickUps: number;
    /** Streams that go with the pick-ups of the month. */
    readonly pickedUp: readonly string[];
  }[];
  readonly shares: readonly {
    readonly item: string;
    readonly stream: string;
    readonly month: string;
    readonly share: number;
    readonly counted: number;
    readonly acute: boolean;
  }[];
  readonly limits: Readonly<Record<'verySmall' | 'large' | 'acute', Figure>>;
  readonly fees: Readonly<Record<'verySmall' | 'small' | 'large' | 'pickUp', Figure>>;
}

type Share = GenerationPlan['shares'][number];
type Month = GenerationPlan['months'][number];

export interface GeneratorMonthColumns {
  /** Tonnes that count towards the category. */
  readonly counted: Step<'t'>;
  readonly large: Step<'1'>;
  readonly small: Step<'1'>;
  readonly pickUps: Step<'each'>;
  readonly cost: Step<'USD'>;
}

/** What the generator category costs: by month, and by stream and month. */
export interface GenerationTables {
  readonly months: Table<GeneratorMonthColumns>;
  readonly costs: Table<{ readonly stream: Step<'text'>; readonly cost: Step<'USD'> }>;
}

/**
 * The generator category by month and its cost: tonnes by activity and month, the category by its limits, pick-ups and
 * the standing duties of the category, shared over the streams by the tonnes of the month.
 * @source 40 CFR 262.13, table 1
 */
export function generationTables(
  sheet: Sheet,
  input: EstimateInput,
  work: WorkSheet,
  level: PriceLevel,
  plan: GenerationPlan,
): GenerationTables {
  const generated = generatedTable(sheet, work, plan.shares);
  const block = sheet.block('generator', 'Generator of hazardous waste');
  const months = monthTable(sheet, input, level, plan, block, generated);
  const costs = sheet.table('generator-costs', rowsOf('Cost of the generator category', plan.shares), t => {
    const month = t.key('month', 'Month (key)', share => monthKey(share.month), []);
    const stream = t.key('stream', 'Stream (key)', share => share.stream, []);
    const tonnes = t.place('tonnes', 'Tonnes', link(t.rowKey(), generated.columns.tonnes));
    const part = t.place(
      'part',
      'Part of the month',
      rounded(over(tonnes, link(month, months.columns.divisor)), 9),
    );
    const cost = t.place('cost', 'Cost', rounded(scaled(link(month, months.columns.cost), part), 4));
    return { stream, cost };
  });
  return { months, costs };
}

function rowsOf(heading: string, of: readonly Share[]) {
  return {
    heading,
    of,
    key: (share: Share) => `${share.item}.${share.stream}.${monthKey(share.month)}`,
    title: (share: Share) => `${share.item}: ${share.stream} in ${share.month}`,
    place: (share: Share) => `/items/${share.item}`,
  };
}

/** The row of a month. */
function monthKey(month: string): string {
  return `m${month}`;
}

/** Tonnes that each activity makes of each counting stream in each month. */
function generatedTable(sheet: Sheet, work: WorkSheet, shares: readonly Share[]) {
  return sheet.table('generation', rowsOf('Hazardous waste generated', shares), t => {
    const waste = t.key('waste', 'Waste (key)', share => `${share.item}.${share.stream}`, []);
    const month = t.key('month', 'Month (key)', share => monthKey(share.month), []);
    const all = t.place(
      'all',
      'Tonnes of the activity',
      carried(work.result, work.wastes.columns.tonnes, waste),
    );
    const part = (key: string, title: string, read: (share: Share) => number) =>
      t.place(`${key}-tonnes`, title, rounded(scaled(all, byTheDay(t, key, title, read)), 6));
    return {
      month,
      tonnes: part('share', 'Tonnes in the month', share => share.share),
      counted: part('counted', 'Tonnes that count', share => share.counted),
      acute: part('acute', 'Acute tonnes', share => (share.acute ? share.counted : 0)),
    };
  });
}

function byTheDay(t: Recipe<Share>, key: string, title: string, read: (share: Share) => number): Step<'1'> {
  const given = (share: Share) => ({ value: read(share).toFixed(9), unit: '1' as const });
  return t.fromSchedule(key, `Share of the work days: ${title}`, '1', given, []);
}

function monthTable(
  sheet: Sheet,
  input: EstimateInput,
  level: PriceLevel,
  plan: GenerationPlan,
  block: Block,
  { columns }: ReturnType<typeof generatedTable>,
): Table<GeneratorMonthColumns & { readonly divisor: Step<'t'> }> {
  const limit = (key: string, title: string, figure: Figure) =>
    block.given(key, title, 't', givenFrom(figure, 't', `templates/trip-points/generator-${key}`));
  const verySmall = limit('very-small', 'Most of a very small generator', plan.limits.verySmall);
  const large = limit('large', 'Least of a large generator', plan.limits.large);
  const acute = limit('acute', 'Acute waste above which a generator is large', plan.limits.acute);
  const least = block.given('least', 'Least tonnage to divide by', 't', GRAM);
  const rows = {
    heading: 'Month',
    of: plan.months,
    key: (month: Month) => monthKey(month.month),
    title: (month: Month) => `${month.month}: ${month.category} generator`,
  };
  return sheet.table('generator-months', rows, t => {
    const key = t.rowKey();
    const of = (id: string, title: string, column: Step<'t'>) =>
      t.place(id, title, totalWhere(column, columns.month, key));
    const all = of('all', 'Tonnes generated', columns.tonnes);
    const counted = of('counted', 'Tonnes that count', columns.counted);
    const acuteTonnes = of('acute', 'Acute tonnes', columns.acute);
    const ordinary = t.place('ordinary', 'Tonnes not acute', rounded(difference(counted, acuteTonnes), 6));
    const isLarge = t.place(
      'large',
      'Large generator',
      maximum(atLeast(ordinary, large, 6), above(acuteTonnes, acute)),
    );
    const isSmall = t.place('small', 'More than a very small generator', above(ordinary, verySmall));
    const pickUpsOf = (month: Month) => ({ value: String(month.pickUps), unit: 'each' as const });
    const pickUps = t.fromSchedule('pick-ups', 'Pick-ups', 'each', pickUpsOf, []);
    const fee = <U extends 'USD' | 'USD/each'>(id: keyof GenerationPlan['fees'], title: string, unit: U) =>
      atPriceDate(t, level, input, `fee-${id}`, title, unit, () => ({
        money: { figure: plan.fees[id], place: `templates/generator/fees/${id}` },
        unit,
      }));
    const duties = when(
      isLarge,
      fee('large', 'Duties of a large generator', 'USD'),
      when(
        isSmall,
        fee('small', 'Duties of a small generator', 'USD'),
        fee('verySmall', 'Duties of a very small generator', 'USD'),
      ),
    );
    const standing = t.place('duties', 'Duties of the category', duties);
    const cost = sum(priced(pickUps, fee('pickUp', 'One pick-up', 'USD/each')), standing);
    return {
      counted,
      large: isLarge,
      small: isSmall,
      pickUps,
      cost: t.place('cost', 'Cost of the category', rounded(cost, 4)),
      divisor: t.place('divisor', 'Tonnes to divide by', maximum(all, least)),
    };
  });
}

/** 1 when the first is above the second, to the gram. */
function above(value: Step<'t'>, bound: Step<'t'>): Step<'1'> {
  return rounded(difference(unity('1'), atLeast(bound, value, 6)), 0);
}

const GRAM: Given = {
  value: '0.000001',
  unit: 't',
  basis: 'common practice',
  source: 'does not apply here',
  neutral: true,
};

/** What the category adds to a haul: the months' cost for its stream. */
export function categoryCost(tables: GenerationTables | undefined, stream: Step<'text'>): Step<'USD'> {
  if (tables === undefined) return none('USD');
  return totalWhere(tables.costs.columns.cost, tables.costs.columns.stream, stream);
}
