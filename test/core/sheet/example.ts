import {
  Sheet,
  dollars,
  lookUp,
  maximum,
  over,
  priced,
  quoted,
  rounded,
  scaled,
  sum,
  total,
  wholeUp,
  type Given,
  type LookUp,
  type Recipe,
  type Step,
} from '../../../core/sheet';
import type { PlainUnit, Unit } from '../../../core/units';

/** A made-up line: what a recipe reads from a row. */
export interface Item {
  readonly id: string;
  readonly unit: PlainUnit;
  readonly quantity: string | undefined;
  readonly production: string;
  readonly tonnesPer: string;
  readonly capacity: string;
  readonly crewRate: string;
  readonly equipmentRate: string;
  readonly materialRate: string;
  readonly boxFee: string;
  readonly subcontract: string;
  readonly fee: string;
  readonly quote: string | undefined;
  readonly bearsOverhead: '0' | '1';
  readonly month: string;
}

export interface Site {
  readonly escalation: LookUp<'month', '1'>;
  readonly haul: Step<'1'>;
  readonly overhead: Step<'1'>;
  readonly profit: Step<'1'>;
}

export const give = (value: string | undefined, unit: Unit): Given => ({
  value,
  unit,
  basis: 'judgement',
  source: 'test',
  year: 2026,
});

/** The lines of a made-up estimate: from a quantity to money. */
export function exampleLines(sheet: Sheet, items: readonly Item[], site: Site, isLong = false) {
  return sheet.table(
    'lines',
    { heading: 'Lines', of: items, key: i => i.id, title: i => `Line ${i.id}`, own: i => i.unit },
    t => {
      const field = (key: string, title: string, value: (i: Item) => string | undefined) => ({
        key,
        title,
        value,
      });
      const money = (f: ReturnType<typeof field>) =>
        t.field(f.key, f.title, 'USD', i => give(f.value(i), 'USD'));
      const taken = t.field('taken', 'Quantity taken off', 'own', i => give(i.quantity, i.unit));
      const production = t.field('production', 'Production', 'own/h', i => give(i.production, `${i.unit}/h`));
      const tonnesPer = t.field('tonnesPer', 'Waste per unit', 't/own', i =>
        give(i.tonnesPer, `t/${i.unit}`),
      );
      const holds = t.field('holds', 'Container holds', 't/each', i => give(i.capacity, 't/each'));
      const crewRate = t.field('crewRate', 'Crew rate', 'USD/h', i => give(i.crewRate, 'USD/h'));
      const plantRate = t.field('plantRate', 'Equipment rate', 'USD/h', i => give(i.equipmentRate, 'USD/h'));
      const stuffRate = t.field('stuffRate', 'Material rate', 'USD/own', i =>
        give(i.materialRate, `USD/${i.unit}`),
      );
      const boxFee = t.field('boxFee', 'Fee a container', 'USD/each', i => give(i.boxFee, 'USD/each'));
      const bears = t.field('bears', 'Overhead applies', '1', i => give(i.bearsOverhead, '1'));
      const month = t.fromSchedule('month', 'Month of spending', 'month', i => ({
        value: i.month,
        unit: 'month',
      }));
      const given = money(field('subGiven', 'Subcontract given', i => i.subcontract));
      const feeGiven = money(field('feeGiven', 'Fee given', i => i.fee));
      const quote = money(field('quote', 'Quote', i => i.quote));

      const quantity = t.place('quantity', 'Quantity', rounded(taken, 1));
      const hours = t.place('hours', 'Hours', rounded(over(quantity, production), 1));
      const tonnes = t.place('tonnes', 'Waste', rounded(priced(quantity, tonnesPer), 2));
      const boxes = t.place('boxes', 'Containers', wholeUp(over(tonnes, holds), 4));
      const escalation = t.place(
        'escalation',
        'Escalation',
        lookUp(site.escalation, month, 0, 'hold the last'),
      );
      const labour = t.place('labour', 'Labour', dollars(priced(hours, crewRate, escalation)));
      const equipment = t.place('equipment', 'Equipment', dollars(priced(hours, plantRate, escalation)));
      const material = t.place('material', 'Material', dollars(priced(quantity, stuffRate, escalation)));
      const disposal = t.place('disposal', 'Disposal', dollars(priced(boxes, boxFee, site.haul, escalation)));
      const subcontract = t.place('subcontract', 'Subcontract', dollars(scaled(given, escalation)));
      const fee = t.place('fee', 'Fee', dollars(feeGiven));
      const more = isLong ? moreElements(t, { tonnes, boxes, escalation }) : [];
      const computed = t.place(
        'computed',
        'Direct, computed',
        sum(labour, equipment, material, disposal, ...more, subcontract, fee),
      );
      const direct = t.place('direct', 'Direct', quoted(quote, computed));
      const overhead = t.place(
        'overhead',
        'Overhead',
        dollars(scaled(sum(labour, equipment), bears, site.overhead)),
      );
      const profit = t.place('profit', 'Profit', dollars(scaled(sum(direct, overhead), site.profit)));
      const extra = isLong ? moreMarkUps(t, sum(material, equipment), direct) : [];
      const whole = t.place('total', 'Total', sum(direct, overhead, ...extra, profit));
      return {
        taken,
        month,
        quantity,
        hours,
        boxes,
        labour,
        disposal,
        direct,
        overhead,
        profit,
        total: whole,
      };
    },
  );
}

