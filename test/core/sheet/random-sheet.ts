import { randomStream, type RandomStream } from '../../../core/base';
import * as op from '../../../core/sheet';
import {
  Sheet,
  evaluateSheet,
  type LookUp,
  type Recipe,
  type SheetResult,
  type Step,
} from '../../../core/sheet';
import type { PlainUnit } from '../../../core/units';
import {
  bound,
  decimal,
  factor,
  flag,
  givenOf,
  money,
  part,
  pick,
  quantity,
  rate,
  type Draw,
  type Override,
} from './draws';

const UNITS: readonly PlainUnit[] = ['m2', 'm', 'each', 'ft'];
const STAGES = ['yard', 'tow', 'sinking'];
export const FIRST_MONTH = 24000;
const MONTHS = 12;

/** Two sheets around a stand-in schedule, random in structure and values by the seed. */
export interface RandomPair {
  readonly work: SheetResult;
  readonly money: SheetResult;
  /** The hours column of the work sheet, in the order of the rows: what the schedule reads. */
  readonly hours: Step<'h'>;
}

/** The month in which work is paid for, a stand-in for a schedule: months past the tables are among them. */
export function monthOf(hoursBefore: number, hours: number): number {
  return FIRST_MONTH + Math.min(MONTHS + 2, Math.floor((hoursBefore + hours) / 60));
}

/** Builds and evaluates the pair. The structure depends on the seed alone, so trials differ in values only. */
export function randomPair(
  seed: number,
  override: Override = () => undefined,
  absentShare = 0.03,
): RandomPair {
  const given = givenOf(seed, override, absentShare);
  const random = randomStream(seed, 'structure');
  const work = workSheet(random, given);
  const workDone = evaluateSheet(work.sheet);
  const months = new Map<string, string | undefined>();
  let before = 0;
  for (const row of work.rows) {
    const hours = workDone.number(work.hours, row.key);
    months.set(row.key, hours === undefined ? undefined : String(monthOf(before, hours)));
    before += hours ?? 0;
  }
  const moneyDone = evaluateSheet(moneySheet(random, given, work, workDone, months));
  return { work: workDone, money: moneyDone, hours: work.hours };
}

type GivenFor = ReturnType<typeof givenOf>;
interface WorkRow {
  readonly key: string;
  readonly own: PlainUnit;
  readonly tank: string;
  readonly driver: string;
}

/** Fields of a table by key, unit and draw, with ids as the sheet makes them. */
function fieldsOf<R extends { key: string; own: PlainUnit }>(t: Recipe<R>, table: string, given: GivenFor) {
  return <U extends op.SheetUnit>(key: string, unit: U, draw: Draw): Step<U> =>
    t.field(key, key, unit, r => given(`${table}/${r.key}/${key}`, bound(unit, r.own), draw));
}

