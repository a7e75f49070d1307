import {
  difference,
  dollars,
  link,
  none,
  notApplying,
  priced,
  rounded,
  scaled,
  sum,
  totalWhere,
  unity,
  when,
  type Given,
  type Recipe,
  type Step,
  type Table,
} from '../sheet';
import type { Unit } from '../units';
import type { DisposalColumns } from './disposal-table';
import type { HireColumns } from './hire-table';
import { flagOf } from './condition-sets';
import type { EstimateInput } from './inputs';
import { perOwn, placeOf, type ItemFields } from './item-fields';
import type { CrewRates } from './labour-rates';
import { atPriceDate, type MoneyFigure, type PriceLevel } from './price-level';
import type { ScrapColumns } from './scrap-value';
import type { TimingColumns } from './timing-table';

/** What a quote puts in place of a line: how much of the line it covers, and its amount for it. */
export interface LineQuote {
  readonly covered: string;
  readonly amount: string;
  readonly source: string;
  readonly place: string;
}

/** The tables a line draws from. */
export interface LineSources {
  readonly timing: Table<TimingColumns>;
  readonly crewRates: Table<CrewRates>;
  readonly hires: Table<HireColumns>;
  readonly disposals: Table<DisposalColumns>;
  readonly scrap: Table<ScrapColumns>;
  readonly location: Step<'1'>;
  readonly level: PriceLevel;
  readonly quotes: ReadonlyMap<string, LineQuote>;
}

/** Direct cost of a line by element, each rounded to the cent once. */
export interface DirectColumns {
  readonly stage: Step<'text'>;
  readonly contract: Step<'1'>;
  readonly quantity: Step<'own'>;
  readonly hours: Step<'h'>;
  readonly labour: Step<'USD'>;
  readonly equipment: Step<'USD'>;
  readonly material: Step<'USD'>;
  readonly disposal: Step<'USD'>;
  readonly subcontract: Step<'USD'>;
  readonly fee: Step<'USD'>;
  /** The direct cost as worked out, before any quote. */
  readonly computed: Step<'USD'>;
  readonly direct: Step<'USD'>;
}

/**
 * The lines of the estimate, from quantity to direct cost: one form for all, only the givens differ. What a quote
 * covers of a line is taken out of its elements and the quoted amount is put into subcontract.
 */
export function directColumns(t: Recipe<ItemFields>, input: EstimateInput, from: LineSources): DirectColumns {
  const key = t.rowKey();
  const timing = from.timing.columns;
  const stage = t.key('stage', 'Stage (key)', row => row.item.stage, []);
  const contract = t.field('contract', 'Contract work', '1', row => flagOf(row.item.contract), []);
  const quantity = t.place('quantity', 'Quantity', link(key, timing.quantity));
  const hours = t.place('hours', 'Hours', link(key, timing.hours));
  const factor = (id: keyof TimingColumns['escalation'], title: string) =>
    t.place(`escalation-${id}`, `Escalation of ${title}`, link(key, timing.escalation[id]));
  const [labourFactor, general] = [factor('labour', 'labour'), factor('general', 'other prices')];
  const own = t.place(
    'kept',
    'Share worked out, not quoted',
    rounded(
      difference(
        unity('1'),
        t.field('covered', 'Share covered by a quote', '1', row => coveredShare(from.quotes, row), [
          from.quotes,
        ]),
      ),
      6,
    ),
  );
  const rate = t.place('crew-rate', 'Crew rate', crewRate(t, from));
  const computed = {
    labour: t.place(
      'labour-computed',
      'Labour worked out',
      dollars(priced(hours, rate, from.location, labourFactor)),
    ),
    equipment: t.place(
      'equipment-computed',
      'Equipment worked out',
      totalWhere(from.hires.columns.cost, from.hires.columns.item, key),
    ),
    material: t.place(
      'material-computed',
      'Material worked out',
      dollars(
        scaled(perUnit(t, input, from.level, quantity, 'materialPerUnit', undefined, 'material'), general),
      ),
    ),
    disposal: t.place('disposal-computed', 'Disposal worked out', disposalOf(t, key, from)),
    subcontract: t.place(
      'subcontract-computed',
      'Subcontract worked out',
      dollars(
        scaled(
          perUnit(t, input, from.level, quantity, 'subcontractPerUnit', 'subcontractFixed', 'subcontract'),
          from.location,
          general,
        ),
      ),
    ),
    fee: t.place(
      'fee-computed',
      'Fee worked out',
      dollars(scaled(perUnit(t, input, from.level, quantity, 'feePerUnit', 'feeFixed', 'fee'), general)),
    ),
  };
  const kept = (id: Exclude<keyof typeof computed, 'subcontract'>, title: string) =>
    t.place(id, title, dollars(scaled(computed[id], own)));
  const quote = t.field('quote', 'Quoted amount', 'USD', row => quotedAmount(from.quotes, row), [
    from.quotes,
  ]);
  const elements = {
    labour: kept('labour', 'Labour'),
    equipment: kept('equipment', 'Equipment'),
    material: kept('material', 'Material'),
    disposal: kept('disposal', 'Disposal'),
    subcontract: t.place(
      'subcontract',
      'Subcontract',
      sum(dollars(scaled(computed.subcontract, own)), quote),
    ),
    fee: kept('fee', 'Fee'),
  };
  const { labour, equipment, material, disposal, subcontract, fee } = elements;
  const all = t.place(
    'computed',
    'Direct cost worked out',
    sum(
      computed.labour,
      computed.equipment,
      computed.material,
      computed.disposal,
      computed.subcontract,
      computed.fee,
    ),
  );
  const direct = t.place(
    'direct',
    'Direct cost',
    sum(labour, equipment, material, disposal, subcontract, fee),
  );
  return { stage, contract, quantity, hours, ...elements, computed: all, direct };
}

