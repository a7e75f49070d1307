import {
  countKnown,
  givenFrom,
  maximum,
  over,
  power,
  priced,
  rounded,
  scaled,
  total,
  unity,
  wholeUp,
  type Block,
  type Sheet,
  type Step,
} from '../sheet';
import { ASSUMPTIONS } from './assumptions';
import type { Geometry } from './geometry';
import { MEASURES } from './measures';
import type { ShipGivens } from './take-off';

interface TankMeasures extends OilTanks {
  readonly 'ballast-capacity': Step<'m3'>;
  readonly 'compartment-count': Step<'each'>;
}

/**
 * Tanks and compartments: from the tank table where there is one, else from the hull type.
 * Inner area of a tank = 7.7 × capacity^(2/3), stiffeners included.
 */
export function tankMeasures(sheet: Sheet, block: Block, ship: ShipGivens, shape: Geometry): TankMeasures {
  const of = <U extends '1' | 'each/m'>(key: string, title: string, unit: U): Step<U> => {
    const figure = ship.type.quantities[key];
    return block.given(
      `type-${key}`,
      `${title} of the hull type`,
      unit,
      figure && givenFrom(figure, unit, `templates/hull-types/${ship.type.id}/${key}`),
    );
  };
  const surface = block.given(
    'tank-surface',
    'Inner surface over capacity to the power 2/3',
    '1',
    givenFrom(ASSUMPTIONS.tankSurface, '1'),
  );
  const exponent = block.given(
    'two-thirds',
    'Power of similar bodies',
    '1',
    givenFrom(ASSUMPTIONS.twoThirds, '1'),
  );
  const oily = ship.tanks.filter(tank => tank.oily);
  const tanks =
    oily.length > 0
      ? listed(sheet, block, { ...ship, tanks: oily }, surface, exponent)
      : estimated(
          block,
          shape,
          of('oil-tank-capacity-share', 'Oil tanks over hull volume', '1'),
          of('oil-tank-count-per-length', 'Oil tanks a metre', 'each/m'),
          surface,
          exponent,
        );
  const compartments = rounded(
    maximum(
      priced(shape.length, of('compartment-count-per-length', 'Compartments a metre', 'each/m')),
      unity('each'),
    ),
    0,
  );
  return {
    ...tanks,
    'ballast-capacity': block.place(
      'ballast-capacity',
      MEASURES['ballast-capacity'].title,
      rounded(
        scaled(shape['hull-volume'], of('ballast-capacity-share', 'Ballast tanks over hull volume', '1')),
        0,
      ),
    ),
    'compartment-count': block.place('compartment-count', MEASURES['compartment-count'].title, compartments),
  };
}

interface OilTanks {
  readonly 'tank-capacity': Step<'m3'>;
  readonly 'tank-count': Step<'each'>;
  readonly 'tank-area': Step<'m2'>;
}

/** Surface of one tank of a capacity in cubic metres: factor × capacity^(2/3), in square metres. */
function innerArea(capacity: Step<'m3'>, surface: Step<'1'>, exponent: Step<'1'>): Step<'m2'> {
  const similar = rounded(power(rounded(over(capacity, unity('m3')), 6), exponent), 6);
  return scaled(unity('m2'), similar, surface);
}

function listed(
  sheet: Sheet,
  block: Block,
  ship: ShipGivens,
  surface: Step<'1'>,
  exponent: Step<'1'>,
): OilTanks {
  const table = sheet.table(
    'tanks',
    {
      heading: 'Tank',
      of: ship.tanks,
      key: tank => tank.id,
      title: tank => tank.title,
      place: tank => tank.place,
    },
    t => {
      const capacity = t.field('capacity', 'Capacity', 'm3', tank => tank.capacity);
      const area = t.place('area', 'Inner area', rounded(innerArea(capacity, surface, exponent), 1));
      return { capacity, area };
    },
  );
  const { capacity, area } = table.columns;
  return {
    'tank-capacity': block.place('tank-capacity', MEASURES['tank-capacity'].title, total(capacity)),
    'tank-count': block.place('tank-count', MEASURES['tank-count'].title, countKnown(capacity)),
    'tank-area': block.place('tank-area', MEASURES['tank-area'].title, total(area)),
  };
}

function estimated(
  block: Block,
  shape: Geometry,
  share: Step<'1'>,
  perMetre: Step<'each/m'>,
  surface: Step<'1'>,
  exponent: Step<'1'>,
): OilTanks {
  const capacity = block.place(
    'tank-capacity',
    MEASURES['tank-capacity'].title,
    rounded(scaled(shape['hull-volume'], share), 1),
  );
  const count = block.place(
    'tank-count',
    MEASURES['tank-count'].title,
    wholeUp(priced(shape.length, perMetre), 4),
  );
  const each = block.place(
    'tank-size',
    'Capacity of one tank',
    rounded(scaled(capacity, rounded(over(unity('each'), count), 9)), 3),
  );
  const one = block.place(
    'tank-inner-area',
    'Inner area of one tank',
    rounded(innerArea(each, surface, exponent), 2),
  );
  const number = block.place('tank-number', 'Oil tanks as a number', rounded(over(count, unity('each')), 0));
  return {
    'tank-capacity': capacity,
    'tank-count': count,
    'tank-area': block.place('tank-area', MEASURES['tank-area'].title, rounded(scaled(one, number), 1)),
  };
}