/** Freight with a minimum charge, and handling by the container: more to calculate in a line. */
function moreElements(
  t: Recipe<Item>,
  { tonnes, boxes, escalation }: { tonnes: Step<'t'>; boxes: Step<'each'>; escalation: Step<'1'> },
): Step<'USD'>[] {
  const freightRate = t.field('freightRate', 'Freight rate', 'USD/t', () => give('38.50', 'USD/t'));
  const handlingRate = t.field('handlingRate', 'Handling', 'USD/each', () => give('62.25', 'USD/each'));
  const least = t.field('least', 'Minimum freight', 'USD', () => give('250', 'USD'));
  const freight = dollars(priced(tonnes, freightRate, escalation));
  return [
    t.place('freight', 'Freight', maximum(freight, least)),
    t.place('handling', 'Handling', dollars(priced(boxes, handlingRate, escalation))),
  ];
}

/** Sales tax and insurance. */
function moreMarkUps(t: Recipe<Item>, taxed: Step<'USD'>, insured: Step<'USD'>): Step<'USD'>[] {
  const tax = t.field('taxShare', 'Tax share', '1', () => give('0.065', '1'));
  const insurance = t.field('insuranceShare', 'Insurance share', '1', () => give('0.011', '1'));
  return [
    t.place('tax', 'Tax', dollars(scaled(taxed, tax))),
    t.place('insurance', 'Insurance', dollars(scaled(insured, insurance))),
  ];
}

/** A whole example sheet of these lines, of about 22 or, long, 33 steps that vary with the quantity. */
export function exampleSheet(items: readonly Item[], isLong = false) {
  const sheet = new Sheet('money');
  const site = sheet.block('site', 'Site');
  const haul = site.given('haul', 'Haul factor', '1', give('1.15', '1'));
  const overhead = site.given('overhead', 'Overhead', '1', give('0.12', '1'));
  const profit = site.given('profit', 'Profit', '1', give('0.085', '1'));
  const entries = Array.from({ length: 36 }, (_, i) => ({
    key: String(24000 + i),
    title: `month ${i}`,
    given: give((1 + i * 0.0025).toFixed(4), '1'),
  }));
  const escalation = sheet.lookUpTable('escalation', {
    title: 'Escalation',
    keyUnit: 'month',
    unit: '1',
    entries,
  });
  const lines = exampleLines(sheet, items, { escalation, haul, overhead, profit }, isLong);
  const totals = sheet.block('totals', 'Totals');
  const grand = totals.place('grand', 'Total', total(lines.columns.total));
  return { sheet, lines, grand, site: { haul, overhead, profit } };
}

/** Items that differ, without randomness. */
export function exampleItems(count: number): Item[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `line-${i + 1}`,
    unit: i % 2 === 0 ? 'm2' : 'm',
    quantity: (100 + i * 7.35).toFixed(2),
    production: (2 + (i % 5) * 0.5).toFixed(1),
    tonnesPer: (0.01 + (i % 7) * 0.004).toFixed(3),
    capacity: '9.5',
    crewRate: (410 + i).toFixed(2),
    equipmentRate: '85.50',
    materialRate: (3 + (i % 3)).toFixed(2),
    boxFee: '1150',
    subcontract: i % 4 === 0 ? '12500' : '0',
    fee: i % 9 === 0 ? '350' : '0',
    quote: i % 11 === 5 ? '25000' : undefined,
    bearsOverhead: i % 3 === 0 ? '0' : '1',
    month: String(24003 + (i % 20)),
  }));
}
