import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as op from '../../../core/sheet';
import { Sheet, SheetMemory, evaluateSheet, idOf, type SheetResult, type Step } from '../../../core/sheet';
import type { Kind } from '../../../core/sheet/kind';
import { makeStep } from '../../../core/sheet/step';
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

/** How often a column was worked out in a row. */
class Counts {
  readonly #counts = new Map<string, number>();

  /** The value itself, counted. */
  step<U extends op.SheetUnit>(name: string, of: Step<U>): Step<U> {
    const kind: Kind = {
      operation: name,
      exact: ([value]) => {
        this.#counts.set(name, this.of(name) + 1);
        return value;
      },
      live: () => () => undefined,
      formula: ({ term }) => term(0),
      words: ([title = '']) => title,
    };
    return makeStep(of.unit, kind, [of], of.looseness);
  }
  of(name: string): number {
    return this.#counts.get(name) ?? 0;
  }
  /** What was counted since it was last asked. */
  since(): Record<string, number> {
    const counts = Object.fromEntries(this.#counts);
    this.#counts.clear();
    return counts;
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
    t.place('whole', 'Whole', counts.step('whole', op.rounded(amount, 0)));
    const cost = t.place('cost', 'Cost', counts.step('cost', op.dollars(op.priced(amount, rate))));
    const shared = t.place('shared', 'Shared', counts.step('shared', op.dollars(op.scaled(cost, share))));
    const rough = t.place('rough', 'Rough', counts.step('rough', op.rounded(cost, 0)));
    const doubled = t.place('doubled', 'Doubled', counts.step('doubled', op.sum(rough, rough)));
    t.place('third', 'Third', op.rounded(op.over(cost, op.sum(share, share)), 4));
    t.place('sofar', 'So far', op.runningThrough(cost));
    const to = t.key('to', 'To', r => (r.stage === 'gone' ? 'x' : 'r0'), [FROM]);
    t.place('linked', 'Linked', op.link(to, amount));
    return { amount, stage, cost, shared, doubled };
  });
  const totals = work.block('totals', 'Totals');
  totals.place('all', 'All', counts.step('all', op.total(columns.cost)));
  totals.place('doubles', 'Doubles', counts.step('doubles', op.total(columns.doubled)));
  const stages = STAGES.map(key => ({ key }));
  work.table('s', { heading: 'Stages', of: stages, key: r => r.key, title: r => r.key }, t =>
    t.place('cost', 'Cost', op.totalWhere(columns.cost, columns.stage, t.rowKey())),
  );
  const done = evaluateSheet(work);
  const money = new Sheet('money', work, memory);
  money.table('m', rowsOf, t => {
    const cost = t.place('cost', 'Cost', op.carried(done, columns.cost, t.rowKey()));
    const month = t.fromSchedule('month', 'Month', 'month', r => ({ value: r.month, unit: 'month' }), [FROM]);
    t.place(
      'late',
      'Late',
      op.when(op.atLeast(month, op.scaled(month), 0), counts.step('late', cost), op.none('USD')),
    );
  });
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

  it('works out nothing when nothing has changed', () => {
    expect(edited(first)(first)).toEqual({});
    expect(edited(first)({ lines: lines.map(line => ({ ...line })), factor: '0.25' })).toEqual({});
  });
  it('works out the changed row of what looks at the change, and the totals', () => {
    const say = edited(first);
    expect(say({ ...first, lines: withRows(lines, { rate: '99' }, 4) })).toEqual({
      cost: 1,
      shared: 1,
      rough: 1,
      doubled: 1,
      all: 1,
      doubles: 1,
      late: 1,
    });
  });
  it('works out three rows of twelve one by one', () => {
    const say = edited(first);
    expect(say({ ...first, lines: withRows(lines, { rate: '99' }, 1, 4, 11) })).toMatchObject({
      cost: 3,
      shared: 3,
    });
  });
  it('of four rows of twelve the rows that changed', () => {
    const say = edited(first);
    expect(say({ ...first, lines: withRows(lines, { rate: '99' }, 1, 4, 6, 11) })).toMatchObject({
      cost: 4,
      shared: 4,
    });
  });
  it('works out all rows of what looks at a changed single value', () => {
    expect(edited(first)({ ...first, factor: '0.5' })).toEqual({ shared: 12 });
  });
  it('goes no further than where a change makes no difference', () => {
    // 10 at 3.00 is 30.00, and 30.001 is so in cents; 30.02 still is 30 dollars.
    expect(edited(first)({ ...first, lines: withRows(lines, { rate: '3.0001' }, 0) })).toEqual({});
    expect(edited(first)({ ...first, lines: withRows(lines, { rate: '3.002' }, 0) })).toEqual({
      cost: 1,
      shared: 1,
      all: 1,
      late: 1,
    });
  });
  it('takes over a row that is another object with the same in it', () => {
    expect(edited(first)({ ...first, lines: withRows(lines, {}, 2) })).toEqual({});
  });
  it('takes over what stands before a row that came', () => {
    const counts = edited(first)({ ...first, lines: linesOf(13) });
    expect(counts['whole']).toBe(1);
    expect(counts['cost']).toBe(1);
  });
  it('takes over what is left when rows go', () => {
    const counts = edited(first)({ ...first, lines: linesOf(9) });
    expect(counts['whole']).toBeUndefined();
    expect(counts['all']).toBe(1);
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