function workSheet(random: RandomStream, given: GivenFor) {
  const sheet = new Sheet('work');
  const ship = sheet.block('w', 'Ship');
  const single = <U extends op.SheetUnit & PlainUnit>(key: string, unit: U, draw: Draw) =>
    ship.given(key, key, unit, given(`w/${key}`, unit, draw));
  const ratio = single('ratio', '1', factor);
  const exponent = single('exponent', '1', decimal(0.3, 1.2, 2));
  const long = single('long', 'm', quantity);
  const wide = single('wide', 'm', decimal(1, 30, 2));
  const area = ship.place('area', 'Area', op.rounded(op.times(long, wide), 2));
  ship.place('side', 'Side', op.rounded(op.over(area, wide), 3));
  ship.place('relation', 'Relation', op.rounded(op.power(op.over(long, wide), exponent), 4));

  const tankRows = ['a', 'b', 'c'].map(key => ({ key: `t${key}`, own: pick(random, UNITS) }));
  const tanks = sheet.table(
    'k',
    { heading: 'Tanks', of: tankRows, key: r => r.key, title: r => r.key, own: r => r.own },
    t => {
      const field = fieldsOf(t, 'k', given);
      const size = t.place('size', 'Size', op.rounded(op.scaled(field('raw', 'own', quantity), ratio), 1));
      return { size, share: field('share', '1', part) };
    },
  );

  const rows = Array.from({ length: 1 + Math.floor(random() * 5) }, (_, i): WorkRow => {
    const tank = pick(random, tankRows);
    const key = `i${i + 1}`;
    return {
      key,
      own: tank.own,
      tank: random() < 0.03 ? 'gone' : tank.key,
      driver: pick(random, ['long', 'wide', 'area']),
    };
  });
  const table = sheet.table(
    'u',
    { heading: 'Work', of: rows, key: r => r.key, title: r => r.key, own: r => r.own },
    t => {
      const field = fieldsOf(t, 'u', given);
      const tank = t.key('tank', 'Tank', r => r.tank);
      const driver = t.key('driver', 'Driver', r => r.driver);
      const surveyed = field('surveyed', 'own', random() < 0.5 ? quantity : quantity);
      const linked = t.place('linked', 'Linked', op.link(tank, tanks.columns.size));
      const length = t.place('length', 'Driver', op.fetched(driver, ship, 'm'));
      const measured = t.place('measured', 'Measured', op.quoted(surveyed, linked));
      const amount = t.place('amount', 'Quantity', op.rounded(measured, pick(random, [0, 1, 1, 2])));
      const hours = t.place(
        'hours',
        'Hours',
        op.rounded(op.over(amount, field('production', 'own/h', rate)), 1),
      );
      const holds = field('holds', 't/each', decimal(1, 20, 1));
      const tonnes = t.place(
        'tonnes',
        'Waste',
        op.rounded(op.priced(amount, field('perUnit', 't/own', factor)), 2),
      );
      const boxes = t.place('boxes', 'Boxes', op.wholeUp(op.over(tonnes, holds), pick(random, [4, 6, 8])));
      const exact = op.wholeUp(op.over(op.over(op.scaled(op.priced(boxes, holds), ratio), ratio), holds), 8);
      t.place('again', 'Boxes by a detour', exact);
      const detour = op.over(op.scaled(tonnes, ratio), ratio);
      t.place('reached', 'Reached by a detour', op.atLeast(detour, tonnes, 8));
      t.place(
        'below',
        'Not more by a detour',
        op.atLeast(tonnes, op.over(op.scaled(tonnes, ratio), ratio), 8),
      );
      t.place('wet', 'Wet', op.rounded(op.maximum(op.over(length, ratio), op.difference(length, wide)), 2));
      return { amount, hours, boxes, tonnes };
    },
  );
  const totals = sheet.block('wt', 'Work totals');
  const allHours = totals.place('hours', 'Hours', op.total(table.columns.hours));
  return { sheet, rows, allHours, ...table.columns };
}

type Work = ReturnType<typeof workSheet>;

interface MoneyRow extends WorkRow {
  readonly stage: string | undefined;
}

