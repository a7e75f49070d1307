import { describe, expect, it } from 'vitest';
import * as op from '../../../core/sheet';
import {
  Sheet,
  emitWorkbook,
  evaluateSheet,
  sheetFindings,
  why,
  type SheetUnit,
  type Step,
} from '../../../core/sheet';
import type { PlainUnit, Unit } from '../../../core/units';
import { give } from './example';
import { inDecimals } from './in-decimals';

const named = (of: readonly string[]) => ({
  heading: 'Lines',
  of,
  key: (r: string) => r,
  title: (r: string) => `Line ${r}`,
});

/** A sheet run before, and one that carries on from it with single values, two lines and a look-up table. */
function stage() {
  const before = new Sheet('before');
  const done = before.block('d', 'Done');
  const hoursBefore = done.given('hours', 'Hours before', 'h', give('12', 'h'));
  const rough = done.place('rough', 'Rough', op.over(hoursBefore, op.unity('1')));
  const linesBefore = before.table('w', { ...named(['a', 'b']), own: () => 'm2' as const }, t => ({
    hours: t.field('hours', 'Hours done', 'h', r => give(r === 'a' ? '4' : '9', 'h')),
    area: t.field('area', 'Area done', 'own', () => give('8', 'm2')),
  }));
  const past = evaluateSheet(before);
  const sheet = new Sheet('s', before);
  const b = sheet.block('b', 'Block');
  const single = <U extends SheetUnit & Unit>(key: string, title: string, unit: U, value: string) =>
    b.given(key, title, unit, give(value, unit));
  const singles = {
    cost: single('cost', 'Cost', 'USD', '100'),
    fee: single('fee', 'Fee', 'USD', '40.55'),
    hours: single('hours', 'Hours', 'h', '3'),
    rate: single('rate', 'Rate', 'USD/h', '20'),
    long: single('long', 'Length', 'm', '6'),
    part: single('part', 'Part', '1', '0.25'),
    yes: single('yes', 'Yes', '1', '1'),
    two: single('two', 'Two', '1', '2'),
    zero: single('zero', 'Zero', '1', '0'),
    month: single('month', 'Month', 'month', '3'),
    gone: b.given('gone', 'Gone', 'USD', undefined),
  };
  const entries = ['1', '2', '4'].map(key => ({ key, title: `Month ${key}`, given: give(`1.${key}`, '1') }));
  const index = sheet.lookUpTable('ix', { title: 'Index', keyUnit: 'month', unit: '1', entries });
  const { columns } = sheet.table('t', { ...named(['a', 'b']), own: () => 'm2' as const }, t => ({
    stages: t.key('stage', 'Stages', r => (r === 'a' ? 'yard' : 'tow')),
    months: t.field('months', 'Months', 'month', r => give(r === 'a' ? '3' : '4', 'month')),
    amounts: t.field('amounts', 'Amounts', 'USD', r => give(r === 'a' ? '10' : '30', 'USD')),
    some: t.field('some', 'Some', 'USD', r => (r === 'a' ? give('10', 'USD') : undefined)),
    sizes: t.field('sizes', 'Sizes', 'own', () => give('5', 'm2')),
  }));
  return {
    past,
    before,
    hoursBefore,
    rough,
    done: linesBefore.columns,
    sheet,
    b,
    index,
    ...singles,
    ...columns,
  };
}

/** What the line in which a step is placed has for it to look at. */
function lineOf(t: op.Recipe<string>, stageKey: string) {
  return {
    key: t.rowKey(),
    stage: t.key('stage', 'Stage', () => stageKey),
    name: t.key('name', 'Name', () => 'long'),
    nobody: t.key('nobody', 'Nobody', () => 'nobody'),
    when: t.field('when', 'When', 'month', () => give('4', 'month')),
    own: t.field('own', 'Own amount', 'USD', r => give(r === 'a' ? '7' : '8', 'USD')),
    size: t.field('size', 'Size', 'own', () => give('1', 'm2')),
  };
}
type Make = (s: ReturnType<typeof stage> & { line: ReturnType<typeof lineOf> }) => Step<SheetUnit>;

