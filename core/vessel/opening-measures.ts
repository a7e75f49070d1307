import { givenFrom, priced, rounded, type Block, type Given, type SheetUnit, type Step } from '../sheet';
import type { Figure } from '../base';
import { ASSUMPTIONS } from './assumptions';
import { MEASURES } from './measures';
import type { ShipGivens } from './take-off';

export type OpeningMeasure = 'opening-count' | 'opening-cut-length' | 'vent-count' | 'inner-opening-count';

/** Openings: as sized for an even sinking where the sizing was run, else so many for each compartment. */
export function openingMeasures(
  block: Block,
  ship: ShipGivens,
  compartments: Step<'each'>,
): Record<OpeningMeasure | 'opening-thickness', Step<SheetUnit>> {
  const each = (
    key: 'opening-count' | 'vent-count' | 'inner-opening-count',
    figure: Figure,
  ): Step<'each'> => {
    const title = MEASURES[key].title;
    if (ship.openings[key] !== undefined) return block.given(key, title, 'each', ship.openings[key]);
    const rate = block.given(
      `${key}-rate`,
      `${title} for each compartment`,
      'each/each',
      givenFrom(figure, 'each/each'),
    );
    return block.place(key, title, rounded(priced(compartments, rate), 0));
  };
  const count = each('opening-count', ASSUMPTIONS.openingsPerCompartment);
  return {
    'opening-count': count,
    'vent-count': each('vent-count', ASSUMPTIONS.ventsPerCompartment),
    'inner-opening-count': each('inner-opening-count', ASSUMPTIONS.innerPerCompartment),
    'opening-cut-length': cutLength(block, ship.openings['opening-cut-length'], count),
    'opening-thickness': thickness(block, ship),
  };
}

function cutLength(block: Block, sized: Given | undefined, count: Step<'each'>): Step<'m'> {
  const title = MEASURES['opening-cut-length'].title;
  if (sized !== undefined) return block.given('opening-cut-length', title, 'm', sized);
  const perimeter = block.given(
    'opening-perimeter',
    'Cut of one opening',
    'm/each',
    givenFrom(ASSUMPTIONS.openingPerimeter, 'm/each'),
  );
  return block.place('opening-cut-length', title, rounded(priced(count, perimeter), 1));
}

function thickness(block: Block, ship: ShipGivens): Step<'mm'> {
  const figure = ship.type.quantities['shell-thickness'];
  const place = `templates/hull-types/${ship.type.id}/shell-thickness`;
  return block.given(
    'opening-thickness',
    MEASURES['opening-thickness'].title,
    'mm',
    figure && givenFrom(figure, 'mm', place),
  );
}