function moneySheet(
  random: RandomStream,
  given: GivenFor,
  work: Work,
  done: SheetResult,
  months: ReadonlyMap<string, string | undefined>,
): Sheet {
  const sheet = new Sheet('money', work.sheet);
  const site = sheet.block('s', 'Site');
  const single = <U extends op.SheetUnit & PlainUnit>(key: string, unit: U, draw: Draw) =>
    site.given(key, key, unit, given(`s/${key}`, unit, draw));
  const singles = {
    overhead: single('oh', '1', part),
    profit: single('pr', '1', part),
    trip: single('trip', 'USD', money),
  };
  const tables = {
    index: lookUpOf(sheet, given, 'ix', 'month', '1', MONTHS, i => String(FIRST_MONTH + i)),
    tariff: lookUpOf(sheet, given, 'tf', 'each', 'USD/each', 4, i => String(i * 5)),
  };
  const rows = work.rows.map((row): MoneyRow => ({ ...row, stage: pick(random, STAGES) }));
  const lines = sheet.table(
    'm',
    { heading: 'Lines', of: rows, key: r => r.key, title: r => r.key, own: r => r.own },
    t => {
      const field = fieldsOf(t, 'm', given);
      const key = t.rowKey();
      const stage = t.key('stage', 'Stage', r => r.stage);
      const month = t.fromSchedule('month', 'Month', 'month', r => ({
        value: months.get(r.key),
        unit: 'month',
      }));
      const hours = t.place('hours', 'Hours', op.carried(done, work.hours, key));
      const amount = t.place('amount', 'Quantity', op.carried(done, work.amount, key));
      const boxes = t.place('boxes', 'Boxes', op.carried(done, work.boxes, key));
      const beyond = pick(random, ['absent', 'hold the last'] as const);
      const index = t.place('index', 'Index', op.lookUp(tables.index, month, 0, beyond));
      const fee = t.place(
        'fee',
        'Fee',
        op.stepLookUp(tables.tariff, boxes, 4, pick(random, ['absent', 'hold the last'])),
      );
      const labour = t.place(
        'labour',
        'Labour',
        op.dollars(op.priced(hours, field('crew', 'USD/h', rate), index)),
      );
      const stuff = t.place(
        'stuff',
        'Material',
        op.dollars(op.priced(amount, field('stuffRate', 'USD/own', rate), index)),
      );
      const dump = t.place('dump', 'Disposal', op.dollars(op.priced(boxes, fee)));
      const lump = field('lump', 'USD', money);
      const pool: Step<'USD'>[] = [labour, stuff, dump, lump];
      const factors = [field('f', '1', factor), field('g', '1', part), singles.overhead, singles.profit];
      const writer = new Expressions(random, pool, factors, field('flag', '1', flag));
      for (let i = 1; i <= 3; i++) pool.push(t.place(`x${i}`, `Expression ${i}`, writer.money(2)));
      const computed = t.place('computed', 'Computed', op.sum(labour, stuff, dump, writer.leaf()));
      const quote = field('quote', 'USD', random() < 0.5 ? money : money);
      const direct = t.place('direct', 'Direct', op.quoted(quote, computed));
      const bond = t.place('bond', 'Bond', op.grossedUp(direct, singles.profit, 2));
      const reaches = op.atLeast(direct, singles.trip, 8);
      const extra = t.place(
        'extra',
        'Extra',
        op.when(reaches, op.dollars(op.scaled(direct, singles.overhead)), op.none('USD')),
      );
      const whole = t.place('total', 'Total', op.sum(direct, extra, op.dollars(op.difference(bond, direct))));
      t.place('sofar', 'So far', op.runningThrough(whole));
      t.place('before', 'Before', op.runningBefore(whole));
      return { stage, month, total: whole, labour, boxes };
    },
  );
  addTotals(sheet, lines, given, work, done);
  return sheet;
}

type Lines = {
  columns: {
    stage: Step<'text'>;
    month: Step<'month'>;
    total: Step<'USD'>;
    labour: Step<'USD'>;
    boxes: Step<'each'>;
  };
};