/** The second line of a table, in which a step is placed, with the unit of its rows. */
function placed(make: Make, own: PlainUnit = 'm2') {
  const s = stage();
  s.sheet.table('u', { ...named(['a', 'b']), heading: 'Placed', own: () => own }, t =>
    t.place('x', 'X', make({ ...s, line: lineOf(t, 'tow') })),
  );
  const done = inDecimals(s.sheet);
  const result = evaluateSheet(s.sheet);
  return { past: s.past, result, decimals: [...done] };
}

/** Operation, settings, words, value and formula of a placed step. */
function told(make: Make) {
  const { past, result, decimals } = placed(make);
  const step = why(result, 'u/b/x').steps.get('u/b/x');
  const model = emitWorkbook([past, result]);
  const region = model.regions.find(one => one.id === 'u');
  const column = (region?.columns.findIndex(one => one.key === 'x') ?? -2) + 1;
  const cells = model.sheets.get(region?.sheet ?? '') ?? [];
  const content = cells.find(cell => cell.column === column && cell.row === region?.lastRow)?.content;
  return [
    step?.operation,
    step?.settings,
    step?.words,
    step?.value,
    content?.kind === 'formula' && content.formula,
    decimals,
  ];
}

describe('every kind of step has its name, settings, words, value and formula', () => {
  it.each<[string, Record<string, string | number>, string, string, string, Make]>([
    ['sum', {}, 'Cost + Fee + Cost', '240.55', 'b_cost+b_fee+b_cost', s => op.sum(s.cost, s.fee, s.cost)],
    ['difference', {}, 'Cost − Fee', '59.45', 'b_cost-b_fee', s => op.difference(s.cost, s.fee)],
    ['product', {}, 'Cost × Part × Two', '50', 'b_cost*b_part*b_two', s => op.scaled(s.cost, s.part, s.two)],
    ['product', {}, 'Hours × Rate', '60', 'b_hours*b_rate', s => op.priced(s.hours, s.rate)],
    ['product', {}, 'Length × Length', '36', 'b_long*b_long', s => op.times(s.long, s.long)],
    ['quotient', {}, 'Cost ÷ Rate', '5', 'b_cost/b_rate', s => op.over(s.cost, s.rate)],
    [
      'power',
      {},
      'Two to the power Part',
      '1.189207115002721',
      'POWER(b_two,b_part)',
      s => op.power(s.two, s.part),
    ],
    [
      'rounded',
      { digits: 1 },
      'Fee, rounded to 1 decimals',
      '40.6',
      'ROUND(b_fee,1)',
      s => op.rounded(s.fee, 1),
    ],
    ['dollars', { digits: 2 }, 'Fee, rounded to the cent', '40.55', 'ROUND(b_fee,2)', s => op.dollars(s.fee)],
    [
      'whole up',
      { settledTo: 1 },
      'Fee, up to a whole number',
      '41',
      '-INT(-ROUND(b_fee,1))',
      s => op.wholeUp(s.fee, 1),
    ],
    [
      'at least',
      { settledTo: 2 },
      '1 when Cost is at least Fee, else 0',
      '1',
      'IF(ROUND(b_cost,2)>=ROUND(b_fee,2),1,0)',
      s => op.atLeast(s.cost, s.fee, 2),
    ],
    ['minimum', {}, 'the least of Cost, Fee', '40.55', 'MIN(b_cost,b_fee)', s => op.minimum(s.cost, s.fee)],
    ['maximum', {}, 'the greatest of Fee, Cost', '100', 'MAX(b_fee,b_cost)', s => op.maximum(s.fee, s.cost)],
    [
      'when',
      {},
      'Cost when Yes is 1, else Fee',
      '100',
      'IF(b_yes=1,b_cost,b_fee)',
      s => op.when(s.yes, s.cost, s.fee),
    ],
    [
      'when',
      {},
      'Cost when Two is 1, else Fee',
      '40.55',
      'IF(b_two=1,b_cost,b_fee)',
      s => op.when(s.two, s.cost, s.fee),
    ],
    [
      'first present',
      {},
      'Gone, or without it Fee, or without it Cost',
      '40.55',
      'IF(ISNUMBER(b_gone),b_gone,IF(ISNUMBER(b_fee),b_fee,b_cost))',
      s => op.quoted(s.gone, s.fee, s.cost),
    ],
    [
      'grossed up',
      { digits: 2 },
      'Cost ÷ (1 − Part)',
      '133.33',
      'ROUND(b_cost/(1-b_part),2)',
      s => op.grossedUp(s.cost, s.part, 2),
    ],
    [
      'share',
      { settledTo: 10, digits: 2 },
      'Cost from share Part to share Yes, to the cent',
      '75',
      'ROUND(b_cost*ROUND(b_yes,10),2)-ROUND(b_cost*ROUND(b_part,10),2)',
      s => op.share(s.cost, s.part, s.yes),
    ],
    ['total', {}, 'the total of Amounts', '40', 'SUM(t_amounts)', s => op.total(s.amounts)],
    ['known so far', {}, 'what is known so far of Some', '10', 'SUM(t_some)', s => op.knownSoFar(s.some)],
    [
      'count of known',
      {},
      'in how many rows Some is known',
      '1',
      'COUNT(t_some)',
      s => op.countKnown(s.some),
    ],
    [
      'total where',
      {},
      'the total of Amounts where Stages is Stage',
      '30',
      'SUMIFS(t_amounts,t_stage,D4)',
      s => op.totalWhere(s.amounts, s.stages, s.line.stage),
    ],
    [
      'total where',
      {},
      'the total of Amounts where Months is When',
      '30',
      'SUMIFS(t_amounts,t_months,G4)',
      s => op.totalWhere(s.amounts, s.months, s.line.when),
    ],
    [
      'running total',
      { until: 'this row' },
      'the running total of Own amount to this row',
      '15',
      'SUM(H$2:H4)',
      s => op.runningThrough(s.line.own),
    ],
    [
      'running total',
      { until: 'the row before' },
      'the running total of Own amount to the row before',
      '7',
      'SUM(H$2:H3)',
      s => op.runningBefore(s.line.own),
    ],
    [
      'link',
      {},
      'Amounts of the row named by Placed',
      '30',
      'INDEX(t_amounts,MATCH(A4,t_rowKeys,0))',
      s => op.link(s.line.key, s.amounts),
    ],
    [
      'link',
      {},
      'the value named by Name',
      '6',
      'INDEX(b_values,MATCH(E4,b_rowKeys,0))',
      s => op.fetched(s.line.name, s.b, 'm'),
    ],
    [
      'look-up',
      { table: 'ix', settledTo: 0, beyond: 'absent', entryKey: '4' },
      'Index at When',
      '1.4',
      'INDEX(ix_values,MATCH(ROUND(G4,0),ix_rowKeys,0))',
      s => op.lookUp(s.index, s.line.when, 0, 'absent'),
    ],
    [
      'look-up',
      { table: 'ix', settledTo: 0, beyond: 'hold the last', entryKey: '4' },
      'Index at When',
      '1.4',
      'INDEX(ix_values,MATCH(MIN(ROUND(G4,0),MAX(ix_rowKeys)),ix_rowKeys,0))',
      s => op.lookUp(s.index, s.line.when, 0, 'hold the last'),
    ],
    [
      'step look-up',
      { table: 'ix', settledTo: 0, beyond: 'hold the last', entryKey: '2', nextKey: '4' },
      'Index at Month',
      '1.2',
      'INDEX(ix_values,MATCH(ROUND(b_month,0),ix_rowKeys,1))',
      s => op.stepLookUp(s.index, s.month, 0, 'hold the last'),
    ],
    [
      'carried',
      {},
      'Placed',
      '9',
      'INDEX(w_hours,MATCH(A4,w_rowKeys,0))',
      s => op.carried(s.past, s.done.hours, s.line.key),
    ],
    ['carried', {}, '', '12', 'd_hours', s => op.carriedSingle(s.past, s.hoursBefore)],
  ])('%s %o: %s', (operation, settings, words, value, formula, make) => {
    // Numbers as short as these need no decimals, but for wholes by their shares and totals by keys that are numbers.
    const needs = operation === 'grossed up' || words.includes('Months');
    const decimals = needs ? [operation, operation] : [];
    expect(told(make)).toEqual([operation, settings, words, value, formula, decimals]);
  });
});

