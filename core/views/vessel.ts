import type { EstimateContext } from './context';
import { clearanceOf, shipPicture } from './ship-picture';
import { openingAdditions, openingTable, tankTable, weightTable } from './vessel-lists';
import { connectionTable, ventAdditions, ventTable } from './vessel-vents';
import { compartmentTable, namesTable, particulars, siteTable } from './vessel-tables';
import type { Sentence } from './rows';
import type { ShipPicture, VesselView } from './window-rows';

/** The view of the ship: what it is, how it lies afloat and at rest, what it is divided into. */
export function vesselView(context: EstimateContext): VesselView {
  const picture = shipPicture(context);
  return {
    sentence:
      picture === undefined
        ? ['The ship cannot be drawn: a particular or the depth of the site is missing.']
        : sentence(context, picture),
    particulars: particulars(context),
    site: siteTable(context),
    names: namesTable(context),
    compartments: compartmentTable(context),
    openings: openingTable(context),
    vents: ventTable(context),
    connections: connectionTable(context),
    compartmentAdditions: [...openingAdditions(context), ...ventAdditions(context)],
    tanks: tankTable(context),
    weights: weightTable(context),
    picture,
    notes: [
      'Hull lines and topside are drawn in a usual form from the particulars; nothing is calculated from the drawing. Screening only, not a naval architect’s study.',
    ],
  };
}

function sentence(context: EstimateContext, picture: ShipPicture): Sentence {
  const { clear, spare, isTooLittle } = clearanceOf(context, picture);
  const gone = picture.parts.filter(part => !part.stays).length;
  const lead =
    gone === 0
      ? 'With its topside left on'
      : gone >= 5
        ? 'With its topside cut down'
        : 'With masts and funnel off';
  if (spare.startsWith('0 '))
    return [`${lead}, the ship rests under ${clear} of clear water, just what is required.`];
  return isTooLittle
    ? [`${lead}, the ship rests under ${clear} of clear water, ${spare} less than required.`]
    : [`${lead}, the ship rests under ${clear} of clear water, ${spare} more than required.`];
}
