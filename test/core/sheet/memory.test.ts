import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as op from '../../../core/sheet';
import { Sheet, SheetMemory, evaluateSheet, idOf, type SheetResult, type Step } from '../../../core/sheet';
import type { Kind } from '../../../core/sheet/kind';
import type { PlainUnit } from '../../../core/units';
import { give } from './example';

/** What readers look at besides the row. */
const FROM = {};

/** A row as a document holds it: an edit puts another object in its place. */
interface Line {
  readonly key: string;
  readonly title: string;
  readonly own: PlainUnit;
  readonly amount: string | undefined;
  readonly rate: string;
  readonly stage: string;
  readonly month: string;
}

const lineOf = (i: number): Line => ({
  key: `r${i}`,
  title: `Row ${i}`,
  own: i % 2 === 0 ? 'm2' : 'm',
  amount: String(10 + i),
  rate: (3 + i / 4).toFixed(2),
  stage: i % 3 === 0 ? 'tow' : 'yard',
  month: String(24_000 + (i % 4)),
});
const linesOf = (count: number) => Array.from({ length: count }, (_, i) => lineOf(i));
const STAGES = ['yard', 'tow', 'gone'];

interface Document {
  readonly lines: readonly Line[];
  readonly factor: string | undefined;
}

/** Steps that are made of new objects with every sheet: single givens, constants, what is carried from another result. */
const ALWAYS = ['ship/share', 'constant', 'm/cost'];

/** How often a step was worked out in a row, by its table and column or, hidden, by what it does. */
class Counts {
  readonly #counts = new Map<string, number>();