describe('what doubles leave in doubt is worked out in decimals, and nothing else is', () => {
  const LONG = '1.00000000000000000001';
  /** Single values: one, three, some of more digits than a double holds, amounts. */
  const values = (sheet: Sheet) => {
    const b = sheet.block('v', 'Values');
    const given = <U extends '1' | 'USD'>(key: string, unit: U, value: string) =>
      b.given(key, key, unit, give(value, unit));
    return {
      x: given('x', '1', '1'),
      y: given('y', '1', '3'),
      nothing: op.none('1'),
      long: given('long', '1', LONG),
      tie: given('tie', '1', '0.50000000005000000000001'),
      usd: given('usd', 'USD', '100.5'),
      most: given('most', 'USD', '100.50000000000000000001'),
      great: given('great', 'USD', '999999999999999'),
    };
  };
  /** The text of a single value made from these, and what took decimals. */
  const single = (make: (s: ReturnType<typeof values>) => Step<SheetUnit>) => {
    const sheet = new Sheet('s');
    const f = make(values(sheet));
    sheet.block('b', 'B').place('f', 'F', f);
    const done = inDecimals(sheet);
    const result = evaluateSheet(sheet);
    const decimals = [...done];
    return [result.figure('b/f').text, decimals.filter(operation => operation !== 'given')];
  };
  it.each<[string, string | undefined, readonly string[], Parameters<typeof single>[0]]>([
    ['a condition that is nearly one', '3', ['when'], s => op.when(s.long, s.x, s.y)],
    ['a quotient by nothing', undefined, ['quotient'], s => op.over(s.x, s.nothing)],
    ['a third', '0.3333', [], s => op.rounded(op.over(s.x, s.y), 4)],
    ['a third of thirds, up', '1', [], s => op.wholeUp(op.over(op.over(s.x, s.y), op.over(s.x, s.y)), 0)],
    [
      // Three thirds are 0.99... of 34 digits, and with a half 1.49...; to 28 digits that is the tie 1.5.
      'a tie behind thirds',
      '2',
      ['quotient', 'quotient', 'sum', 'rounded'],
      s => {
        const third = op.over(s.x, s.y);
        return op.rounded(op.sum(third, third, third, op.over(s.x, op.sum(s.x, s.x))), 0);
      },
    ],
    ['the greater of two that nearly meet', LONG, ['maximum'], s => op.maximum(s.x, s.long)],
    ['the greater of one and itself', LONG, [], s => op.maximum(s.long, s.long)],
    ['a comparison of two that nearly meet', '1', [], s => op.atLeast(s.long, s.x, 4)],
    ['a comparison near a tie', '1', ['at least'], s => op.atLeast(s.tie, s.nothing, 10)],
    ['a comparison with one near a tie', '0', ['at least'], s => op.atLeast(s.nothing, s.tie, 10)],
    ['a whole number up from near a tie', '1', ['whole up'], s => op.wholeUp(s.tie, 10)],
    ['a whole power', '9', [], s => op.power(s.y, op.sum(s.x, s.x))],
    ['a power of nearly one', '1', ['power'], s => op.power(s.long, s.x)],
    ['a share to a long part', '100.5', [], s => op.share(s.usd, s.nothing, s.long)],
    ['a share to a part near a tie', '50.25', ['share'], s => op.share(s.usd, s.nothing, s.tie)],
    ['a share from a part near a tie', '50.25', ['share'], s => op.share(s.usd, s.tie, s.x)],
    ['a share of an amount of many digits', '100.5', ['share'], s => op.share(s.most, s.nothing, s.x)],
    [
      'a share of an amount that has no cents in a double',
      '999999999999999',
      ['share'],
      s => op.share(s.great, s.nothing, s.x),
    ],
    ['a share of nothing to nothing of it', '0', [], s => op.share(s.usd, s.nothing, s.nothing)],
  ])('%s: %s', (_what, text, decimals, make) => expect(single(make)).toEqual([text, decimals]));

  it('of a column of givens only the long ones', () => {
    const sheet = new Sheet('s');
    const values = [LONG, '2.5', undefined, '7'];
    const { columns } = sheet.table('t', named(['a', 'b', 'c', 'd']), t =>
      t.field('f', 'F', '1', r => give(values['abcd'.indexOf(r)], '1')),
    );
    const done = inDecimals(sheet);
    expect(
      evaluateSheet(sheet)
        .column(columns)
        .map(({ text }) => text),
    ).toEqual(values);
    expect(done).toEqual(['given']);
  });
});

