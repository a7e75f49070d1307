import {
  difference,
  givenFrom,
  maximum,
  over,
  rounded,
  scaled,
  sum,
  unity,
  type Recipe,
  type Sheet,
  type Step,
} from '../sheet';
import { flagOf } from './condition-sets';
import { rateAt, type EstimateInput } from './inputs';
import type { ItemFields } from './item-fields';

/** What slows work down beside its conditions, the same for the whole project. */
export interface Pace {
  /** Hours more, as a share, when the crews of an item are doubled. */
  readonly crowding: Step<'1'>;
  /** Factor on hours because people tire under the shift pattern. */
  readonly shift: Step<'1'>;
}

export function paceOf(sheet: Sheet, input: EstimateInput): Pace {
  const block = sheet.block('pace', 'Crowding and shifts');
  const { figure, place } = rateAt(input, 'crewSizes/crowding', input.library.rateBook.crewSizes.crowding);
  return {
    crowding: block.given(
      'crowding-loss',
      'Hours more with twice the crews',
      '1',
      givenFrom(figure, '1', place),
    ),
    shift: block.given('shift-factor', 'Hours under the shift pattern', '1', input.shiftFactor),
  };
}

/**
 * The factors on the hours of an item: of crews in each other's way, 1 + loss × (crews ÷ usual crews − 1) and 1 with
 * fewer than usual; and of long shifts, on work done by the shift. Hours by the day of a span are no work done faster.
 */
export function slowed(
  t: Recipe<ItemFields>,
  { crews, usual }: { readonly crews: Step<'1'>; readonly usual: Step<'1'> },
  { crowding, shift }: Pace,
): readonly [Step<'1'>, Step<'1'>] {
  const one = unity('1');
  const times = maximum(one, rounded(over(crews, usual), 6));
  const tires = t.field('by-shift', 'Worked by the shift', '1', ({ item }) =>
    flagOf(item.crew !== undefined && item.span === undefined && item.calendar !== 'office'),
  );
  return [
    t.place('crowding', 'Factor of crowding', sum(one, scaled(crowding, difference(times, one)))),
    t.place('shift-effect', 'Factor of the shift', sum(one, scaled(tires, difference(shift, one)))),
  ];
}
