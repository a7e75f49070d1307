import { known } from '../base';
import {
  bareGiven,
  dollars,
  link,
  over,
  priced,
  rounded,
  scaled,
  sum,
  unity,
  when,
  type Recipe,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import { isPlainUnit, isUnit, unitParts, type PlainUnit, type Unit } from '../units';
import type { Equipment } from '../rate-book';
import { flagOf } from './condition-sets';
import { rateAt, type EstimateInput } from './inputs';
import { placeOf, type ItemFields } from './item-fields';
import { atPriceDate, type PriceLevel } from './price-level';
import type { TimingColumns } from './timing-table';

/** One piece of equipment on hire for one item. */
interface Hire {
  readonly row: ItemFields;
  readonly hire: ItemFields['item']['equipment'][number];
  readonly equipment: Equipment;
  /** Brought to the site once for the whole project: the first hire of it bears the mobilisation. */
  readonly first: boolean;
}

export interface HireColumns {
  readonly item: Step<'text'>;
  readonly cost: Step<'USD'>;
}

/** Equipment by item: so many, for its days, hours or quantity, at the rate of the price date, and brought once. */
export function hireTable(
  sheet: Sheet,
  input: EstimateInput,
  rows: readonly ItemFields[],
  timing: Table<TimingColumns>,
  level: PriceLevel,
  location: Step<'1'>,
): Table<HireColumns> {
  const of = hires(rows, input);
  return sheet.table(
    'hires',
    {
      heading: 'Equipment',
      of,
      key: ({ row, hire }) => `${row.item.id}.${hire.equipment}`,
      title: ({ row, equipment }) => `${row.item.title}: ${equipment.title}`,
      own: ({ equipment }) => rateUnit(equipment)[1],
      place: ({ row }) => placeOf(row, 'equipment'),
    },
    t => {
      const item = t.key('item', 'Work item (key)', ({ row }) => row.item.id, []);
      const amount = t.place('amount', 'For', amountOf(t, item, timing));
      const rate = atPriceDate(t, level, input, 'rate', 'Rate', 'USD/own', ({ equipment }) => ({
        money: rateAt(input, `equipment/${equipment.id}/rate`, equipment.rate),
        unit: rateUnit(equipment)[0],
      }));
      const mobilisation = atPriceDate(
        t,
        level,
        input,
        'mobilisation',
        'Mobilisation',
        'USD',
        ({ equipment, first }) => ({
          money:
            first && equipment.mobilisation !== undefined
              ? rateAt(input, `equipment/${equipment.id}/mobilisation`, equipment.mobilisation)
              : undefined,
          unit: 'USD',
        }),
      );
      const fuel = t.field(
        'fuel',
        'Moves with fuel',
        '1',
        ({ equipment }) => flagOf(equipment.index === 'fuel'),
        [],
      );
      const general = t.place(
        'escalation-general',
        'Escalation of other prices',
        link(item, timing.columns.escalation.general),
      );
      const escalation = when(fuel, link(item, timing.columns.escalation.fuel), general);
      const hire = t.place('hire', 'Hire', sum(priced(amount, rate), mobilisation));
      return {
        item,
        cost: t.place(
          'cost',
          'Cost',
          dollars(scaled(hire, location, t.place('escalation', 'Escalation', escalation))),
        ),
      };
    },
  );
}

function hires(rows: readonly ItemFields[], input: EstimateInput): Hire[] {
  const byId = new Map(input.library.rateBook.equipment.map(equipment => [equipment.id, equipment]));
  const brought = new Set<string>();
  return rows.flatMap(row =>
    row.item.equipment.map((hire): Hire => {
      const equipment = known(byId, hire.equipment);
      const first = !brought.has(equipment.id);
      brought.add(equipment.id);
      return hireOf(row, hire, equipment, first);
    }),
  );
}

const HIRES = new WeakMap<ItemFields, Hire[]>();

/** A hire; the same object as before when all it names is. */
function hireOf(row: ItemFields, hire: Hire['hire'], equipment: Equipment, first: boolean): Hire {
  const known = HIRES.get(row) ?? [];
  const same = known.find(one => one.hire === hire && one.equipment === equipment && one.first === first);
  if (same !== undefined) return same;
  const made = { row, hire, equipment, first };
  HIRES.set(row, [...known, made]);
  return made;
}

/** The unit of a rate, and what one of it is: `USD/work-day`, `work-day`. */
function rateUnit(equipment: Equipment): readonly [Unit, PlainUnit] {
  const unit = isUnit(equipment.rate.unit) ? equipment.rate.unit : 'USD/each';
  const bottom = unitParts(unit)[1];
  return [unit, bottom !== undefined && isPlainUnit(bottom) ? bottom : 'each'];
}

/** How many of the rate's unit are hired: count × (days × crews, hours, quantity, or one). */
function amountOf(t: Recipe<Hire>, item: Step<'text'>, timing: Table<TimingColumns>): Step<'own'> {
  const columns = timing.columns;
  const count = t.field(
    'count',
    'How many',
    '1',
    ({ hire, row }) => bareGiven(hire.count, placeOf(row, 'equipment')),
    [],
  );
  const by = (kind: Hire['hire']['by'], title: string) =>
    t.field(`by-${kind}`, title, '1', ({ hire }) => flagOf(hire.by === kind), []);
  const flags = {
    day: by('work-day', 'By the day'),
    hour: by('hour', 'By the hour'),
    unit: by('unit', 'By the quantity'),
    lump: by('lump', 'Once'),
  };
  const days = t.place('days', 'Days', link(item, columns.days));
  const hours = t.place('hours', 'Hours', rounded(over(link(item, columns.hours), unity('h')), 1));
  const number = t.place('number', 'Quantity', link(item, columns.number));
  const times = sum(
    scaled(days, flags.day),
    scaled(hours, flags.hour),
    scaled(number, flags.unit),
    flags.lump,
  );
  return scaled(unity('own'), count, t.place('times', 'Times', times));
}