/** What is said of why the second line is absent. */
const reason = (make: Make, own?: PlainUnit) => {
  const { result } = placed(make, own);
  expect(result.figure('u/b/x').text).toBeUndefined();
  return sheetFindings(result, ['u/b/x']).map(found => found.message);
};

describe('what cannot be worked out is absent and says why', () => {
  it.each<[string, Make, PlainUnit?]>([
    ['X of Line b: the division is by zero.', s => op.over(s.cost, s.zero)],
    ['X of Line b: a share of itself of 1 or more has no end.', s => op.grossedUp(s.cost, s.yes, 2)],
    ['X of Line b: a share of itself of 1 or more has no end.', s => op.grossedUp(s.cost, s.two, 2)],
    [
      'X of Line b: the row it names does not exist, or is counted in another unit.',
      s => op.link(s.line.nobody, s.amounts),
    ],
    [
      'X of Line b: the row it names does not exist, or is counted in another unit.',
      s => op.link(s.line.key, s.sizes),
      'm',
    ],
    [
      'X of Line b: there is no single value of that name in this unit.',
      s => op.fetched(s.line.nobody, s.b, 'm'),
    ],
    [
      'X of Line b: there is no single value of that name in this unit.',
      s => op.fetched(s.line.name, s.b, 'h'),
    ],
    ['X of Line b: Index has no value for 3 month.', s => op.lookUp(s.index, s.month, 0, 'absent')],
    [
      'X of Line b: it is absent where it is calculated.',
      s => op.carried(s.past, s.done.hours, s.line.nobody),
    ],
    [
      'X of Line b: it is absent where it is calculated.',
      s => op.carried(s.past, s.done.area, s.line.key),
      'm',
    ],
    ['Some of Line b: it is not given.', s => op.total(s.some)],
    ['Gone: it is not given.', s => op.sum(s.cost, s.gone)],
    ['Gone: it is not given.', s => op.when(s.yes, s.gone, s.cost)],
  ])('%s', (message, make, own) => {
    expect(reason(make, own)).toEqual([message]);
  });

  it('a power without a finite value', () => {
    expect(reason(s => op.rounded(op.power(s.zero, op.difference(s.zero, s.yes)), 2))).toEqual([
      'Zero to the power a step: the power has no finite value.',
    ]);
  });
  it('a total by a key that a row does not have', () => {
    expect(
      reason(s => {
        const table = s.sheet.table('v', named(['a', 'b']), t => ({
          stages: t.key('stage', 'Stages', r => (r === 'a' ? 'tow' : undefined)),
          amounts: t.field('amounts', 'Amounts', 'USD', () => give('1', 'USD')),
        }));
        return op.totalWhere(table.columns.amounts, table.columns.stages, s.line.stage);
      }),
    ).toEqual(['X of Line b: a row has no key to be told apart by.']);
  });
});