  /** Counts from now on what is worked out of the steps of a sheet. */
  watch(sheet: Sheet): void {
    const seen = new Set<Step>();
    const visit = (step: Step): void => {
      if (seen.has(step)) return;
      seen.add(step);
      step.inputs.forEach(visit);
      Object.assign(step, { kind: this.#counting(step) });
    };
    for (const table of sheet.tables) table.placed.forEach(visit);
    for (const block of sheet.blocks) block.entries().forEach(visit);
  }
  #counting({ kind, home }: Step): Kind {
    const name = home === undefined ? kind.operation : `${home.id}/${home.key}`;
    const count = (by: number) => void this.#counts.set(name, (this.#counts.get(name) ?? 0) + by);
    const { exact, quick, quickColumn } = kind;
    return {
      ...kind,
      exact: (values, row) => {
        if (quick === undefined) count(1);
        return exact(values, row);
      },
      ...(quick && {
        quick: (cells, operands, out, row) => {
          count(1);
          return quick(cells, operands, out, row);
        },
      }),
      ...(quickColumn && {
        quickColumn: (cells, first) => {
          const isDone = quickColumn(cells, first);
          if (isDone) count(kind.givens?.length ?? 0);
          return isDone;
        },
      }),
    };
  }
  /** What was counted since it was last asked. */
  since(): Record<string, number> {
    const counted = [...this.#counts].filter(([name, count]) => count > 0 && !ALWAYS.includes(name));
    this.#counts.clear();
    return Object.fromEntries(counted);
  }
}

/** Two sheets, the second carrying on from the first, with every way in which rows meet. */
function build({ lines, factor }: Document, memory?: SheetMemory, counts = new Counts()): SheetResult[] {
  const work = new Sheet('work', undefined, memory);
  const ship = work.block('ship', 'Ship');
  const share = ship.given('share', 'Share', '1', factor === undefined ? undefined : give(factor, '1'));
  const rowsOf = {
    heading: 'Lines',
    of: lines,
    key: (r: Line) => r.key,
    title: (r: Line) => r.title,
    own: (r: Line) => r.own,
  };
  const { columns } = work.table('t', rowsOf, t => {
    const amount = t.field('amount', 'Amount', 'own', r => give(r.amount, r.own), [FROM]);
    const rate = t.field('rate', 'Rate', 'USD/own', r => give(r.rate, `USD/${r.own}`), [FROM]);
    const stage = t.key('stage', 'Stage', r => r.stage, [FROM]);
    t.place('whole', 'Whole', op.rounded(amount, 0));
    const cost = t.place('cost', 'Cost', op.dollars(op.priced(amount, rate)));
    const shared = t.place('shared', 'Shared', op.dollars(op.scaled(cost, share)));
    const rough = t.place('rough', 'Rough', op.rounded(cost, 0));
    const doubled = t.place('doubled', 'Doubled', op.sum(rough, rough));
    t.place('third', 'Third', op.rounded(op.over(cost, op.sum(share, share)), 4));
    t.place('sofar', 'So far', op.runningThrough(cost));
    const to = t.key('to', 'To', r => (r.stage === 'gone' ? 'x' : 'r0'), [FROM]);
    const linked = t.place('linked', 'Linked', op.link(to, amount));
    t.place('tail', 'Tail', op.rounded(linked, 0));
    t.place('flat', 'Flat', op.sum(share, share));
    return { amount, stage, cost, shared, doubled };
  });
  const totals = work.block('totals', 'Totals');
  totals.place('all', 'All', op.total(columns.cost));
  totals.place('doubles', 'Doubles', op.total(columns.doubled));
  const stages = STAGES.map(key => ({ key }));
  work.table('s', { heading: 'Stages', of: stages, key: r => r.key, title: r => r.key }, t =>
    t.place('cost', 'Cost', op.totalWhere(columns.cost, columns.stage, t.rowKey())),
  );
  counts.watch(work);
  const done = evaluateSheet(work);
  const money = new Sheet('money', work, memory);
  money.table('m', rowsOf, t => {
    const cost = t.place('cost', 'Cost', op.carried(done, columns.cost, t.rowKey()));
    const month = t.fromSchedule('month', 'Month', 'month', r => ({ value: r.month, unit: 'month' }), [FROM]);
    t.place('late', 'Late', op.when(op.atLeast(month, op.scaled(month), 0), cost, op.none('USD')));
  });
  counts.watch(money);
  return [done, evaluateSheet(money)];
}

const stepsOf = ({ sheet }: SheetResult): Step[] => [
  ...sheet.tables.flatMap(t => t.placed),
  ...sheet.blocks.flatMap(b => b.entries()),
];

/** Every figure with its title, unit and value. */
const figures = (results: readonly SheetResult[]) =>
  results.flatMap(result => stepsOf(result).flatMap(step => result.column(step)));

/** A document under edit: what it comes to with a memory, and how often columns were worked out for it. */
function edited(first: Document) {
  const memory = new SheetMemory();
  const counts = new Counts();
  const say = (document: Document) => {
    const results = build(document, memory, counts);
    expect(figures(results)).toEqual(figures(build(document)));
    return counts.since();
  };
  say(first);
  return say;
}

/** The lines with another object in some rows. */
const withRows = (lines: readonly Line[], change: Partial<Line>, ...at: readonly number[]) =>
  lines.map((line, i) => (at.includes(i) ? { ...line, ...change } : line));

describe('a sheet with a memory', () => {
  const lines = linesOf(12);
  const first: Document = { lines, factor: '0.25' };

  /** The columns of givens are read in one go when any of their rows is another object. */
  const READ = { 't/amount': 12, 't/rate': 12, 'm/month': 12 };

  it('works out nothing when nothing has changed', () => {
    expect(edited(first)(first)).toEqual({});
    expect(edited(first)({ lines: [...lines], factor: '0.25' })).toEqual({});
  });
  it('works out the changed row of what looks at the change, and the totals', () => {
    const say = edited(first);
    expect(say({ ...first, lines: withRows(lines, { rate: '99' }, 4) })).toEqual({
      ...READ,
      ...{ product: 2, quotient: 1, 't/cost': 1, 't/shared': 1, 't/rough': 1, 't/doubled': 1, 't/third': 1 },
      ...{ 't/sofar': 12, 'totals/all': 1, 'totals/doubles': 1, 's/cost': 3, 'm/late': 1 },
    });
  });
  it('works out nothing else where another column of the row changed', () => {
    const say = edited(first);
    expect(say({ ...first, lines: withRows(lines, { month: '24009' }, 4) })).toEqual({
      ...READ,
      ...{ product: 1, 'at least': 1 },
    });
    expect(say({ ...first, lines: withRows(lines, { month: '24009', stage: 'gone' }, 4) })).toEqual({
      ...READ,
      ...{ 's/cost': 3, 't/linked': 12, 't/tail': 1 },
    });
    // Five rows name the first one in its unit; what names a row that is not there, or in another unit, stays absent.
    expect(
      say({ ...first, lines: withRows(withRows(lines, { stage: 'gone' }, 4), { amount: '99' }, 0) }),
    ).toMatchObject({
      ...{ 't/whole': 1, 't/linked': 12, 't/tail': 5 },
    });
  });
  it.each([
    [3, [1, 4, 11]],
    [4, [1, 4, 6, 11]],
    [12, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]],
  ])('works out the %d rows of twelve that changed', (count, rows) => {
    const say = edited(first);
    const worked = say({ ...first, lines: withRows(lines, { rate: '99' }, ...rows) });
    expect([worked['t/cost'], worked['t/shared'], worked['t/doubled']]).toEqual([count, count, count]);
  });
  it('works out all rows of what looks at a changed single value', () => {
    expect(edited(first)({ ...first, factor: '0.5' })).toEqual({
      ...{ product: 12, sum: 1, quotient: 12, 't/shared': 12, 't/third': 12, 't/flat': 12 },
    });
  });
  it('goes no further than where a change makes no difference', () => {
    // 10 at 3.00 is 30.00, and 30.001 is so in cents; 30.02 still is 30 dollars.
    expect(edited(first)({ ...first, lines: withRows(lines, { rate: '3.0001' }, 0) })).toEqual({
      ...READ,
      ...{ product: 1, 't/cost': 1 },
    });
    const worked = edited(first)({ ...first, lines: withRows(lines, { rate: '3.002' }, 0) });
    expect([worked['t/rough'], worked['t/doubled'], worked['totals/doubles']]).toEqual([
      1,
      undefined,
      undefined,
    ]);
  });
  it('takes over a row that is another object with the same in it', () => {
    expect(edited(first)({ ...first, lines: withRows(lines, {}, 2) })).toEqual(READ);
  });
  it('takes over what stands before a row that came', () => {
    const worked = edited(first)({ ...first, lines: linesOf(13) });
    expect([worked['t/whole'], worked['t/cost'], worked['totals/all']]).toEqual([1, 1, 1]);
  });
  it('takes over what is left when rows go', () => {
    const worked = edited(first)({ ...first, lines: linesOf(9) });
    expect([worked['t/whole'], worked['t/cost'], worked['totals/all']]).toEqual([undefined, undefined, 1]);
  });
  it('takes over nothing of a row that another one has taken the place of', () => {
    const worked = edited(first)({ ...first, lines: lines.slice(1) });
    expect([worked['t/whole'], worked['t/cost']]).toEqual([11, 11]);
  });
  it('tells a renamed row by its new name, a recounted one in its new unit', () => {
    const say = edited(first);
    say({ ...first, lines: withRows(lines, { title: 'Renamed' }, 3) });
    say({ ...first, lines: withRows(lines, { own: 'each' }, 3) });
    say({ ...first, lines: withRows(lines, { key: 'other' }, 3) });
  });
  it('follows a row to another stage and another row', () => {
    const say = edited(first);
    say({ ...first, lines: withRows(lines, { stage: 'gone' }, 3) });
    say({ ...first, lines: withRows(lines, { stage: 'tow' }, 3) });
  });
  it('follows an amount that goes and comes back', () => {
    const say = edited(first);
    say({ ...first, lines: withRows(lines, { amount: undefined }, 3) });
    say(first);
    say({ ...first, factor: undefined });
    say(first);
  });
  it('of two sheets of the same id the later is no worse for the earlier one', () => {
    const memory = new SheetMemory();
    build(first, memory);
    const other = new Sheet('work', undefined, memory);
    const block = other.block('ship', 'Ship');
    const share = block.given('share', 'Share', '1', give('7', '1'));
    const result = evaluateSheet(other);
    expect(result.number(share)).toBe(7);
    expect(figures(build(first, memory))).toEqual(figures(build(first)));
  });

  const cents = fc.integer({ min: 0, max: 999_999 }).map(n => (n / 100).toFixed(2));
  const edit = fc.record({
    at: fc.nat(),
    what: fc.constantFrom(
      'amount',
      'rate',
      'stage',
      'month',
      'title',
      'own',
      'add',
      'take',
      'turn',
      'factor',
      'none',
    ),
    number: cents,
  });
  const apply = (
    document: Document,
    { at, what, number }: { at: number; what: string; number: string },
  ): Document => {
    const { lines: now } = document;
    const i = now.length === 0 ? 0 : at % now.length;
    const changes: Readonly<Record<string, Partial<Line>>> = {
      amount: { amount: number },
      none: { amount: undefined },
      rate: { rate: number },
      stage: { stage: STAGES[at % 3] ?? 'yard' },
      month: { month: String(24_000 + (at % 9)) },
      title: { title: `Named ${at}` },
      own: { own: at % 2 === 0 ? 'each' : 'm' },
    };
    const change = changes[what];
    if (change !== undefined) return { ...document, lines: withRows(now, change, i) };
    if (what === 'add')
      return {
        ...document,
        lines: [...now.slice(0, i), { ...lineOf(i), key: `n${at}-${now.length}` }, ...now.slice(i)],
      };
    if (what === 'take') return { ...document, lines: now.filter((_, row) => row !== i) };
    if (what === 'turn') return { ...document, lines: now.toReversed() };
    return { ...document, factor: number };
  };
  const hasOneKeyEach = ({ lines: now }: Document) => new Set(now.map(line => line.key)).size === now.length;

  it('comes to what a sheet without one comes to, after any edits', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), edits => {
        const say = edited(first);
        let document = first;
        for (const each of edits) {
          const next = apply(document, each);
          if (!hasOneKeyEach(next)) continue;
          document = next;
          say(document);
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('another sheet of the same id', () => {
  /** Two single values and two steps made from them. */
  const sheetOf = (
    memory: SheetMemory | undefined,
    make: (a: Step<'USD'>, b: Step<'USD'>) => readonly [Step<op.SheetUnit>, Step<op.SheetUnit>],
    key = 'x',
  ) => {
    const sheet = new Sheet('s', undefined, memory);
    const block = sheet.block('b', 'B');
    const a = block.given('a', 'A', 'USD', A);
    const b = block.given('b', 'B', 'USD', B);
    const [x, y] = make(a, b);
    block.place(key, 'X', x);
    block.place('y', 'Y', y);
    return figures([evaluateSheet(sheet)]);
  };
  const [A, B] = [give('7.126', 'USD'), give('2', 'USD')];
  type Make = Parameters<typeof sheetOf>[1];
  const first: Make = (a, b) => [op.rounded(a, 2), op.difference(a, b)];

  it.each<[string, Make, string?]>([
    ['works otherwise', (a, b) => [op.wholeUp(a, 2), op.difference(a, b)]],
    ['works by other settings', (a, b) => [op.rounded(a, 1), op.difference(a, b)]],
    ['works with other operands', (a, b) => [op.rounded(b, 2), op.difference(a, b)]],
    ['works with them in another order', (a, b) => [op.rounded(a, 2), op.difference(b, a)]],
    ['works with more operands', (a, b) => [op.sum(a, b), op.difference(a, b)]],
    ['is called otherwise', first, 'other'],
    ['has other units', (a, b) => [op.over(a, b), op.difference(a, b)]],
    ['adds instead of taking off', (a, b) => [op.rounded(a, 2), op.sum(a, b)]],
    ['has fewer steps', (a, b) => [op.rounded(a, 2), op.rounded(b, 2)]],
  ])('that %s is worked out by itself', (_what, make, key) => {
    const memory = new SheetMemory();
    sheetOf(memory, first);
    expect(sheetOf(memory, make, key)).toEqual(sheetOf(undefined, make, key));
    expect(sheetOf(memory, first)).toEqual(sheetOf(undefined, first));
  });
});

describe('a sheet of the same steps but for', () => {
  const [A, B, C] = [give('7.126', 'USD'), give('2', 'USD'), give('5', 'USD')];
  const sheetOf = (make: (s: Step<'USD'>[], b: op.Block) => Step<op.SheetUnit>, memory?: SheetMemory) => {
    const sheet = new Sheet('s', undefined, memory);
    const block = sheet.block('b', 'B');
    const givens = [A, B, C].map((given, i) => block.given(`g${i}`, `G${i}`, 'USD', given));
    block.given('h', 'H', 'h', give('3', 'h'));
    const rows = { heading: 'R', of: ['a'], key: () => 'a', title: () => 'A' };
    sheet.table('t', rows, t => {
      const name = t.key('n', 'N', () => 'h', [FROM]);
      t.place('f', 'F', make(givens, block));
      t.place('h', 'H', op.fetched(name, block, 'h'));
    });
    return figures([evaluateSheet(sheet)]);
  };
  type Make = Parameters<typeof sheetOf>[0];
  const all = (steps: Step<'USD'>[], ...numbers: number[]): Step<'USD'> => {
    const [first, ...rest] = numbers.flatMap(number => steps.slice(number, number + 1));
    if (first === undefined) throw new Error('a sum of nothing');
    return op.sum(first, ...rest);
  };
  it.each<[string, Make, Make]>([
    ['an operand more', s => all(s, 0, 1), s => all(s, 0, 1, 1)],
    ['another of three operands', s => all(s, 0, 1), s => all(s, 0, 2)],
    ['the last operand', s => all(s, 0, 1, 2), s => all(s, 0, 1, 1)],
  ])('%s is worked out by itself, whichever came first', (_what, one, other) => {
    for (const [before, now] of [
      [one, other],
      [other, one],
    ] as const) {
      const memory = new SheetMemory();
      sheetOf(before, memory);
      expect(sheetOf(now, memory)).toEqual(sheetOf(now));
    }
  });

  /** A field that is read once, and a fetched value, both in the unit. */
  const inUnit = (unit: 'USD' | 'h', memory?: SheetMemory) => {
    const sheet = new Sheet('s', undefined, memory);
    const block = sheet.block('b', 'B');
    block.given('x', 'X', 'USD', A);
    const rows = { heading: 'R', of: ROWS, key: (r: Line) => r.key, title: (r: Line) => r.title };
    sheet.table('t', rows, t => {
      t.field('f', 'F', unit, () => A, [FROM]);
      t.place(
        'x',
        'X',
        op.fetched(
          t.key('n', 'N', () => 'x', [FROM]),
          block,
          unit,
        ),
      );
    });
    return figures([evaluateSheet(sheet)]).map(({ text }) => text);
  };
  const ROWS = linesOf(2);
  it('the unit is worked out by itself', () => {
    const memory = new SheetMemory();
    const inDollars = [...['7.126', '7.126'], ...['x', 'x'], ...['7.126', '7.126'], '7.126'];
    expect(inUnit('USD', memory)).toEqual(inDollars);
    expect(inUnit('h', memory)).toEqual([undefined, undefined, 'x', 'x', undefined, undefined, '7.126']);
    expect(inUnit('USD', memory)).toEqual(inDollars);
  });
});

describe('what a memory reads', () => {
  const read: string[] = [];
  const readWith = (memory: SheetMemory, lines: readonly Line[], from: readonly unknown[]) => {
    const sheet = new Sheet('s', undefined, memory);
    const rows = { heading: 'R', of: lines, key: (r: Line) => r.key, title: (r: Line) => r.title };
    read.length = 0;
    sheet.table('t', rows, t => {
      t.field('rate', 'Rate', 'USD', r => (read.push(`rate ${r.key}`), give(r.rate, 'USD')), from);
      t.key('stage', 'Stage', r => (read.push(`stage ${r.key}`), r.stage), from);
      t.field('plain', 'Plain', 'USD', r => (read.push(`plain ${r.key}`), give(r.rate, 'USD')));
    });
    return [...read];
  };
  const lines = linesOf(3);
  const every = ['rate r0', 'rate r1', 'rate r2', 'stage r0', 'stage r1', 'stage r2'];
  const plain = ['plain r0', 'plain r1', 'plain r2'];

  it('is each row once, until the row or what is looked at beside it is another object', () => {
    const memory = new SheetMemory();
    expect(readWith(memory, lines, [FROM])).toEqual([...every, ...plain]);
    expect(readWith(memory, lines, [FROM])).toEqual(plain);
    expect(readWith(memory, [...lines], [FROM])).toEqual(plain);
    expect(readWith(memory, withRows(lines, { rate: '8' }, 1), [FROM])).toEqual([
      'rate r1',
      'stage r1',
      ...plain,
    ]);
    expect(readWith(memory, lines, [{}])).toEqual([...every, ...plain]);
    expect(readWith(memory, lines, [{}, FROM])).toEqual([...every, ...plain]);
  });
  it('is told apart by table: the rows of one may have changed where those of another have not', () => {
    const memory = new SheetMemory();
    const [older, newer] = [linesOf(3), withRows(linesOf(3), { rate: '8' }, 1)];
    const rates = (first: readonly Line[], second: readonly Line[]) => {
      const sheet = new Sheet('s', undefined, memory);
      return [first, second].flatMap((of, i) => {
        const rows = { heading: 'R', of, key: (r: Line) => r.key, title: (r: Line) => r.title };
        const { columns } = sheet.table(`t${i}`, rows, t =>
          t.field('f', 'F', 'USD', r => give(r.rate, 'USD'), [FROM]),
        );
        return columns.kind.givens?.map(given => given?.value) ?? [];
      });
    };
    rates(newer, older);
    expect(rates(newer, newer)).toEqual(['3.00', '8', '3.50', '3.00', '8', '3.50']);
    expect(rates(older, newer)).toEqual(['3.00', '3.25', '3.50', '3.00', '8', '3.50']);
    expect(rates(newer, older)).toEqual(['3.00', '8', '3.50', '3.00', '3.25', '3.50']);
  });
  it('is every row again when rows come or go', () => {
    const memory = new SheetMemory();
    readWith(memory, lines, [FROM]);
    expect(readWith(memory, lines.slice(0, 2), [FROM])).toEqual([
      'rate r0',
      'rate r1',
      'stage r0',
      'stage r1',
      'plain r0',
      'plain r1',
    ]);
  });
});

it('a step that is not placed has no id, and one of a table needs a row', () => {
  const [done] = build({ lines: linesOf(1), factor: '1' });
  const cost = done?.sheet.tables[0]?.placed.find(step => step.home?.key === 'cost');
  expect(cost && idOf(cost, 'r0')).toBe('t/r0/cost');
});
