import { describe, expect, it } from 'vitest';
import { summarise } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const base = demoProject();
const figure = (value: string, unit: string) => ({
  ...{ value, unit, year: 2026 },
  ...{ basis: 'judgement' as const, source: 'A test' },
});
const withRates = (rates: Partial<Project['rates']>): Project => ({
  ...base,
  rates: { ...base.rates, ...rates },
});

/** The lines without a direct cost, and the places the findings name. */
function told(project: Project) {
  const evaluation = evaluated(project);
  const { items, ...parts } = estimated(evaluation);
  const { total } = summarise({ items, ...parts });
  const { result, lines } = parts.money;
  return {
    absent: new Set(
      items.flatMap(({ id }) => (result.money(lines.columns.direct, id) === undefined ? [id] : [])),
    ),
    ofCrew: (trade: string) => {
      const { crews } = parts.input.library.rateBook;
      const crew = new Set(
        crews.filter(one => one.members.some(member => member.trade === trade)).map(one => one.id),
      );
      return items.filter(item => item.crew !== undefined && crew.has(item.crew)).map(item => item.id);
    },
    total,
    places: evaluation.findings.filter(one => one.code === 'sheet/not-given').map(one => one.place),
  };
}

describe('a rate that cannot be read', () => {
  it('of a wage leaves out the work of its crews and the total, and is told where it stands', () => {
    const { absent, ofCrew, total, places } = told(
      withRates({ wages: [{ trade: 'labourer', figure: figure('20', 'm') }] }),
    );
    const lost = ofCrew('labourer');
    expect(lost.length).toBeGreaterThan(10);
    expect(lost.filter(id => !absent.has(id))).toEqual([]);
    expect([total, places.includes('/rates/overrides/trades/labourer/wage')]).toEqual([undefined, true]);
  });

  it('of a gate price leaves out its hauls and the total, and no other line', () => {
    const stream = 'oily-water';
    const { absent, total, places } = told(
      withRates({ overrides: [{ at: `streams/${stream}/unitPrice`, figure: figure('20', 'm') }] }),
    );
    expect([...absent]).toEqual([`haul-${stream}`]);
    expect([total, places]).toEqual([undefined, [`/rates/overrides/streams/${stream}/unitPrice`]]);
  });

  it('changes nothing of a project whose rates are all there: no line is absent', () => {
    const { absent, total, places } = told(base);
    expect([absent.size, total !== undefined, places]).toEqual([0, true, []]);
  });
});

describe('a quantity of the planner in a unit that does not measure it', () => {
  it('leaves out its line, with a finding: the quantity worked out does not stand in silently', () => {
    const item = 'joinery-removal';
    const { absent, places } = told({ ...base, items: [{ item, note: '', quantity: figure('2', 'USD') }] });
    expect([absent.has(item), places.includes(`/items/${item}/quantity`)]).toEqual([true, true]);
  });

  it('in its own unit takes the place of the quantity worked out', () => {
    const item = 'joinery-removal';
    const own = estimated(evaluated(base)).work.rows.find(row => row.item.id === item)?.own ?? '';
    const { work } = estimated(
      evaluated({ ...base, items: [{ item, note: '', quantity: figure('2.5', own) }] }),
    );
    expect(work.result.number(work.items.columns.quantity, item)).toBe(2.5);
  });

  it('stays a cell of the workbook that a person may fill: where it is empty the quantity worked out stands', () => {
    const { work } = estimated(evaluated(base));
    const worked = work.sheet.tables.find(table => table.id === 'worked');
    const quantity = worked?.placed.find(step => step.home?.key === 'quantity');
    expect([quantity?.kind.operation, quantity?.inputs[0]?.home?.key]).toEqual([
      'first present',
      'quantity-stated',
    ]);
  });
});