function addTotals(sheet: Sheet, { columns }: Lines, given: GivenFor, work: Work, done: SheetResult): void {
  const totals = sheet.block('g', 'Totals');
  const grand = totals.place('all', 'Total', op.total(columns.total));
  totals.place('known', 'Known so far', op.knownSoFar(columns.total));
  totals.place('count', 'Known lines', op.countKnown(columns.total));
  const hours = totals.place('hours', 'Hours', op.carriedSingle(done, work.allHours));
  totals.place('perHour', 'Dollars an hour', op.rounded(op.over(grand, hours), 4));
  totals.place('alone', 'Alone', op.scaled(op.unity('USD'), op.unity('1')));
  const named = (key: string) => ({ key, own: 'each' as const });
  const stages = [...STAGES, 'management'].map(named);
  sheet.table('st', { heading: 'Stages', of: stages, key: r => r.key, title: r => r.key }, t => {
    t.place('total', 'Total', op.totalWhere(columns.total, columns.stage, t.rowKey()));
  });
  const months = Array.from({ length: MONTHS + 3 }, (_, i) => named(`m${FIRST_MONTH + i}`));
  sheet.table('mo', { heading: 'Months', of: months, key: r => r.key, title: r => r.key }, t => {
    const field = fieldsOf(t, 'mo', given);
    const month = t.field('month', 'Month', 'month', r => ({
      value: r.key.slice(1),
      unit: 'month',
      basis: 'published',
      source: 'calendar',
    }));
    t.place('spent', 'Spent', op.totalWhere(columns.labour, columns.month, month));
    t.place('boxes', 'Boxes', op.totalWhere(columns.boxes, columns.month, month));
    const weight = field('weight', '1', decimal(0.1, 5, 2));
    const upTo = t.place('upTo', 'Up to', op.runningThrough(weight));
    const from = t.place('from', 'From', op.runningBefore(weight));
    const all = t.place('all', 'All', op.total(weight));
    t.place('share', 'Share', op.share(grand, op.over(from, all), op.over(upTo, all)));
  });
}

function lookUpOf<K extends 'month' | 'each', U extends '1' | 'USD/each'>(
  sheet: Sheet,
  given: GivenFor,
  id: string,
  keyUnit: K,
  unit: U,
  count: number,
  keyOf: (i: number) => string,
): LookUp<K, U> {
  const entries = Array.from({ length: count }, (_, i) => ({
    key: keyOf(i),
    title: `entry ${i}`,
    given: given(`${id}/${keyOf(i)}`, unit, unit === '1' ? factor : rate),
  }));
  return sheet.lookUpTable(id, { title: id, keyUnit, unit, entries });
}

/** Random nested expressions of money: hidden steps in one formula, brackets included. */
class Expressions {
  readonly #random: RandomStream;
  readonly #money: readonly Step<'USD'>[];
  readonly #factors: readonly Step<'1'>[];
  readonly #flag: Step<'1'>;

  constructor(
    random: RandomStream,
    money: readonly Step<'USD'>[],
    factors: readonly Step<'1'>[],
    flagStep: Step<'1'>,
  ) {
    this.#random = random;
    this.#money = money;
    this.#factors = factors;
    this.#flag = flagStep;
  }

  leaf(): Step<'USD'> {
    return pick(this.#random, this.#money);
  }

  factor(): Step<'1'> {
    return pick(this.#random, this.#factors);
  }

  money(depth: number): Step<'USD'> {
    return op.dollars(op.rounded(this.#raw(depth), pick(this.#random, [2, 3, 4])));
  }

  #raw(depth: number): Step<'USD'> {
    if (depth === 0) return this.leaf();
    const next = () => this.#raw(depth - 1);
    const forms: readonly (() => Step<'USD'>)[] = [
      () => op.sum(next(), next(), this.leaf()),
      () => op.difference(next(), next()),
      () => op.difference(this.leaf(), op.difference(this.leaf(), next())),
      () => op.scaled(next(), this.factor()),
      () => op.scaled(op.difference(next(), this.leaf()), this.factor()),
      () => op.over(next(), op.sum(this.factor(), op.unity('1'))),
      () => op.over(next(), op.scaled(op.unity('1'), this.factor(), this.factor())),
      () => op.minimum(next(), this.leaf()),
      () => op.maximum(next(), op.none('USD')),
      () => op.when(this.#flag, next(), this.leaf()),
      () => op.when(op.atLeast(next(), this.leaf(), 4), this.leaf(), this.leaf()),
      () => op.wholeUp(op.over(next(), op.sum(this.factor(), op.unity('1'))), 6),
      () => op.grossedUp(next(), this.#factors[1] ?? this.factor(), 2),
    ];
    return pick(this.#random, forms)();
  }
}
