import { describe, expect, it } from 'vitest';
import {
  bookBasis,
  historyView,
  marginView,
  prepareRisk,
  shippedBookRules,
  type Evaluation,
} from '../../../core/evaluation';
import { formMapping } from '../../../core/evaluation/books/form-mapping';
import { lineHints } from '../../../core/evaluation/books/line-hints';
import { contractorRun } from '../../../core/evaluation/books/margin-view';
import { simulate } from '../../../core/risk';
import { demoProject, estimated, evaluated } from './demo';

let made: Evaluation | undefined;
/** The example, worked out when it is first asked for. */
const example = (): Evaluation => (made ??= evaluated(demoProject()));
const basis = () => {
  const found = bookBasis(example()).basis;
  if (found === undefined) throw new Error('the example has a basis of its books');
  return found;
};
const runs = () => {
  const { prepared } = prepareRisk(example());
  if (prepared === undefined) throw new Error('the example can be simulated');
  return prepared;
};

describe('the cost of the contractor in the runs', () => {
  it('is that of the plan and what the contract lines come to beyond it, with the events that strike them', () => {
    const prepared = runs();
    const contract = new Set(
      estimated(example())
        .items.filter(one => one.contract)
        .map(one => one.id),
    );
    const [ofContract, ofOwner] = [true, false].map(
      wanted => prepared.run.lines.find(line => contract.has(line) === wanted) ?? '',
    );
    const [event] = prepared.run.events.filter(one => one.costs.length > 0);
    const [cost] = event?.costs ?? [];
    if (event === undefined || cost === undefined || ofContract === undefined || ofOwner === undefined)
      throw new Error('the example has events that cost');
    // A trial in which every line comes to ten dollars more than planned.
    const lines = prepared.run.plan.lines.map(planned => Float64Array.of(planned + 10));
    const turned = contractorRun(example(), {
      ...prepared,
      run: {
        ...prepared.run,
        events: [{ ...event, costs: [ofContract, ofOwner].map(line => ({ ...cost, line })) }],
        money: () => ({ total: Float64Array.of(0), lines }),
      },
    });
    expect(turned?.events[0]?.costs.map(({ line }) => line)).toEqual([ofContract]);
    const none = { inputs: new Map(), durations: [], starts: [], finishes: [], waits: [] };
    const batch = { ...none, n: 1, asksCash: false };
    const count = prepared.run.lines.filter(line => contract.has(line)).length;
    const plan = (marginView(example()).plan?.cost ?? 0) / 100;
    expect(turned?.money(batch).total[0]).toBeCloseTo(plan + 10 * count, 1);
  });
});

describe('a bid that loses at the careful cost', () => {
  it('is told with its loss, and one that does not is not', () => {
    const result = simulate(runs().run, { trials: 64, seed: 1, ranksDrivers: false });
    if (result === undefined) throw new Error('the trials were not stopped');
    const { price = 0 } = marginView(example());
    // Ten runs: from the eighth on the cost is 10 per cent above the price, or 10 per cent below.
    const at = (share: number) => {
      const total = Float64Array.from({ length: 10 }, (_, run) => (run < 7 ? 1 : (price / 100) * share));
      return marginView(example(), { ...result, samples: { ...result.samples, total } }).findings;
    };
    const [loss] = at(1.1).filter(one => one.code === 'bid/margin-gone');
    expect(loss).toMatchObject({ weight: 'warns', place: '/bid/margin' });
    expect(loss?.message).toBe(
      'At the cost that 80 in 100 runs do not exceed the bid loses 10.0 per cent of its price.',
    );
    expect(at(0.9).map(one => one.code)).not.toContain('bid/margin-gone');
  });
});

describe('the books', () => {
  it('find fringe benefits in the labour of public staff for the owner alone', () => {
    const { parts, summary } = basis();
    const { crews } = example().library.rateBook;
    const staff = new Set(crews.filter(crew => crew.employer === 'owner').map(crew => crew.id));
    const item = parts.items.find(one => !one.contract && one.crew !== undefined && staff.has(one.crew));
    const told = summary.lines.find(one => one.id === item?.id);
    const hired = crews.find(crew => crew.employer === 'contractor');
    if (item === undefined || told === undefined || hired === undefined)
      throw new Error('a line of public staff');
    const hints = (change: Partial<typeof item>) => lineHints(told, { ...item, ...change }, parts, undefined);
    expect(Object.keys(hints({}))).toEqual(['fringe']);
    expect([hints({ contract: true }), hints({ crew: hired.id })]).toEqual([{}, {}]);
  });

  it('map to the forms by their own rows where the document has none', () => {
    const { forms } = shippedBookRules();
    const { lines, parts } = basis();
    const row = { when: { stage: 'tow' as const }, to: '9' };
    const own = formMapping(lines, parts.items, forms, { 'SF-424C': [row] });
    const plain = formMapping(lines, parts.items, forms, {});
    expect(own['SF-424C']).toEqual([row, ...(plain['SF-424C'] ?? [])]);
    expect(own['SF-424A']).toEqual(forms.mappings['SF-424A']);
  });

  it('say nothing of past hulls and of a margin while nothing has a price', () => {
    const { estimate: _estimate, ...unpriced } = example();
    const none = historyView(unpriced);
    expect([none.cases, none.likeHulls]).toEqual([[], []]);
    expect(none.findings.map(one => one.code)).toEqual(['books/no-estimate']);
    expect(marginView(unpriced)).not.toHaveProperty('price');
  });
});
