/** Passes that are spent on networks of up to so many activities. */
const PASSES = 1000;
const UP_TO = 300;

/** The first few passes bring most: fewer are never spent. */
const FEWEST = 4;

/**
 * Passes worth spending on a schedule of so many activities when nobody asks for more: the larger the network, the
 * longer each pass takes and the longer one waits for an answer after every edit.
 */
export function usualSchedules(activities: number): number {
  const share = UP_TO / Math.max(UP_TO, activities);
  return Math.max(FEWEST, Math.round(PASSES * share ** 2.5));
}