/** What is thrown when a step is made so; the steps are held to be of any unit, as the compiler would not let them be. */
const refusal = (make: Make): string => {
  try {
    placed(make);
  } catch (cause) {
    return cause instanceof Error ? cause.message : 'no error';
  }
  return 'taken';
};
const any = (step: Step) => step as unknown as Step<never>;

describe('a step that cannot be is refused in words', () => {
  const ONE_UNIT = '"Hours" is in h, not in USD';
  it.each<[string, Make]>([
    [`sum: ${ONE_UNIT}`, s => op.sum(s.cost, any(s.hours))],
    [`difference: ${ONE_UNIT}`, s => op.difference(s.cost, any(s.hours))],
    [`minimum: ${ONE_UNIT}`, s => op.minimum(s.cost, any(s.hours))],
    [`maximum: ${ONE_UNIT}`, s => op.maximum(s.cost, any(s.hours))],
    [`at least: ${ONE_UNIT}`, s => op.atLeast(s.cost, any(s.hours), 2)],
    [`first present: ${ONE_UNIT}`, s => op.quoted(s.cost, any(s.hours))],
    [`when: ${ONE_UNIT}`, s => op.when(s.yes, s.cost, any(s.hours))],
    ['when: "Hours" is in h, not in 1', s => op.when(any(s.hours), s.cost, s.cost)],
    ['scaled: "Hours" is in h, not in 1', s => op.scaled(s.cost, any(s.hours))],
    ['priced: "Hours" is in h, not in 1', s => op.priced(s.hours, s.rate, any(s.hours))],
    ['power: "Hours" is in h, not in 1', s => op.power(any(s.hours), s.two)],
    ['power: "Hours" is in h, not in 1', s => op.power(s.two, any(s.hours))],
    ['grossed up: "Hours" is in h, not in 1', s => op.grossedUp(s.cost, any(s.hours), 2)],
    ['dollars: "Hours" is in h, not in USD', s => op.dollars(any(s.hours))],
    ['share: "Hours" is in h, not in USD', s => op.share(any(s.hours), s.part, s.yes)],
    ['share: "Hours" is in h, not in 1', s => op.share(s.cost, any(s.hours), s.yes)],
    ['share: "Hours" is in h, not in 1', s => op.share(s.cost, s.part, any(s.hours))],
    ['the key of Index: "Hours" is in h, not in month', s => op.lookUp(s.index, any(s.hours), 0, 'absent')],
    ['link: "Hours" is in h, not in text', s => op.link(any(s.hours), s.amounts)],
    ['link: "Hours" is in h, not in text', s => op.fetched(any(s.hours), s.b, 'm')],
    ['carried: "Hours" is in h, not in text', s => op.carried(s.past, s.done.hours, any(s.hours))],
    ...[-1, 11, 1.5, NaN].flatMap((digits): [string, Make][] => [
      [`rounded: ${digits} is not a number of decimals from 0 to 10`, s => op.rounded(s.cost, digits)],
      [`whole up: ${digits} is not a number of decimals from 0 to 10`, s => op.wholeUp(s.cost, digits)],
      [
        `at least: ${digits} is not a number of decimals from 0 to 10`,
        s => op.atLeast(s.cost, s.cost, digits),
      ],
      [
        `grossed up: ${digits} is not a number of decimals from 0 to 10`,
        s => op.grossedUp(s.cost, s.part, digits),
      ],
      [
        `share: ${digits} is not a number of decimals from 0 to 10`,
        s => op.share(s.cost, s.part, s.yes, digits),
      ],
      [
        `the key of Index: ${digits} is not a number of decimals from 0 to 10`,
        s => op.lookUp(s.index, s.month, digits, 'absent'),
      ],
    ]),
    ['taken', s => op.rounded(s.cost, 0)],
    ['taken', s => op.rounded(s.cost, 10)],
    ['total: "Cost" is not a column of a table', s => op.total(s.cost)],
    ['known so far: "Cost" is not a column of a table', s => op.knownSoFar(s.cost)],
    ['count of known: sum is not a column of a table', s => op.countKnown(op.sum(s.cost))],
    ['total: the rows of "Sizes" are in units of their own and do not add up', s => op.total(s.sizes)],
    ['total: the rows of "Sizes" are in units of their own and do not add up', s => op.knownSoFar(s.sizes)],
    ['running total: "Cost" is not a column of a table', s => op.runningThrough(s.cost)],
    ['running total: sum is not a column of a table', s => op.runningBefore(op.sum(s.line.own))],
    ['running total: "Size" does not add up over its rows', s => op.runningThrough(s.line.size)],
    ['link: "Cost" is not a column of a table', s => op.link(s.line.key, s.cost)],
    ['link: sum is not a column of a table', s => op.link(s.line.key, op.sum(s.amounts))],
    [
      'link: the block empty holds no value yet',
      s => op.fetched(s.line.name, s.sheet.block('empty', 'E'), 'm'),
    ],
    [
      'total where: "Cost" and "Stages" are not columns of one table',
      s => op.totalWhere(s.cost, s.stages, s.line.stage),
    ],
    [
      'total where: sum and "Stages" are not columns of one table',
      s => op.totalWhere(op.sum(s.amounts), s.stages, s.line.stage),
    ],
    [
      'total where: "Amounts" and "Stage" are not columns of one table',
      s => op.totalWhere(s.amounts, s.line.stage, s.line.stage),
    ],
    [
      'total where: the rows of "Sizes" are in units of their own and do not add up',
      s => op.totalWhere(s.sizes, s.stages, s.line.stage),
    ],
    [
      'total where: keys in month and text never meet',
      s => op.totalWhere(s.amounts, s.months, any(s.line.stage)),
    ],
    ['carried: "Cost" is not placed in the sheet before', s => op.carried(s.past, s.cost, s.line.key)],
    ['carried: "Hours before" is not a column', s => op.carried(s.past, s.hoursBefore, s.line.key)],
    ['carried: "Hours done" is a column, not a single value', s => op.carriedSingle(s.past, s.done.hours)],
    ['a raw quotient (Rough) reaches another sheet: round it first', s => op.carriedSingle(s.past, s.rough)],
    ['a raw quotient (quotient) reaches cents: round it first', s => op.dollars(op.over(s.cost, s.two))],
    [
      'a raw quotient (quotient) reaches a condition: round it first',
      s => op.when(op.over(s.two, s.two), s.cost, s.cost),
    ],
    [
      'a difference (difference) reaches a share: round it first',
      s => op.share(op.difference(s.cost, s.fee), s.part, s.yes),
    ],
    [
      'a raw power (power) reaches a share: round it first',
      s => op.share(s.cost, op.power(s.part, s.two), s.yes),
    ],
    [
      'a raw power (power) reaches a share: round it first',
      s => op.share(s.cost, s.part, op.power(s.part, s.two)),
    ],
    [
      'a raw power (product) reaches grossed up: round it first',
      s => op.grossedUp(op.scaled(s.cost, op.power(s.part, s.two)), s.part, 2),
    ],
    [
      'a raw power (power) reaches grossed up: round it first',
      s => op.grossedUp(s.cost, op.power(s.part, s.two), 2),
    ],
    [
      'a raw power (power) reaches at least: round it first',
      s => op.atLeast(op.power(s.part, s.two), s.part, 2),
    ],
    [
      'a raw power (power) reaches at least: round it first',
      s => op.atLeast(s.part, op.power(s.part, s.two), 2),
    ],
    ['a raw power (power) reaches whole up: round it first', s => op.wholeUp(op.power(s.part, s.two), 2)],
    [
      'first present: place sum first, its formula would be written twice',
      s => op.quoted(op.sum(s.cost), s.cost),
    ],
    [
      'share: place sum first, its formula would be written twice',
      s => op.share(op.sum(s.cost), s.part, s.yes),
    ],
    ['taken', s => op.quoted(s.cost, op.sum(s.cost))],
    ['taken', s => op.dollars(op.difference(s.cost, s.fee))],
    ['taken', s => op.wholeUp(op.over(s.cost, s.two), 2)],
  ])('%s', (words, make) => expect(refusal(make)).toBe(words));
});

