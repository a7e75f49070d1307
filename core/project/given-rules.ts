import type { Figure } from '../base';
import { hullGivens } from './hull-rules';
import { rateGivens } from './rate-rules';
import { riskGivens } from './risk-rules';
import type { Project } from './schema';
import type { PlainUnit, Unit } from '../units';
import {
  benefitGivens,
  bidGivens,
  fundingGivens,
  quoteGivens,
  receivedBidGivens,
  recordGivens,
} from './funding-rules';

/** What a given of the document must be: its dimension (any unit of it), and the limits beyond which it is a mistake. */
export interface GivenRule {
  readonly title: string;
  readonly unit: Unit;
  /** Limits in `unit`, as decimal text. `above` excludes the limit itself. */
  readonly above?: string;
  readonly from?: string;
  readonly to: string;
  /** What to do about an amount beyond them, where that is not plain. */
  readonly remedy?: string;
}

/** One given of the document with its rule and place. */
export interface PlacedGiven {
  readonly place: string;
  readonly figure: Figure;
  readonly rule: GivenRule;
}

const positive = (title: string, unit: PlainUnit, to: string): GivenRule => ({ title, unit, above: '0', to });
const notNegative = (title: string, unit: PlainUnit, to: string): GivenRule => ({
  title,
  unit,
  from: '0',
  to,
});
const signed = (title: string, unit: PlainUnit, limit: string): GivenRule => ({
  title,
  unit,
  from: `-${limit}`,
  to: limit,
});

/** Limits are the largest ships and deepest sites that could be meant, so that beyond them a typing error is certain. */
const VESSEL = {
  length: positive('Length', 'm', '500'),
  beam: positive('Beam', 'm', '100'),
  depth: positive('Depth', 'm', '60'),
  draughtLight: positive('Light draught', 'm', '30'),
  draughtFull: positive('Full draught', 'm', '40'),
  blockCoefficient: { title: 'Block coefficient', unit: '1', from: '0.35', to: '0.95' },
  lightship: positive('Lightship', 't', '300000'),
  kg: positive('Height of the centre of gravity', 'm', '60'),
  rollPeriod: { title: 'Roll period in seconds', unit: '1', above: '0', to: '120' },
  observedList: signed('Observed list in degrees', '1', '45'),
} as const satisfies Partial<Record<keyof Project['vessel'], GivenRule>>;

const SITE = {
  waterDepth: positive('Water depth', 'm', '1000'),
  clearanceRequired: positive('Clearance required', 'm', '200'),
  bottomSlope: notNegative('Bottom slope', '1', '1'),
  towDistance: notNegative('Tow distance', 'm', '20000000'),
  towSpeed: positive('Tow speed', 'kn', '15'),
  towWind: notNegative('Wind of the tow', 'kn', '120'),
  lowestBridge: positive('Lowest bridge', 'm', '300'),
  shallowestChannel: positive('Shallowest channel', 'm', '200'),
  berthDepth: positive('Depth at the berth', 'm', '200'),
  waveHeight: positive('Wave height', 'm', '30'),
  wavePeriod: positive('Wave period in seconds', '1', '30'),
  yardDistance: notNegative('Distance to the disposal sites', 'm', '5000000'),
} as const satisfies Partial<Record<keyof Project['site'], GivenRule>>;

/** Every given of the document whose meaning is fixed, with its place and rule. */
export function placedGivens(project: Project): PlacedGiven[] {
  const { vessel, site, contingency, funding, bid, benefits } = project;
  return [
    ...fieldsOf('/vessel', vessel, VESSEL),
    ...fieldsOf('/site', site, SITE),
    ...vessel.tanks.flatMap(tank => [
      ...place(
        `/vessel/tanks/${tank.id}/capacity`,
        tank.capacity,
        positive(`Capacity of ${tank.title}`, 'm3', '200000'),
      ),
      ...place(
        `/vessel/tanks/${tank.id}/sounding`,
        tank.sounding,
        notNegative(`Sounding of ${tank.title}`, 'm3', '200000'),
      ),
    ]),
    ...vessel.weights.flatMap(weight => [
      ...place(
        `/vessel/weights/${weight.id}/mass`,
        weight.mass,
        signed(`Mass of ${weight.title}`, 't', '300000'),
      ),
      ...place(
        `/vessel/weights/${weight.id}/vcg`,
        weight.vcg,
        signed(`Height of ${weight.title}`, 'm', '80'),
      ),
      ...place(
        `/vessel/weights/${weight.id}/lcg`,
        weight.lcg,
        signed(`Length position of ${weight.title}`, 'm', '300'),
      ),
      ...place(
        `/vessel/weights/${weight.id}/tcg`,
        weight.tcg,
        signed(`Side position of ${weight.title}`, 'm', '60'),
      ),
    ]),
    ...hullGivens(project),
    ...place('/contingency/share', contingency.share, {
      title: 'Contingency',
      unit: '1',
      from: '0',
      to: '2',
    }),
    ...(funding ? fundingGivens(funding) : []),
    ...(bid ? bidGivens(bid) : []),
    ...(benefits ? benefitGivens(benefits) : []),
    ...rateGivens(project.rates),
    ...quoteGivens(project.quotes),
    ...receivedBidGivens(project.receivedBids ?? []),
    ...(project.record ? recordGivens(project.record) : []),
    ...(project.risk ? riskGivens(project.risk) : []),
  ];
}

function fieldsOf<K extends string>(
  base: string,
  holder: { readonly [P in NoInfer<K>]?: Figure | undefined },
  rules: Readonly<Record<K, GivenRule>>,
): PlacedGiven[] {
  return (Object.keys(rules) as K[]).flatMap(name => place(`${base}/${name}`, holder[name], rules[name]));
}

function place(at: string, figure: Figure | undefined, rule: GivenRule): PlacedGiven[] {
  return figure === undefined ? [] : [{ place: at, figure, rule }];
}