/** The rate of the crew, absent when that is; of an item without a crew nothing. */
function crewRate(t: Recipe<ItemFields>, from: LineSources): Step<'USD/h'> {
  const found = t.place(
    'crew-rate-found',
    'Rate of the crew',
    link(
      t.key('crew', 'Crew (key)', row => row.item.crew ?? 'no-crew', []),
      from.crewRates.columns.rate,
    ),
  );
  const crewed = t.field('crewed', 'Has a crew', '1', row => flagOf(row.item.crew !== undefined), []);
  return when(crewed, found, none('USD/h'));
}

/** The haul's cost, absent when that is, less the scrap that the contractor keeps: a lower price, never an income as well. */
function disposalOf(t: Recipe<ItemFields>, key: Step<'text'>, from: LineSources): Step<'USD'> {
  const hauls = t.field('hauls', 'Is a haul', '1', row => flagOf(row.item.disposes !== undefined), []);
  const found = t.place('hauled-found', 'Haul', link(key, from.disposals.columns.cost));
  const hauled = t.place('hauled', 'Disposal of the haul', when(hauls, found, none('USD')));
  const credit = t.place(
    'scrap-credit',
    'Scrap kept by the contractor',
    totalWhere(from.scrap.columns.credit, from.scrap.columns.item, key),
  );
  return rounded(difference(hauled, credit), 2);
}

type PerUnit = 'materialPerUnit' | 'subcontractPerUnit' | 'feePerUnit';
type Fixed = 'subcontractFixed' | 'feeFixed';

/** Quantity × dollars for one, and a fixed part, at the price date. */
function perUnit(
  t: Recipe<ItemFields>,
  input: EstimateInput,
  level: PriceLevel,
  quantity: Step<'own'>,
  each: PerUnit,
  fixed: Fixed | undefined,
  key: string,
): Step<'USD'> {
  const read = (row: ItemFields, field: PerUnit | Fixed): MoneyFigure | undefined => {
    const figure = row.item[field];
    const place = placeOf(row, field);
    const override = input.overrides.get(place.replace('templates/', ''));
    if (override !== undefined)
      return { figure: override, place: `/rates/overrides/${place.replace('templates/', '')}` };
    return figure && { figure, place };
  };
  const rate = atPriceDate(t, level, input, `${key}-rate`, `${key} for one`, 'USD/own', row => ({
    money: read(row, each),
    unit: perOwn('USD', row),
  }));
  const times = priced(quantity, rate);
  if (fixed === undefined) return times;
  const lump = atPriceDate(
    t,
    level,
    input,
    `${key}-fixed`,
    `${key}, fixed part`,
    'USD',
    (row: ItemFields): { money: MoneyFigure | undefined; unit: Unit } => ({
      money: read(row, fixed),
      unit: 'USD',
    }),
  );
  return sum(times, lump);
}

function coveredShare(quotes: LineSources['quotes'], row: ItemFields): Given {
  const quote = quotes.get(row.item.id);
  if (quote === undefined) return notApplying('0', '1');
  return { value: quote.covered, unit: '1', basis: 'quoted', source: quote.source, place: quote.place };
}

function quotedAmount(quotes: LineSources['quotes'], row: ItemFields): Given {
  const quote = quotes.get(row.item.id);
  if (quote === undefined) return notApplying('0', 'USD');
  return { value: quote.amount, unit: 'USD', basis: 'quoted', source: quote.source, place: quote.place };
}