describe('formulas of steps that stand where they must not', () => {
  it('a hidden step that two formulas would repeat is named with both', () => {
    const { sheet, b, cost, fee } = stage();
    const twice = op.sum(cost, fee);
    b.place('p', 'First user', op.scaled(twice));
    b.place('q', 'Second user', op.scaled(twice));
    expect(() => emitWorkbook([evaluateSheet(sheet)])).toThrow(
      'sum is used by "First user" and "Second user": place it',
    );
  });
  it('one that a formula names twice by itself is written twice', () => {
    const { sheet, past, b, cost, fee } = stage();
    const both = op.sum(cost, fee);
    b.place('p', 'P', op.sum(both, both));
    expect(() => emitWorkbook([past, evaluateSheet(sheet)])).not.toThrow();
  });
  it('a heading tells the unit of its column, but for plain numbers', () => {
    const sheet = new Sheet('s');
    sheet.table('t', named(['a']), t => {
      t.field('n', 'Number', '1', () => give('1', '1'));
      t.field('h', 'Time', 'h', () => give('1', 'h'));
    });
    const cells = emitWorkbook([evaluateSheet(sheet)]).sheets.get('Lines') ?? [];
    const texts = cells
      .filter(({ row }) => row === 2)
      .map(({ content }) => content.kind === 'text' && content.text);
    expect(texts).toEqual(['', '', '', 'h']);
  });
});

