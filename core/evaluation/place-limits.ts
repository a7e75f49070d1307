import { crewsAvailable, type EstimateInput, type PlannedItem, type WorkSheet } from '../estimate';
import type { Library } from '../work';

/**
 * How many people each place holds: its own limit, or more on a larger ship. No limit is set below the largest crew
 * that an item of the place needs, since a crew is not cut in half; the crews an item may have are its own business.
 */
export function placeLimits(
  library: Library,
  work: WorkSheet,
  planned: readonly PlannedItem[],
): Map<string, number> {
  const limits = new Map<string, number>();
  const largestCrews = new Map<string, number>();
  for (const { item, crews, crewSize } of planned)
    largestCrews.set(item.place, Math.max(largestCrews.get(item.place) ?? 0, crews * crewSize));
  for (const place of library.places) {
    if (place.crewLimit === undefined) continue;
    const grows = place.crewLimitGrows;
    const driver =
      grows === undefined || !work.drivers.scope.index.has(grows.driver)
        ? undefined
        : work.result.number(work.drivers.columns.number, grows.driver);
    const grown =
      grows === undefined || driver === undefined ? 0 : Math.floor(Number(grows.perUnit.value) * driver);
    const largest = largestCrews.get(place.id) ?? 0;
    limits.set(place.id, Math.max(Number(place.crewLimit.value), grown, largest));
  }
  return limits;
}

/** Crews that can be fielded at once, by crew: where the project says otherwise than the rate book. */
export function crewLimits({ library, overrides }: EstimateInput): ReadonlyMap<string, number> {
  return new Map(
    library.rateBook.crews.flatMap(({ id }): [string, number][] => {
      const available = crewsAvailable(overrides, id);
      return available === undefined ? [] : [[id, Math.floor(Number(available.figure.value))]];
    }),
  );
}
