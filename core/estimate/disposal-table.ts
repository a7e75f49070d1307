import { BugError } from '../base';
import type { WasteStream } from '../rate-book';
import {
  atLeast,
  dollars,
  givenFrom,
  link,
  maximum,
  none,
  notApplying,
  over,
  priced,
  rounded,
  scaled,
  sum,
  unity,
  when,
  wholeUp,
  type Given,
  type Recipe,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import { categoryCost, type GenerationPlan, type GenerationTables } from './generation-table';
import { rateAt, type EstimateInput } from './inputs';
import type { ItemFields } from './item-fields';
import { atPriceDate, type PriceLevel } from './price-level';
import type { TimingColumns } from './timing-table';

/** A haul with the stream it disposes of and the one whose prices apply to it. */
interface Haul {
  readonly row: ItemFields;
  readonly disposes: string;
  readonly stream: WasteStream;
}

export interface DisposalColumns {
  readonly stream: Step<'text'>;
  readonly tonnes: Step<'t'>;
  readonly containers: Step<'each'>;
  readonly cost: Step<'USD'>;
}

/**
 * Disposal by haul: tonnes at the gate price, whole containers by weight or volume (whichever fills first) with their
 * fees and haul by road, profile once, and the minimum charge; of hazardous waste also what the generator category asks.
 */
export function disposalTable(
  sheet: Sheet,
  input: EstimateInput,
  rows: readonly ItemFields[],
  timing: Table<TimingColumns>,
  level: PriceLevel,
  road: Step<'m'>,
  category?: { readonly plan: GenerationPlan; readonly tables: GenerationTables },
): Table<DisposalColumns> {
  const of = hauls(rows, input);
  return sheet.table(
    'disposals',
    {
      heading: 'Disposal',
      of,
      key: ({ row }) => row.item.id,
      title: ({ row }) => row.item.title,
      own: () => 't',
      place: ({ row }) => `/items/${row.item.id}`,
    },
    t => {
      const key = t.rowKey();
      const tonnes = t.place('tonnes', 'Tonnes', scaled(unity('t'), link(key, timing.columns.number)));
      const containers = t.place('containers', 'Containers', containersOf(t, tonnes, category?.plan));
      const money = <U extends 'USD' | 'USD/t' | 'USD/each' | 'USD/m'>(
        id: keyof WasteStream & MoneyField,
        column: string,
        title: string,
        unit: U,
      ) =>
        atPriceDate(t, level, input, column, title, unit, ({ stream }) => ({
          money: moneyOf(input, stream, id),
          unit,
        }));
      const gate = priced(tonnes, money('unitPrice', 'gate', 'Gate price', 'USD/t'));
      const fee = t.place(
        'container-cost',
        'Cost of one container',
        sum(
          money('containerFee', 'container-fee', 'Container', 'USD/each'),
          money('haulPerContainer', 'haul', 'Haul of one load', 'USD/each'),
          money('manifestPerContainer', 'manifest', 'Manifest', 'USD/each'),
          scaled(perEach(t, money('haulPerMetre', 'haul-road', 'Haul by road', 'USD/m'), road)),
        ),
      );
      const minimum = money('minimumCharge', 'minimum', 'Minimum charge', 'USD');
      const profile = money('profileFee', 'profile', 'Profile', 'USD');
      const charged = t.place('charged', 'Charged', sum(gate, priced(containers, fee)));
      const some = t.place(
        'some',
        'Something to haul',
        atLeast(tonnes, t.field('least', 'Least tonnage', 't', leastTonnes, []), 4),
      );
      const hauled = t.key('hauled', 'Stream hauled (key)', ({ disposes }) => disposes);
      const duties = t.place(
        'category',
        'Pick-ups and duties of the generator category',
        categoryCost(category?.tables, hauled),
      );
      const cost = when(some, sum(maximum(rounded(charged, 4), minimum), profile, duties), none('USD'));
      const escalation = t.place(
        'escalation',
        'Escalation of disposal',
        link(key, timing.columns.escalation.disposal),
      );
      const stream = t.key('stream', 'Stream (key)', row => row.stream.id);
      return {
        stream,
        tonnes,
        containers,
        cost: t.place(
          'cost',
          'Cost',
          dollars(scaled(t.place('cost-at-price-date', 'Cost at the price date', cost), escalation)),
        ),
      };
    },
  );
}

type MoneyField =
  | 'unitPrice'
  | 'containerFee'
  | 'haulPerContainer'
  | 'haulPerMetre'
  | 'minimumCharge'
  | 'profileFee'
  | 'manifestPerContainer';

function hauls(rows: readonly ItemFields[], input: EstimateInput): Haul[] {
  return rows.flatMap(row => {
    const { disposes } = row.item;
    if (disposes === undefined) return [];
    const id = row.item.pricedAs ?? disposes;
    const stream = input.library.rateBook.streams.find(candidate => candidate.id === id);
    if (stream === undefined)
      throw new BugError(`${row.item.id} is priced as the stream ${id}, which does not exist`);
    return [haulOf(row, disposes, stream)];
  });
}

const HAULS = new WeakMap<ItemFields, Haul>();

/** A haul; the same object as before when item and stream are. */
function haulOf(row: ItemFields, disposes: string, stream: WasteStream): Haul {
  const known = HAULS.get(row);
  if (known?.stream === stream) return known;
  const made = { row, disposes, stream };
  HAULS.set(row, made);
  return made;
}

function moneyOf(input: EstimateInput, stream: WasteStream, id: MoneyField) {
  const figure = stream[id];
  return figure && rateAt(input, `streams/${stream.id}/${id}`, figure);
}

/** Whole containers: by weight or by volume, whichever fills first; one at least for each pick-up. */
function containersOf(t: Recipe<Haul>, tonnes: Step<'t'>, plan: GenerationPlan | undefined): Step<'each'> {
  const place = ({ stream }: Haul, field: string) => `templates/rates/streams/${stream.id}/${field}`;
  const holds = t.field(
    'holds-tonnes',
    'A container holds',
    't/each',
    row => givenFrom(row.stream.containerTonnes, 't/each', place(row, 'containerTonnes')),
    [],
  );
  const volume = t.field(
    'holds-volume',
    'A container holds by volume',
    'm3/each',
    row =>
      row.stream.containerVolume === undefined
        ? ANY_VOLUME
        : givenFrom(row.stream.containerVolume, 'm3/each', place(row, 'containerVolume')),
    [],
  );
  const density = t.field(
    'density',
    'Density in the container',
    't/m3',
    row =>
      row.stream.densityTonnesPerCubicMetre === undefined
        ? ONE_DENSITY
        : givenFrom(row.stream.densityTonnesPerCubicMetre, 't/m3', place(row, 'densityTonnesPerCubicMetre')),
    [],
  );
  const cubic = t.place('cubic-metres', 'Cubic metres', rounded(over(tonnes, density), 4));
  const loads = t.fromSchedule('pick-ups', 'Pick-ups by the generator category', 'each', row => ({
    value: String(pickUpsOf(plan, row)),
    unit: 'each',
  }));
  return maximum(wholeUp(over(tonnes, holds), 4), wholeUp(over(cubic, volume), 4), loads);
}

/** Pick-ups that the stream goes with. */
function pickUpsOf(plan: GenerationPlan | undefined, { disposes }: Haul): number {
  if (plan === undefined) return 0;
  return plan.months
    .filter(month => month.pickedUp.includes(disposes))
    .reduce((count, month) => count + month.pickUps, 0);
}

const ANY_VOLUME: Given = {
  value: '1000000',
  unit: 'm3/each',
  basis: 'common practice',
  source: 'does not apply here',
  neutral: true,
};
const ONE_DENSITY: Given = {
  value: '1',
  unit: 't/m3',
  basis: 'common practice',
  source: 'does not apply here',
  neutral: true,
};
const leastTonnes = (): Given => ({
  value: '0.0001',
  unit: 't',
  basis: 'common practice',
  source: 'does not apply here',
  neutral: true,
});

/** Dollars a metre of road over the distance to the disposal sites, for each container. */
function perEach(t: Recipe<Haul>, rate: Step<'USD/m'>, road: Step<'m'>): Step<'USD/each'> {
  const container = t.field('one-container', 'One container', 'each', () => notApplying('1', 'each'), []);
  return t.place('road-cost', 'Road of one load', rounded(over(priced(road, rate), container), 2));
}
