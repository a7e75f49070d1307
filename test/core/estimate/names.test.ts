import { describe, expect, it } from 'vitest';
import { BASES } from '../../../core/base';
import type { Given, Sheet } from '../../../core/sheet';
import { figure, indices, item, priced, small, worked } from './small';

/** An estimate with a row in every table. */
function sheets() {
  const perUnit = (value: string, unit: string) => figure(value, unit);
  const work = item('cut', {
    ...{ hoursPerUnit: perUnit('0.5', 'h/m2'), crew: 'gang', conditions: ['hot'] },
    ...{ crewsAtOnce: figure('2', '1'), setupHours: figure('1', 'h'), hoursPerCrew: figure('80', 'h') },
    equipment: [{ equipment: 'crane', count: figure('1', '1'), by: 'work-day' }],
    wastes: [
      { stream: 'sludge', perUnit: perUnit('0.05', 't/m2') },
      { stream: 'debris', perUnit: perUnit('0.01', 't/m2') },
    ],
    scrap: { grade: 'steel', perUnit: perUnit('0.25', 't/m2') },
    removes: { perUnit: perUnit('0.1', 't/m2'), heightOverDepth: figure('0.9', '1') },
  });
  const fee = item('permit', { stage: 'permits', feeFixed: figure('1000', 'USD') });
  const hauls = [item('haul-sludge', { disposes: 'sludge' }), item('haul-debris', { disposes: 'debris' })];
  const { library } = small();
  const input = small({ library: { ...library, indices: indices(6) } });
  const all = [work, fee, ...hauls];
  const { sheet } = worked(all, input).work;
  const { money } = priced(all, {
    input,
    plan: {
      months: [{ month: '2027-01', category: 'large', pickUps: 1, pickedUp: ['sludge'] }],
      shares: [
        { ...{ item: 'cut', stream: 'sludge', month: '2027-01' }, share: 1, counted: 1, acute: false },
      ],
      limits: { verySmall: figure('100', 'kg'), large: figure('1', 't'), acute: figure('1', 'kg') },
      fees: {
        ...{ verySmall: figure('100', 'USD'), small: figure('1000', 'USD'), large: figure('3000', 'USD') },
        pickUp: figure('200', 'USD/each'),
      },
    },
  });
  return { work: sheet, money: money.sheet, sheets: [sheet, money.sheet] };
}

const titles = (sheet: Sheet, id: string) =>
  sheet.tables.find(table => table.id === id)?.scope.rows.map(row => row.title);
const stepsOf = (sheet: Sheet) => [
  ...sheet.tables.flatMap(table => table.placed),
  ...sheet.blocks.flatMap(block => block.entries()),
];

