import type { UprightFacts, UprightParticulars, UprightTank } from '../flooding';
import type { Project } from '../project';
import { numberIn } from './upright-figures';

const FOOT = 0.3048;

/** The offset table as outlines of whole sections, metres; nothing without one. */
export function stationsOf(project: Project): Pick<UprightParticulars, 'stations'> {
  const table = project.vessel.offsets;
  if (table === undefined) return {};
  const metres = (text: string) => Number(text) * (table.unit === 'ft' ? FOOT : 1);
  const stations = table.stations.map(({ at, points }) => {
    const rising = points
      .map(({ height, halfBreadth }) => [metres(halfBreadth), metres(height)] as const)
      .toSorted((a, b) => a[1] - b[1]);
    const port = rising.toReversed().map(([y, z]) => [-y, z] as const);
    return { x: metres(at), outline: [...rising, ...port] };
  });
  return { stations };
}

/** Density of what tanks hold, t/m3. From memory: fuel and lubricating oil float, water does not. */
const DENSITY: Readonly<Record<string, number>> = {
  fuel: 0.9,
  lube: 0.9,
  'cargo oil': 0.9,
  'fresh water': 1,
};
const SEA = 1.025;
/** Contents that the clean-up leaves aboard. */
const STAYING = new Set(['ballast', 'fresh water']);

/** Tanks with a sounding and the size of their surface: those whose free surface can be told. */
export function slackTanks(project: Project): UprightTank[] {
  return project.vessel.tanks.flatMap((tank): UprightTank[] => {
    const [capacity, volume] = [numberIn(tank.capacity, 'm3'), numberIn(tank.sounding, 'm3')];
    const [length, breadth] = [numberIn(tank.surfaceLength, 'm'), numberIn(tank.surfaceBreadth, 'm')];
    if (capacity === undefined || volume === undefined) return [];
    if (length === undefined || breadth === undefined) return [];
    const density = DENSITY[tank.contents] ?? SEA;
    const emptied = !STAYING.has(tank.contents);
    return [
      {
        title: tank.title,
        length,
        breadth,
        parts: tank.surfaceParts ?? 1,
        density,
        capacity,
        volume,
        emptied,
      },
    ];
  });
}

/** What is seen of her afloat. */
export function factsOf({ vessel }: Project): UprightFacts {
  const { rollPeriod, observedList, listMoment } = vessel;
  const degrees = observedList === undefined ? undefined : Number(observedList.value);
  const moment = listMoment === undefined ? undefined : Number(listMoment.value);
  return {
    afloatUpright: degrees === undefined || degrees === 0,
    ...(degrees === undefined || degrees === 0
      ? {}
      : { list: { degrees, ...(moment === undefined ? {} : { moment }) } }),
    ...(rollPeriod === undefined ? {} : { rollPeriod: Number(rollPeriod.value) }),
  };
}