describe('a look-up by keys of more digits than a double tells apart', () => {
  const LONG = '1.00000000000000000001';
  const valueOf = (key: string, inSteps: boolean, beyond: 'absent' | 'hold the last') => {
    const sheet = new Sheet('s');
    const b = sheet.block('b', 'B');
    const entries = ['1', LONG, '2'].map((at, i) => ({
      key: at,
      title: at,
      given: give(String(i + 10), '1'),
    }));
    const table = sheet.lookUpTable('t', { title: 'T', keyUnit: '1', unit: '1', entries });
    const wanted = b.given('k', 'K', '1', give(key, '1'));
    b.place('x', 'X', (inSteps ? op.stepLookUp : op.lookUp)(table, wanted, 10, beyond));
    return evaluateSheet(sheet).figure('b/x').text;
  };
  it.each<[string, boolean, 'absent' | 'hold the last', string | undefined]>([
    ['1', false, 'absent', '10'],
    ['1.5', false, 'absent', undefined],
    ['1.5', true, 'absent', '11'],
    ['2', false, 'absent', '12'],
    ['3', false, 'absent', undefined],
    ['3', false, 'hold the last', '12'],
    ['3', true, 'absent', undefined],
    ['3', true, 'hold the last', '12'],
    ['0.5', true, 'hold the last', undefined],
    // Settled to ten decimals it is 1.
    [LONG, false, 'absent', '10'],
  ])('at %s, in steps %o, beyond %s: %s', (key, inSteps, beyond, expected) => {
    expect(valueOf(key, inSteps, beyond)).toBe(expected);
  });
});

describe('a long table in the workbook', () => {
  it.each([
    [0, 1],
    [249, 1],
    [250, 1],
    [251, 2],
    [500, 2],
    [501, 3],
  ])('of %d rows is made in %d parts, its headings once and each row once', (count, parts) => {
    const sheet = new Sheet('s');
    const rows = Array.from({ length: count }, (_, i) => `r${i}`);
    sheet.table('t', named(rows), t => t.field('n', 'Number', '1', () => give('1', '1')));
    const makers = emitWorkbook([evaluateSheet(sheet)]).partsOf('Lines');
    expect(makers.length).toBe(parts);
    const cells = makers.flatMap(make => make());
    expect(cells).toHaveLength(3 * (count + 2));
    const keys = cells.filter(({ column }) => column === 1);
    expect(keys.map(({ row }) => row)).toEqual(Array.from({ length: count + 2 }, (_, i) => i + 1));
  });
});