describe('what stands in the sheets of an estimate, as the workbook and every derivation show it', () => {
  it('has rows that are called after what they are', () => {
    const { work, money } = sheets();
    const people = ['members', 'crews', 'drivers', 'wastes', 'condition-sets', 'streams'];
    expect(people.map(id => titles(work, id))).toEqual([
      ['Gang: Hand', 'Gang: Diver', 'Staff: Hand'],
      ['Gang', 'Staff'],
      ['deck', 'coats'],
      ['The cut: sludge', 'The cut: debris'],
      ['hot', 'usual conditions'],
      ['Debris', 'Sludge'],
    ]);
    const named = Object.fromEntries(
      ['trades', 'member-rates', 'crew-rates', 'scrap-prices', 'scrap-value', 'hires', 'disposals'].map(
        id => [id, titles(money, id)],
      ),
    );
    expect(named).toEqual({
      trades: ['Hand', 'Diver'],
      'member-rates': ['Gang: hand', 'Gang: diver', 'Staff: hand'],
      'crew-rates': ['Gang', 'Staff'],
      'scrap-prices': ['Steel'],
      'scrap-value': ['The cut'],
      hires: ['The cut: Crane'],
      disposals: ['The haul-sludge', 'The haul-debris'],
    });
    expect(titles(money, 'lines')).toEqual(['The cut', 'The permit', 'The haul-sludge', 'The haul-debris']);
    expect(titles(money, 'years')?.slice(0, 2)).toEqual(['Prices of 1985', 'Prices of 1986']);
    expect(titles(money, 'generator-months')).toEqual(['2027-01: large generator']);
    expect(titles(money, 'generation')).toEqual(['cut: sludge in 2027-01']);
    expect(titles(money, 'stages')?.slice(0, 4)).toEqual([
      ...['Title and assessment', 'Permits', 'Procurement', 'Yard'],
    ]);
    expect(money.lookUps.map(table => table.entries.map(entry => entry.title))).toEqual([
      ['2024', '2025, mean of 6 months'],
    ]);
  });

  it('has columns and single values under names of their own, none twice in a table', () => {
    for (const { tables, blocks } of sheets().sheets) {
      for (const table of tables) {
        const named = table.placed.map(step => step.home?.title ?? '');
        for (const title of named) expect(title, table.id).toMatch(/^\S.*\S$/);
        expect(new Set(table.placed.map(step => step.home?.key)).size, table.id).toBe(named.length);
      }
      for (const block of blocks)
        for (const step of block.entries()) expect(step.home?.title, block.id).toMatch(/^\S.*\S$/);
    }
  });

  it('says of the crews at most that the planner set where the planner set them', () => {
    const crews = { crewsAtOnce: figure('2', '1') };
    const ownOf = (input = small()) =>
      worked([item('cut', { crew: 'gang', hoursPerUnit: figure('1', 'h/m2'), ...crews })], input)
        .work.sheet.tables.flatMap(table => table.placed)
        .filter(step => step.home?.key === 'crews-at-most')
        .flatMap(step => (step.kind.givens ?? []).map(given => given?.place));
    expect(ownOf()).toEqual(['templates/work/clean-up/cut/crewsAtOnce']);
    const own = { item: 'cut', note: '', crewsAtOnce: figure('3', '1') };
    expect(ownOf(small({ adjustments: new Map([['cut', own]]) }))).toEqual(['/items/cut/crewsAtOnce']);
  });

  it('says of every given number what it rests on, where it comes from and where it is held', () => {
    const bases: readonly string[] = [...BASES, 'schedule'];
    const givens = sheets().sheets.flatMap(sheet =>
      stepsOf(sheet).flatMap(step =>
        (step.kind.givens ?? []).filter((one): one is Given => one !== undefined),
      ),
    );
    expect(givens.length).toBeGreaterThan(200);
    for (const { basis, source, place } of givens) {
      expect(bases).toContain(basis);
      expect(source.length).toBeGreaterThan(2);
      if (place !== undefined) expect(place).toMatch(/^(templates)?\/[^/]+(\/[^/]+)*$/);
    }
    const places = new Set(givens.map(given => given.place));
    for (const place of [
      ...['trades/hand/wage', 'burdens/publicStaff', 'crews/gang/hand', 'conditions/hot/factor'],
      ...['scrap/steel/price', 'scrap/steel/shareReceived', 'scrap/steel/freightAndProcessing'],
      ...['streams/sludge/unitPrice', 'streams/sludge/containerTonnes', 'streams/sludge/containerVolume'],
      ...['equipment/crane/rate', 'equipment/crane/mobilisation', 'markUps/bond/share', 'locationFactor'],
    ])
      expect(places).toContain(`templates/rates/${place}`);
    for (const field of [
      ...['hoursPerUnit', 'setupHours', 'crewsAtOnce', 'hoursPerCrew'],
      ...['wastes', 'equipment', 'scrap', 'removes'],
    ])
      expect(places).toContain(`templates/work/clean-up/cut/${field}`);
    expect(places).toContain('templates/work/permits/permit/feeFixed');
    expect(places).toContain('templates/rates/streams/sludge/densityTonnesPerCubicMetre');
    for (const place of places)
      if (place?.startsWith('templates/rates/streams/sludge/'))
        expect(
          Object.keys(small().library.rateBook.streams.find(({ id }) => id === 'sludge') ?? {}),
        ).toContain(place.split('/').at(-1));
  });
});
