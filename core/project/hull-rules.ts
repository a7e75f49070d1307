import type { Figure } from '../base';
import type { GivenRule, PlacedGiven } from './given-rules';
import type { Project } from './schema';
import type { PlainUnit } from '../units';

const rule = (title: string, unit: PlainUnit, from: string, to: string): GivenRule => ({
  title,
  unit,
  from,
  to,
});
const positive = (title: string, unit: PlainUnit, to: string): GivenRule => ({ title, unit, above: '0', to });

const at = (place: string, figure: Figure | undefined, given: GivenRule): PlacedGiven[] =>
  figure === undefined ? [] : [{ place, figure, rule: given }];

/** Givens of tanks with a free surface, of compartments with their openings, and of the upright screen. */
export function hullGivens({ vessel, upright }: Project): PlacedGiven[] {
  return [
    ...at(
      '/vessel/listMoment',
      vessel.listMoment,
      rule('Listing moment in tonne metres', '1', '-1000000', '1000000'),
    ),
    ...vessel.tanks.flatMap(tank => [
      ...at(
        `/vessel/tanks/${tank.id}/surfaceLength`,
        tank.surfaceLength,
        positive(`Length of the surface of ${tank.title}`, 'm', '300'),
      ),
      ...at(
        `/vessel/tanks/${tank.id}/surfaceBreadth`,
        tank.surfaceBreadth,
        positive(`Breadth of the surface of ${tank.title}`, 'm', '100'),
      ),
    ]),
    ...vessel.compartments.flatMap(compartmentGivens),
    ...at(
      '/upright/staysUp',
      upright?.staysUp,
      positive('Greatest heel called "stays up", degrees', '1', '60'),
    ),
    ...at('/upright/leans', upright?.leans, positive('Greatest heel called "leans", degrees', '1', '60')),
    ...at('/upright/sinkTime', upright?.sinkTime, positive('Sinking time', 'h', '48')),
    ...at('/upright/unevenness', upright?.unevenness, rule('Unevenness of the sides', '1', '0', '1')),
    ...at('/upright/ventShare', upright?.ventShare, rule('Share of the air escapes', '1', '0', '2')),
  ];
}

function compartmentGivens(space: Project['vessel']['compartments'][number]): PlacedGiven[] {
  const place = `/vessel/compartments/${space.id}`;
  const metres = (title: string) => rule(`${title} of ${space.title}`, 'm', '-500', '500');
  return [
    ...at(`${place}/from`, space.from, metres('After end')),
    ...at(`${place}/to`, space.to, metres('Fore end')),
    ...at(`${place}/inner`, space.inner, metres('Port side')),
    ...at(`${place}/outer`, space.outer, metres('Starboard side')),
    ...at(`${place}/bottom`, space.bottom, metres('Floor')),
    ...at(`${place}/top`, space.top, metres('Top')),
    ...at(`${place}/permeability`, space.permeability, positive(`Permeability of ${space.title}`, '1', '1')),
    ...space.openings.flatMap(opening => [
      ...at(
        `${place}/openings/${opening.id}/area`,
        opening.area,
        positive('Area of an opening', 'm2', '500'),
      ),
      ...at(
        `${place}/openings/${opening.id}/height`,
        opening.height,
        rule('Height of an opening', 'm', '0', '60'),
      ),
      ...at(`${place}/openings/${opening.id}/centre`, opening.centre, metres('Centre of an opening')),
    ]),
    ...space.vents.flatMap((vent, i) => [
      ...at(`${place}/vents/${i}/area`, vent.area, positive('Area of an air escape', 'm2', '100')),
      ...at(`${place}/vents/${i}/centre`, vent.centre, metres('Height of an air escape')),
    ]),
    ...space.connections.flatMap((way, i) => [
      ...at(`${place}/connections/${i}/area`, way.area, positive('Area of a way through', 'm2', '500')),
      ...at(`${place}/connections/${i}/centre`, way.centre, metres('Centre of a way through')),
      ...at(`${place}/connections/${i}/height`, way.height, positive('Height of a way through', 'm', '60')),
    ]),
  ];
}
