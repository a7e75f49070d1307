import { describe, expect, test } from 'vitest';
import { planOf, WhyDesk, windowRows } from '../../../core/views';
import { STAGES } from '../../../core/work';
import { AWKWARD, awkward, DEMO } from './awkward';
import { plain } from './laws';

const desk = new WhyDesk(awkward('the example'), 'us');

test.each([
  'given:',
  'given:/nowhere/at/all',
  'given:/rates/overrides/trades~1nobody~1wage/figure',
  'rate:no-such-item',
  'rate:ocean-tow',
  'stage:topside:no-element',
  'stage:no-stage:labour',
  'stages/no-stage/total',
  'basis:rumour',
  'activity:no-such-activity',
  'openings:no-such-space',
  'generator:1999-01',
  'trip:no-such-rule',
  'presence:no-such-material',
  'laboratory:99',
  'intake:no-such-paper',
  'family:no-such-family',
  'past:case|99',
  'past:like|99',
  'grant:class|nobody|i',
  'grant:class',
  'grant:line|nobody|1|total',
  'grant:line',
  'grant:tie|nobody|a|form',
  'grant:tie',
  'grant:row|sport-fish-grant|no-such-row',
  'grant:row|nobody|x',
  'grant:cap|county-match',
  'grant:cap',
  'grant:section|nobody|A|total|total',
  'grant:section|sport-fish-grant|D|9|federal',
  'grant:section|sport-fish-grant',
  'grant:contract|no-such-contract|amount',
  'grant:contract',
  'grant:cash|1999-01|paid',
  'grant:cash|2028-01|stolen',
  'grant:cash',
  'grant:beside|year-1999',
  'grant:beside',
  'grant:rumour',
  'bid:item|no-such-item',
  'bid:item',
  'bid:cost|no-such-item',
  'bid:element|no-such-item|labour',
  'bid:element|mobilisation|rumour',
  'bid:element|mobilisation',
  'bid:received|nobody|mobilisation',
  'bid:received|quayside-yard|no-such-item',
  'bid:received|quayside-yard',
  'bid:middle|no-such-item',
  'bid:middle',
  'bid:rumour',
  'ship/rumour',
  'ship',
  '',
])('the name “%s” stands for no figure and opens nothing', name => {
  expect(desk.answer(name)).toBeUndefined();
});

describe('without a schedule, a grant, a bid or a screen', () => {
  const unscheduled = new WhyDesk(awkward('without a schedule'), 'us');
  const bare = new WhyDesk(awkward('without grant, bid, record, deadline, quotes and compartments'), 'us');

  test.each([
    'schedule:finish',
    'schedule:work-days',
    'activity:ocean-tow',
    'bid:base',
    'bid:direct',
    'bid:price',
    'bid:step|bid|estimate',
    'bid:item|mobilisation',
    'grant:source|all',
    'grant:step|forms|estimate',
    'generator:2027-05',
    'upright:verdict',
    'lines/ocean-tow/total',
    'sums/budget',
  ])('“%s” opens nothing', name => {
    expect((name.startsWith('grant') ? bare : unscheduled).answer(name)).toBeUndefined();
  });

  test.each([
    ['sums/total'],
    ['stages/tow/total'],
    ['stage:tow:labour'],
    ['element:labour'],
    ['payee:material+subcontract'],
    ['month:2027-05'],
    ['material:fuel'],
    ['family:all'],
    ['basis:unchecked'],
  ])('“%s” is told as not known, and why, and never as nothing', name => {
    const told = unscheduled.answer(name);
    expect(told?.value).toMatchObject({ text: 'not yet', absent: true });
    expect(told?.rows.map(row => row.words)).toEqual(['all lines wait for the schedule']);
  });

  test('the window tells no total, no finish and no share', () => {
    const rows = windowRows(
      AWKWARD['without a schedule'],
      awkward('without a schedule'),
      'us',
      undefined,
    )?.rows;
    expect(rows?.bottom.map(cell => [cell.key, cell.value.text]).slice(0, 2)).toEqual([
      ['total', 'no total yet'],
      ['finish', 'no schedule yet'],
    ]);
    expect(rows?.schedule).toBeUndefined();
    expect(plain(rows?.budget.sentence)).toBe('The total leaves something out; Review says what.');
    expect(
      rows?.budget.byStage.rows.map(row => [row.id, row.cells['total']?.text, row.cells['share']?.text]),
    ).toEqual([['total', 'not yet', 'not yet']]);
    expect(plain(unscheduled.opened('bid')?.sentence)).toBe(
      'There is no bid yet: a line of the estimate is absent.',
    );
    expect(unscheduled.opened('review')?.growth).toBeUndefined();
    expect(plain(unscheduled.opened('materials')?.sentence)).toContain(
      'what cleaning them costs is not known yet',
    );
  });
});

describe('a part of a sum that is not known', () => {
  const absent = new WhyDesk(awkward('with a lightship that is no weight'), 'us');

  test('leaves the sum not known, is told first, and the parts that are known after it', () => {
    const elements = STAGES.flatMap(stage => ['labour', 'subcontract'].map(one => `stage:${stage}:${one}`));
    const mixed = elements
      .map(name => absent.answer(name))
      .find(one => one?.rows.at(-1)?.value.absent === undefined && one?.rows[0]?.value.absent === true);
    expect(mixed?.value.text).toBe('not yet');
    expect(mixed?.rows.at(-1)?.value.text).toMatch(/^[\d,.]+$/);
    expect(mixed?.rows.every(row => row.value.why?.startsWith('lines/') === true)).toBe(true);
  });

  test('is told of hours too', () => {
    const told = absent.answer('hours:all');
    expect(told?.value).toEqual({ text: 'not yet', absent: true });
    expect(told?.rows[0]?.value.text).toBe('not yet');
  });

  test('leaves no share of the total, though each stage with a figure keeps it', () => {
    const rows = windowRows(
      AWKWARD['with a lightship that is no weight'],
      awkward('with a lightship that is no weight'),
      'us',
      undefined,
    )?.rows;
    const shares = rows?.budget.byStage.rows.map(row => row.cells['share']?.text);
    expect(new Set(shares)).toEqual(new Set(['not yet']));
    // What is known without the lightship is a part of what the example costs with it.
    const soFar = rows?.bottom[0];
    expect(soFar).toMatchObject({ label: 'Known so far, not the total', value: { accent: true } });
    const amount = (text = '') => Number(text.replace(/[$,]/g, ''));
    const whole = windowRows(DEMO, awkward('the example'), 'us', undefined)?.rows.bottom[0];
    expect(amount(soFar?.value.text)).toBeGreaterThan(0);
    expect(amount(soFar?.value.text)).toBeLessThan(amount(whole?.value.text));
  });
});

test('a document with faults that leave nothing to work out has no window and no plan to compare with', () => {
  const nothing = awkward('with a hull that nobody knows');
  expect(windowRows(AWKWARD['with a hull that nobody knows'], nothing, 'us', undefined)).toBeUndefined();
  expect(planOf(nothing).size).toBe(0);
});

test('an evaluation without findings counts none in the menu', () => {
  const { funding: _funding, ...project } = DEMO;
  const evaluation = { ...awkward('the example'), project, findings: [] };
  const rows = windowRows(DEMO, evaluation, 'us', undefined)?.rows;
  expect(rows?.counts).not.toHaveProperty('review');
  expect(rows?.bottom.at(-1)).toMatchObject({ value: { text: '0 open' } });
});
